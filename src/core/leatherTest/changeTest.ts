import type { TestFigure } from './testFigure.ts';
import type { ChangeReading } from './testSchema.ts';

/**
 * Change of size in making as a share, less than 0 where the leather shrinks: (after - before) / before between two marks.
 *
 * By first order u^2 = (u / before)^2 + (after u / before^2)^2 with u = error / 2 of each reading (JCGM 100:2008 5.1.2).
 * @returns null while the strip is not read again
 */
export function changeTest({
  before_mm: before,
  after_mm: after,
  error_mm: error,
}: Pick<ChangeReading, 'before_mm' | 'after_mm' | 'error_mm'>): TestFigure | null {
  if (after === null) return null;
  const u = error / 2;
  return { value: (after - before) / before, u: Math.hypot(u / before, (after * u) / (before * before)) };
}
