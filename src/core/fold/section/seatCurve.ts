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
 */
export function seatCurve(offset: number, radius: number, thickness: number, room: number): SeatCurve {
  const pressed = offset > 0 && reverseCurve(offset, radius).run > room;
  return curveOnFace(offset, pressed ? pressedRadius(offset, room) : radius, thickness / 2);
}

/**
 * S curve of mean radius R on the face that lies `depth` inside of the layer's middle: R + depth at the seam, R - depth at
 * the board.
 */
export function curveOnFace(offset: number, radius: number, depth: number): SeatCurve {
  const curve = reverseCurve(offset, radius);
  const boardRadius = Math.max(Math.min(LEAST_RADIUS, radius), radius - depth);
  return {
    rise: offset,
    run: curve.run,
    length: curve.length,
    seamRadius: 2 * radius - boardRadius,
    boardRadius,
    radius,
    up: curve.angle,
    straight: curve.straight,
    down: curve.angle,
  };
}

/** Mean radius of a lined layer's S on the lining's inner face: at least R, and room at the seam for both to bend round. */
export function linedRadius(radius: number, thickness: number, lining: number): number {
  const board = Math.max(LEAST_RADIUS, radius - lining - thickness / 2);
  return Math.max(radius, (LINED_ROOM * (lining + thickness) + board) / 2);
}

/** Greatest offset that an S of this radius crosses within a run: 2R - sqrt(4R^2 - d^2); any offset where d >= 2R. */
export const offsetForRun = (radius: number, run: number): number =>
  run >= 2 * radius ? Number.POSITIVE_INFINITY : 2 * radius - Math.sqrt(Math.max(0, 4 * radius * radius - run * run));

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

/** Radius at which an S of this rise has this run, which is at least as long as the rise: (d^2/h + h)/4. */
export const radiusForRun = (rise: number, run: number): number => (run * run) / rise / 4 + rise / 4;

/** Greatest radius of an S of this rise that runs no farther than there is room, upright between its arcs where it must be. */
export function pressedRadius(rise: number, room: number): number {
  const space = Math.max(room, LEAST_ROOM);
  return space >= rise ? radiusForRun(rise, space) : space / 2;
}
