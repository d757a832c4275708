import type { Path64 } from 'clipper2-ts';
import type { Vec2 } from '../../math/vec2.ts';
import type { PieceOutline } from '../pieceOutline.ts';
import { coarsened, toGrid } from './noFit.ts';

/** Quarter turns, counterclockwise, from lying with the head toward the backbone's direction. */
export type Quarters = 0 | 1 | 2 | 3;

/** A piece in one of its turns. */
export interface Shape {
  readonly outline: PieceOutline;
  readonly quarters: Quarters;
  readonly polygon: readonly Vec2[];
  /** The same on the grid, with few corners. */
  readonly path: Path64;
  readonly top: number;
  readonly left: number;
}

/** The turns in which a piece may lie. */
export const QUARTERS: Readonly<Record<PieceOutline['lies'], readonly Quarters[]>> = {
  along: [0, 2],
  across: [1, 3],
  either: [0, 2, 1, 3],
};

/** The ways in which a piece may lie, each either way round. */
export function waysToLay(outline: PieceOutline): Shape[] {
  const shapes = QUARTERS[outline.lies].map((count): Shape => {
    const polygon = turned(outline.polygon, (count * Math.PI) / 2);
    const path = coarsened(toGrid(polygon));
    return {
      outline,
      quarters: count,
      polygon,
      path,
      top: Math.max(...path.map((p) => p.y)),
      left: Math.min(...path.map((p) => p.x)),
    };
  });
  const keys = shapes.map(({ path }) => cornersOf(path));
  return shapes.filter((_, i) => keys.indexOf(keys[i]!) === i);
}

/** The corners of a path as text, measured from its lower left, to recognise equal shapes. */
function cornersOf(path: Path64): string {
  const [x, y] = [Math.min(...path.map((p) => p.x)), Math.min(...path.map((p) => p.y))];
  return path
    .map((p) => `${p.x - x},${p.y - y}`)
    .sort()
    .join(' ');
}

/** The polygon turned counterclockwise about the origin. */
export function turned(polygon: readonly Vec2[], angle: number): Vec2[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return polygon.map(([x, y]) => [c * x - s * y, s * x + c * y]);
}
