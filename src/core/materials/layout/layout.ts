import { Clipper, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import { extent } from '../../math/extent.ts';
import type { Vec2 } from '../../math/vec2.ts';
import { type PieceOutline, polygonArea } from '../pieceOutline.ts';
import type { Clearance, Hide } from './hide.ts';
import { fromGrid, grown, innerFit, isClear, noFit, toGrid } from './noFit.ts';
import { type Quarters, type Shape, turned, waysToLay } from './shape.ts';

/** One piece laid on the hide, in the hide's coordinates. */
export interface PlacedPiece {
  readonly name: string;
  readonly quarters: Quarters;
  readonly polygon: readonly Vec2[];
}

/** Pieces laid out on one hide. */
export interface Layout {
  readonly placed: readonly PlacedPiece[];
  /** Names of the pieces that do not fit, one entry for each. */
  readonly unplaced: readonly string[];
  /** Area of the pieces laid, mm2. */
  readonly area: number;
  /** Area of the hide from its lower end, across the backbone, up to the highest piece, defects included, mm2. */
  readonly used: number;
  /** area / used; 0 when nothing is laid. */
  readonly yield: number;
}

/**
 * Lays pieces on a hide, each with its direction kept, as low along the backbone as it can go and then as far left.
 *
 * Bottom-left placement at the corners of the feasible region, inner fit less the no-fit regions of defects and of the
 * pieces already laid. The order decides, so the pieces are tried by area, by height and by width, largest first, and the
 * layout that places most and then uses the least of the hide is kept. Greedy: good, not proven best.
 * @param outlines pieces of one leather
 */
export function layOut(outlines: readonly PieceOutline[], hide: Hide, clearance: Clearance): Layout {
  // The backbone is turned upright, so that "low" means along it.
  const upright = Math.PI / 2 - hide.backbone;
  const outer = toGrid(turned(hide.outline, upright));
  const defects = hide.defects.map((defect) => toGrid(turned(defect, upright)));
  const bench: Bench = {
    area: grown([outer], -clearance.edge),
    defects: grown(defects, clearance.edge),
    spacing: clearance.spacing,
    fits: new Map(),
  };
  const shapes = outlines.map((outline) => ({ outline, ways: waysToLay(outline) }));
  const copies = shapes.flatMap((shape) => Array.from({ length: shape.outline.count }, () => shape));
  const orders = [
    (shape: Candidate) => polygonArea(shape.outline.polygon),
    (shape: Candidate) => extent(shape.outline.polygon, 1),
    (shape: Candidate) => extent(shape.outline.polygon, 0),
  ].map((size) => [...copies].sort((a, b) => size(b) - size(a)));
  const tries = orders
    .filter((order, i) => orders.findIndex((other) => other.every((shape, k) => shape === order[k])) === i)
    .map((order) => place(order, bench));
  const best = tries.reduce((a, b) => (isBetter(b, a) ? b : a));
  const placed = best.placed.map(({ shape, at }) => {
    const [x, y] = fromGrid(at);
    const polygon = shape.polygon.map(([px, py]): Vec2 => [px + x, py + y]);
    return { name: shape.outline.name, quarters: shape.quarters, polygon: turned(polygon, -upright) };
  });
  const area = placed.reduce((sum, { polygon }) => sum + polygonArea(polygon), 0);
  const used = usedArea(outer, best);
  return { placed, unplaced: best.unplaced, area, used, yield: used === 0 ? 0 : area / used };
}

interface Candidate {
  readonly outline: PieceOutline;
  readonly ways: readonly Shape[];
}

interface Bench {
  readonly area: Paths64;
  readonly defects: Paths64;
  readonly spacing: number;
  /** By shape: where it may lie on the bare leather, and its no-fit regions with the shapes of other pieces. */
  readonly fits: Map<Shape, { readonly free: Paths64; readonly others: Map<Shape, Paths64> }>;
}

interface Placing {
  readonly shape: Shape;
  readonly at: { readonly x: number; readonly y: number };
}

interface Try {
  readonly placed: readonly Placing[];
  readonly unplaced: readonly string[];
  /** Height of the highest piece on the grid; -Infinity when nothing is laid. */
  readonly top: number;
}

function place(order: readonly Candidate[], bench: Bench): Try {
  const placed: Placing[] = [];
  const unplaced: string[] = [];
  for (const { outline, ways } of order) {
    const spots = ways.flatMap((shape) => {
      const spot = lowest(shape, placed, bench);
      return spot === null ? [] : [spot];
    });
    if (spots.length === 0) unplaced.push(outline.name);
    else placed.push(spots.reduce((a, b) => (isLower(b, a) ? b : a)));
  }
  return { placed, unplaced, top: Math.max(...placed.map(top)) };
}

const top = ({ shape, at }: Placing): number => at.y + shape.top;
const left = ({ shape, at }: Placing): number => at.x + shape.left;

const isLower = (a: Placing, b: Placing): boolean => top(a) < top(b) || (top(a) === top(b) && left(a) < left(b));

const isBetter = (a: Try, b: Try): boolean =>
  a.unplaced.length < b.unplaced.length || (a.unplaced.length === b.unplaced.length && a.top < b.top);

/** Shifts of a shape that keep it on the leather, off the defects and off the pieces laid. */
function feasible(shape: Shape, placed: readonly Placing[], bench: Bench): Paths64 {
  let known = bench.fits.get(shape);
  if (known === undefined) {
    const inside = innerFit(bench.area, shape.path);
    const blocked = bench.defects.flatMap((defect) => noFit(defect, shape.path));
    known = { free: without(inside, blocked), others: new Map() };
    bench.fits.set(shape, known);
  }
  const { free, others } = known;
  const blocked = placed.flatMap(({ shape: other, at }) => {
    let region = others.get(other);
    if (region === undefined) {
      region = grown([other.path], bench.spacing).flatMap((path) => noFit(path, shape.path));
      others.set(other, region);
    }
    return Clipper.translatePaths(region, at.x, at.y);
  });
  return without(free, blocked);
}

const without = (region: Paths64, blocked: Paths64): Paths64 =>
  blocked.length === 0 || region.length === 0 ? region : Clipper.difference(region, blocked, FillRule.NonZero);

/** The lowest place for a shape, and of these the leftmost; null when there is none. */
function lowest(shape: Shape, placed: readonly Placing[], bench: Bench): Placing | null {
  const spots = feasible(shape, placed, bench)
    .flat()
    .map((at): Placing => ({ shape, at }))
    .sort((a, b) => (isLower(a, b) ? -1 : 1));
  if (spots.length === 0) return null;
  const laid = placed.map((other) => Clipper.translatePath(other.shape.path, other.at.x, other.at.y));
  const blocked = [...bench.defects, ...grown(laid, bench.spacing)];
  return spots.find(({ at }) => isClear(shape.path, at, bench.area, blocked)) ?? null;
}

function usedArea(outer: Path64, { placed }: Try): number {
  if (placed.length === 0) return 0;
  const { left: x0, right: x1, top: low } = Clipper.getBounds(outer);
  const high = Math.max(...placed.map(top));
  const below = [
    { x: x0, y: low },
    { x: x1, y: low },
    { x: x1, y: high },
    { x: x0, y: high },
  ];
  return Math.abs(Clipper.areaPaths(Clipper.intersect([outer], [below], FillRule.NonZero))) / 1e6;
}
