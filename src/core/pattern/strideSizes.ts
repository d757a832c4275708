import type { StrideSizes } from '../allowance/allowances.ts';
import type { CoverDoubt } from '../doubt/coverDoubt.ts';
import { CutChances, type CutSize, loosestOf, spareOf } from '../doubt/spare.ts';
import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { seamCornerWaste } from './endRow.ts';
import type { Pieces } from './pieces.ts';

/** Chance of a fit that whole strides may cost where a cover does not reach the wished share anyway. Assumption. */
const STRIDE_COST = 0.02;

/**
 * Sizes of the outside, mm, at which whole strides of the iron lead from corner to corner; one that is left out stays as it is.
 *
 *     width  = c + N p        p the stride; c two margins and what the seam line saves round two corners
 *     height = c + M p
 *
 * Each size that the tool decides may go to the nearest such size above or below. How far is within the doubt decides the
 * chance of a fit: it stays at the wished share, or `STRIDE_COST` at most is lost where it is not reached. Both sizes before one,
 * then the better chance. Turned ends have no corners to reach, and their rows take whole strides as they are.
 * @param pieces as they are without an iron
 */
export function strideSizes(job: Job, doubt: CoverDoubt, pieces: Pieces): StrideSizes {
  const { iron, pitch_mm: stride } = job.seam;
  if (iron === null || pieces.pocket.count === 0) return {};
  const { outside, ease } = pieces;
  const limits = loosestOf(job, (ease.head_mm - ease.tail_mm) / 2);
  const chance = (cut: CutSize): number => new CutChances(doubt, spareOf(doubt, cut), limits).fits();
  const corners = seamCornerWaste(job, pieces);
  const sizes = (own: number | null, size: number): readonly (number | undefined)[] => {
    const strides = (size - corners) / stride;
    const whole = [Math.floor(strides + TOLERANCE.ratio), Math.ceil(strides - TOLERANCE.ratio)].filter((n) => n > 0);
    return own === null ? [...whole.map((n) => corners + n * stride), undefined] : [undefined];
  };
  const { share } = job.ease;
  const before = chance(outside);
  const least = before >= share ? share : before - STRIDE_COST;
  const [best] = sizes(job.pattern.outsideWidth_mm, outside.width)
    .flatMap((width) => sizes(job.pattern.outsideHeight_mm, outside.height).map((height) => ({ width, height })))
    .map((cut) => ({
      cut,
      whole: Number(cut.width !== undefined) + Number(cut.height !== undefined),
      chance: chance({ width: cut.width ?? outside.width, height: cut.height ?? outside.height }),
    }))
    .filter((each) => each.chance >= least || each.whole === 0)
    .sort((a, b) => b.whole - a.whole || b.chance - a.chance);
  return best!.cut;
}
