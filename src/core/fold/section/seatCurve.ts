import { reverseCurve } from '../../allowance/reverseCurve.ts';

/**
 * The S that a layer makes between seam and board, as the curve of its flesh side.
 *
 * Both arcs have the radius R on the mid-surface. On the flesh side the arc at the seam, which turns away from the other
 * layer, has R + t/2 and the arc at the board R - t/2, so rise and run are those of the mid-surface.
 */
export interface SeatCurve {
  readonly rise: number;
  /** Distance run from the seam to where the layer is level again. */
  readonly run: number;
  /** Length on the mid-surface. */
  readonly length: number;
  readonly seamRadius: number;
  readonly boardRadius: number;
  readonly radius: number;
  /** Turn of the first arc, straight stretch, turn back of the second. */
  readonly up: number;
  readonly straight: number;
  readonly down: number;
}

/** Least flesh radius at the board's edge, mm, so that no two places of the mesh fall on one another. */
const LEAST_RADIUS = 0.01;
/** Room between seam and board that a cover without any is given, mm. */
const LEAST_ROOM = 0.05;
/** Least radius at the seam of a lined layer, in thicknesses of both: over 1, so that the grain side does not fold. */
const LINED_ROOM = 1.3;

/**
 * S curve of `offset` at radius R; where the room between seam and board is short of its run, the leather is pressed to
 * the radius that fits: R' = (d^2/h + h)/4 for d >= h, else d/2 (reverseCurve solved for R).
 * @param offset h, mm, 0 or more
 * @param radius R, mm, over 0
 * @param thickness t, mm
 * @param room greatest run, mm
 * @param lining thickness of a lining on the flesh side, mm: the curve is then that of the lining's inner face, and its
 *   radius at the seam leaves room for both layers
 */
export function seatCurve(offset: number, radius: number, thickness: number, room: number, lining = 0): SeatCurve {
  const depth = lining + thickness / 2;
  const own = arcRadii(radius, depth);
  const free = lining > 0 ? Math.max(own.seam, LINED_ROOM * (lining + thickness)) + own.board : 2 * radius;
  const pressed = offset > 0 && reverseCurve(offset, free / 2).run > room;
  const space = Math.max(room, LEAST_ROOM);
  const effective = pressed ? (space >= offset ? radiusForRun(offset, space) : space / 2) : free / 2;
  const curve = reverseCurve(offset, effective);
  const { board } = arcRadii(effective, depth);
  return {
    rise: offset,
    run: curve.run,
    length: curve.length,
    seamRadius: 2 * effective - board,
    boardRadius: board,
    radius: effective,
    up: curve.angle,
    straight: curve.straight,
    down: curve.angle,
  };
}

/** Radii of both arcs on the face that lies `depth` from the mid-surface. */
function arcRadii(radius: number, depth: number): { readonly seam: number; readonly board: number } {
  const board = Math.max(Math.min(LEAST_RADIUS, radius), radius - depth);
  return { seam: 2 * radius - board, board };
}

/** Greatest offset that fits a run when both arcs together have the radius S: S - sqrt(S^2 - d^2), or 2 S where d >= S. */
export function offsetForRun(curve: SeatCurve, run: number): number {
  const sum = curve.seamRadius + curve.boardRadius;
  return run >= sum ? Number.POSITIVE_INFINITY : sum - Math.sqrt(Math.max(0, sum * sum - run * run));
}

/** The same layer swung about the seam: first arc turned to `up`, the second turned back by `down`, radians. */
export const swung = (curve: SeatCurve, up: number, down: number): SeatCurve => ({ ...curve, up, down });

/** Place on the flesh side at a mid-surface length from the seam: u inward, h up, and direction in radians from u. */
export function seatPoint(curve: SeatCurve, length: number): [u: number, h: number, angle: number] {
  const { seamRadius, boardRadius, radius, up, straight, down } = curve;
  if (length <= 0) return [length, 0, 0];
  const first = Math.min(up, length / radius);
  let u = seamRadius * Math.sin(first);
  let h = seamRadius * (1 - Math.cos(first));
  let left = length - up * radius;
  if (left <= 0) return [u, h, first];
  const upright = down > 0 ? Math.min(straight, left) : 0;
  u += upright * Math.cos(up);
  h += upright * Math.sin(up);
  left -= upright;
  const second = Math.min(down, left / radius);
  const angle = up - second;
  u += boardRadius * (Math.sin(up) - Math.sin(angle));
  h += boardRadius * (Math.cos(angle) - Math.cos(up));
  left -= second * radius;
  return [u + left * Math.cos(angle), h + left * Math.sin(angle), angle];
}

/** Height of an S of one radius on both arcs, at a distance u from its start. */
export function gentleRise(rise: number, radius: number, u: number): number {
  const curve = reverseCurve(rise, radius);
  if (u <= 0) return 0;
  if (u >= curve.run) return rise;
  if (u <= curve.run / 2) return radius - Math.sqrt(Math.max(0, radius * radius - u * u));
  const rest = curve.run - u;
  return rise - radius + Math.sqrt(Math.max(0, radius * radius - rest * rest));
}

/** Radius at which an S of this rise has this run: (d^2/h + h)/4. */
export const radiusForRun = (rise: number, run: number): number => (run * run) / rise / 4 + rise / 4;
