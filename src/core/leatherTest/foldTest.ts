import type { TestFigure } from './testFigure.ts';
import type { FoldReading } from './testSchema.ts';

/**
 * Bend ratio from a strip folded hard on itself: over two layers round an inside radius r = bendRatio t the fold is
 * F = 2 t (1 + bendRatio) thick, so bendRatio = F / (2 t) - 1.
 *
 * By first order u^2 = (u_F / 2t)^2 + (F u_t / 2t^2)^2 with u_F = u_t = error / 2 (JCGM 100:2008 5.1.2); fold and thickness are
 * two readings. A fold read thinner than two layers gives less than 0, so that the mean of several stays right.
 */
export function foldTest({
  thickness_mm: t,
  fold_mm: fold,
  error_mm: error,
}: Pick<FoldReading, 'thickness_mm' | 'fold_mm' | 'error_mm'>): TestFigure {
  const u = error / 2;
  return { value: fold / (2 * t) - 1, u: Math.hypot(u / (2 * t), (fold * u) / (2 * t * t)) };
}
