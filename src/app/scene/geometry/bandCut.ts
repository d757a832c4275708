import { type Plane, Vector3 } from 'three';
import type { EdgeBand, FitMark, Vec3 } from '../../../core/index.ts';

/** Where a slice cuts the gap or overrun at an edge. */
export interface BandCut {
  /** Two on the face that the mark is seen from, two on the other face of the board. */
  readonly corners: readonly [Vec3, Vec3, Vec3, Vec3];
  /** Of each corner: depth from that face, and from the board's edge outward, mm. */
  readonly places: readonly (readonly [depth: number, across: number])[];
}

/** How far it stands behind the plane, mm, so that the plane does not clip it. */
const BEHIND = 0.01;
/** How far it goes beyond edge and stop, mm, so that their lines are drawn in full. */
const ROOM = 1;

/** Least slant of a board to a plane that is not square to it, as the cosine of their directions. */
const SLANTED = 1e-3;

/**
 * Cuts a gap or overrun with a plane: as long as the mark, as deep as the board. Null where the plane misses the edge, and on a
 * board that is raised on its way in: its cut is longer than the gap.
 */
export function bandCut({ value, out }: FitMark, { rungs, across, board }: EdgeBand, plane: Plane): BandCut | null {
  if (Math.abs(plane.normal.dot(new Vector3(...out))) > SLANTED) return null;
  const zero = across.indexOf(0);
  const at = (rung: readonly Vec3[], point: number): Vector3 => new Vector3(...rung[point]!);
  const heights = rungs.map((rung) => plane.distanceToPoint(at(rung, zero)));
  const next = heights.findIndex((height, i) => i > 0 && height >= 0 !== heights[i - 1]! >= 0);
  if (next < 0) return null;
  const [a, b] = [rungs[next - 1]!, rungs[next]!];
  const share = heights[next - 1]! / (heights[next - 1]! - heights[next]!);
  const crossing = (point: number): Vector3 => at(a, point).lerp(at(b, point), share);

  const edge = crossing(zero).addScaledVector(plane.normal, BEHIND);
  // The first two points of a rung lie on the board.
  const outward = crossing(1).sub(crossing(0)).normalize();
  const [from, to] = [Math.min(0, value) - ROOM, Math.max(0, value) + ROOM];
  const corner = (depth: number, by: number): Vec3 => {
    const { x, y, z } = edge
      .clone()
      .addScaledVector(outward, by)
      .addScaledVector(new Vector3(...out), -depth);
    return [x, y, z];
  };
  return {
    corners: [corner(0, from), corner(0, to), corner(board, to), corner(board, from)],
    places: [
      [0, from],
      [0, to],
      [board, to],
      [board, from],
    ],
  };
}
