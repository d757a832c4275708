import { type Mm, mm } from '../units/mm.ts';

/** An S of two equal tangent arcs that carries a sheet across an offset. */
export interface ReverseCurve {
  /** d: distance run along the sheet's original line. */
  readonly run: Mm;
  /** L: length of sheet used. */
  readonly length: Mm;
  /** Angle of each arc, radians, at most pi/2. */
  readonly angle: number;
  /** Straight stretch between the arcs, upright, for offsets over 2 R. */
  readonly straight: Mm;
}

/**
 * Reverse curve for an offset h at radius R: for h <= 2 R, cos a = 1 - h/(2R), d = 2 R sin a, L = 2 R a; above,
 * the arcs are quarter circles with an upright between: d = 2 R, L = pi R + h - 2 R. Two tangent arcs, exact.
 * @param offset h, mm, 0 or more; 0 gives a curve of no length
 * @param radius R, mm, over 0
 */
export function reverseCurve(offset: number, radius: number): ReverseCurve {
  if (offset > 2 * radius) {
    const straight = offset - 2 * radius;
    return { run: mm(2 * radius), length: mm(Math.PI * radius + straight), angle: Math.PI / 2, straight: mm(straight) };
  }
  const angle = 2 * Math.asin(Math.sqrt(Math.max(0, offset) / (4 * radius)));
  return { run: mm(2 * radius * Math.sin(angle)), length: mm(2 * radius * angle), angle, straight: mm(0) };
}

/** Leather that a reverse curve takes beyond the distance it runs. */
export const excess = (curve: ReverseCurve): Mm => mm(curve.length - curve.run);
