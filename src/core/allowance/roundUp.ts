import { TOLERANCE } from '../math/tolerance.ts';
import { type Mm, mm } from '../units/mm.ts';

/** Rounds a cut size up to a multiple of `step` (mm), but for the noise of its sum; a step of 0 leaves it as it is. */
export function roundUp(size: number, step: number): Mm {
  // Never minus zero.
  return mm(step === 0 ? size : Math.ceil(size / step - TOLERANCE.ratio) * step || 0);
}

/** Rounds a size that must not be exceeded down to a multiple of `step` (mm); a step of 0 leaves it as it is. */
export const roundDown = (size: number, step: number): Mm => mm(-roundUp(-size, step));

/** Rounds a size that has its rounding in it already to the multiple of `step` (mm) that it is but for noise; 0: as it is. */
export const snap = (size: number, step: number): number => (step === 0 ? size : Math.round(size / step) * step);
