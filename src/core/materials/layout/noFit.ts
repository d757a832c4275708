import { Clipper, EndType, FillRule, JoinType, type Path64, type Paths64 } from 'clipper2-ts';
import type { Vec2 } from '../../math/vec2.ts';

/** Grid of all layout geometry: one micrometre, so that the clipping library works in whole numbers. */
const STEPS_PER_MM = 1000;

/** Steps by which a hide is enlarged, so that rounding does not refuse a piece that just fits. */
const TOUCH = 2;

/** An outline of more corners is replaced by a coarser one round it. */
const MANY_CORNERS = 16;

/** How far a coarser outline may stand out, in steps. */
const COARSENESS = 100;

/** The closed polygon on the grid, counterclockwise. */
export function toGrid(polygon: readonly Vec2[]): Path64 {
  const path = polygon.map(([x, y]) => ({ x: Math.round(x * STEPS_PER_MM), y: Math.round(y * STEPS_PER_MM) }));
  return Clipper.isPositive(path) ? path : path.reverse();
}

export const fromGrid = ({ x, y }: { x: number; y: number }): Vec2 => [x / STEPS_PER_MM, y / STEPS_PER_MM];

/** Outlines offset outward by a distance in mm (inward if negative), corners sharp, so never closer than it. */
export const grown = (paths: Paths64, distance: number): Paths64 =>
  distance === 0 ? paths : Clipper.inflatePaths(paths, distance * STEPS_PER_MM, JoinType.Miter, EndType.Polygon);

/** An outline of few corners round the given one, which is returned as it is if it has few. */
export function coarsened(path: Path64): Path64 {
  if (path.length <= MANY_CORNERS) return path;
  const [outer] = Clipper.inflatePaths([path], COARSENESS, JoinType.Miter, EndType.Polygon);
  return Clipper.ramerDouglasPeucker(outer!, COARSENESS);
}

const mirrored = (path: Path64): Path64 => path.map(({ x, y }) => ({ x: -x, y: -y }));

/**
 * Shifts of a piece at which it overlaps an obstacle: the no-fit region, obstacle + (-piece).
 *
 * Where the outlines cross, the shift lies in the sum of the outlines; else one of the two holds a corner of the other.
 */
export function noFit(obstacle: Path64, piece: Path64): Paths64 {
  const [first, corner] = [piece[0]!, obstacle[0]!];
  const holding = [
    Clipper.translatePath(obstacle, -first.x, -first.y),
    Clipper.translatePath(mirrored(piece), corner.x, corner.y),
  ];
  return Clipper.union(Clipper.minkowskiSum(mirrored(piece), obstacle, true), holding, FillRule.NonZero);
}

/** Shifts of a piece at which it lies inside an area: its first corner is inside, and the outlines do not cross. */
export function innerFit(area: Paths64, piece: Path64): Paths64 {
  const first = piece[0]!;
  const letOut = Clipper.inflatePaths(area, TOUCH, JoinType.Miter, EndType.Polygon);
  const crossing = letOut.flatMap((outline) => Clipper.minkowskiSum(mirrored(piece), outline, true));
  return Clipper.difference(Clipper.translatePaths(letOut, -first.x, -first.y), crossing, FillRule.NonZero);
}

/**
 * Whether a shifted piece stays in an area and off what is blocked, within rounding: the regions above can have slivers
 * a few steps wide where crossings were rounded to the grid.
 */
export function isClear(piece: Path64, { x, y }: { x: number; y: number }, area: Paths64, blocked: Paths64): boolean {
  const there = [Clipper.translatePath(piece, x, y)];
  const inside = Math.abs(Clipper.areaPaths(Clipper.intersect(there, area, FillRule.NonZero)));
  const overlap = Math.abs(Clipper.areaPaths(Clipper.intersect(there, blocked, FillRule.NonZero)));
  const { left, right, top, bottom } = Clipper.getBounds(piece);
  const rounding = 2 * TOUCH * (right - left + bottom - top);
  return Math.abs(Clipper.area(piece)) - inside <= rounding && overlap <= rounding;
}
