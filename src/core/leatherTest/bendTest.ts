import type { TestFigure } from './testFigure.ts';
import type { BendReading } from './testSchema.ts';

/**
 * K, the depth of the neutral line as a share of the thickness, from a strip bent round a block or rod: leather that turns by A
 * round the radius r takes L = A (r + K t), so K = (L / A - r) / t.
 *
 * By first order u^2 = (u_L / A t)^2 + (u_r / t)^2 + (K u_t / t)^2 (JCGM 100:2008 5.1.2): the length has u_L = error / 2, radius and
 * thickness are read by callipers. The angle counts as exact: it is that of the block.
 */
export function bendTest({
  thickness_mm: t,
  radius_mm: r,
  angle_deg,
  length_mm: length,
  error_mm: error,
  callipers_mm: callipers,
}: Omit<BendReading, 'day' | 'way' | 'worked' | 'grain'>): TestFigure {
  const angle = (angle_deg * Math.PI) / 180;
  const value = (length / angle - r) / t;
  return { value, u: Math.hypot(error / (angle * t), callipers / t, (value * callipers) / t) / 2 };
}
