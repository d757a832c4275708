import type { Ease } from '../allowance/ease.ts';
import { endNeed, largestHeadTail, type NeedsOverRange } from '../allowance/needs.ts';
import { roundDown, roundUp } from '../allowance/roundUp.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { changeOf } from '../leather/changeOf.ts';
import { normalQuantile } from '../math/normal.ts';
import { mm } from '../units/mm.ts';
import type { CoverDoubt } from './coverDoubt.ts';
import { CutChances, type CutSize, type Dimension, loosestOf, spareOf } from './spare.ts';

/**
 * Steps in which the room is found. The first are Newton steps on the scale of standard deviations, which are enough unless
 * the loosest gap flattens the chance; then doubling and halving find it to a thousandth of a deviation.
 */
const NEWTON_STEPS = 4;
const MOST_STEPS = 18;

/** More standard deviations than any room has. */
const FAR = 1e6;

/** Closeness to the wished share at which the search ends; it ends on the safe side. */
const SHARE_WITHIN = 2e-4;

/**
 * Sizes the ease that the job leaves open, so that all conditions together (closes, goes in at head and tail, lies open, no
 * edge looser than wished) reach the wished share, with as little room as will do.
 *
 * Width and height get room for the same number of standard deviations. Where a size that the maker fixed keeps the whole from the
 * share, the open dimension reaches it by itself. Where no size does, the cut in the middle between too small and too
 * loose, which has the best chance, is taken and `reaches` is false.
 *
 * Head and tail are sized alike; where one of them is typed, the other stays what it would be beside its like.
 *
 * Ease is counted at the thick end of the leather, as for a typed one, so that it may come out under 0 where the range of the
 * leather is the largest doubt. Sizes that the job fixes are left aside: the ease is what the tool would allow.
 */
export function sizedEase(job: Job, needs: NeedsOverRange, doubt: CoverDoubt): Ease {
  const { foreEdge_mm: foreEdge, head_mm: head, tail_mm: tail, share } = job.ease;
  const sized = (['foreEdge', 'head', 'tail'] as const).filter((edge) => job.ease[`${edge}_mm`] === null);
  const { thick } = needs;
  const { along, across } = changeOf(job);
  const isTurned = job.pockets.construction === 'turned';
  const step = cutStep(job);
  // What the thick end needs, without ease; size as cut, not rounded.
  const bare: CutSize = {
    width: (Math.max(thick.closed.length, thick.flat.length) + 2 * endNeed(thick)) / (1 + across),
    height: (thick.book.height + 2 * (largestHeadTail(needs).needed + job.seam.edgeMargin_mm)) / (1 + along),
  };
  const easeIn = ({ width, height }: CutSize): Ease => {
    const high = (height - bare.height) * (1 + along);
    return {
      foreEdge_mm: foreEdge ?? mm(((width - bare.width) * (1 + across)) / 2),
      head_mm: head ?? mm(high / 2),
      tail_mm: tail ?? mm(high / 2),
      sized,
      reaches: true,
    };
  };
  const isOpen = { width: foreEdge === null, height: head === null || tail === null };
  if (!isOpen.width && !isOpen.height) return easeIn(bare);

  // The width of a cover with turned ends is rounded together with their depth, which is not known yet.
  const stepOf = { width: isTurned ? 0 : step, height: step };
  const rounded = (dimension: Dimension, size: number): number => roundUp(size, stepOf[dimension]);
  const typed: CutSize = {
    width: rounded('width', bare.width + (2 * (foreEdge ?? 0)) / (1 + across)),
    height: rounded('height', bare.height + ((head ?? 0) + (tail ?? 0)) / (1 + along)),
  };
  const chances = (cut: CutSize): CutChances => {
    const lean = isOpen.height ? 0 : ((head ?? 0) - (tail ?? 0)) / 2;
    return new CutChances(doubt, spareOf(doubt, cut), loosestOf(job, lean));
  };

  const none = spareOf(doubt, bare);
  const limits = loosestOf(job, 0);
  /** The cut with room for z standard deviations wherever the size is open, but never past the middle of what may be. */
  const withRoom = (z: number): CutSize => {
    const lower = Math.max(z * none.closed.u - none.closed.mean, z * none.flat.u - none.flat.mean);
    const middle = (limits.wrap + Math.max(0, none.closed.mean - none.flat.mean)) / 2 - none.closed.mean;
    const high = Math.min(z * none.height.u, limits.height / 2) - none.height.mean;
    return {
      width: isOpen.width ? bare.width + Math.min(lower, middle) / (1 + across) : typed.width,
      height: isOpen.height ? bare.height + high / (1 + along) : typed.height,
    };
  };
  /** The least room that reaches the share, of the whole or of one dimension; null where none does. */
  const reaching = (of?: Dimension): CutSize | null => {
    const chanceOf = (cut: CutSize): number => chances(cut).fits(of);
    if (chanceOf(withRoom(FAR)) < share) return null;
    let [low, high] = [0, FAR];
    let z = normalQuantile((1 + share) / 2);
    for (let i = 0; i < MOST_STEPS; i++) {
      const chance = chanceOf(withRoom(z));
      if (chance >= share) high = Math.min(high, z);
      else low = Math.max(low, z);
      if (chance >= share && chance - share < SHARE_WITHIN) break;
      const next = z + normalQuantile(share + SHARE_WITHIN / 2) - normalQuantile(chance);
      const isNewton = i < NEWTON_STEPS && next > low && next < high;
      z = isNewton ? next : high === FAR ? 2 * z : (low + high) / 2;
    }
    return madeOf(withRoom(high), chanceOf);
  };
  /** The cut where its rounding up keeps the share, else sizes of the cut step next to it that do; null where none does. */
  const madeOf = (cut: CutSize, chanceOf: (cut: CutSize) => number): CutSize | null => {
    const round = (dimension: Dimension): readonly number[] =>
      isOpen[dimension]
        ? [roundUp(cut[dimension], stepOf[dimension]), roundDown(cut[dimension], stepOf[dimension])]
        : [cut[dimension]];
    const tried = round('width').flatMap((width) => round('height').map((height) => ({ width, height })));
    const found = tried.find((each) => chanceOf(each) >= share) ?? null;
    return found === tried[0] ? cut : found;
  };

  const whole = reaching();
  if (whole !== null) return easeIn(whole);
  const alone = isOpen.width === isOpen.height ? null : reaching(isOpen.width ? 'width' : 'height');
  if (alone !== null) return easeIn(alone);
  const best = withRoom(FAR);
  const nearest = (dimension: Dimension): number =>
    isOpen[dimension] ? roundDown(best[dimension] + stepOf[dimension] / 2, stepOf[dimension]) : best[dimension];
  return { ...easeIn({ width: nearest('width'), height: nearest('height') }), reaches: false };
}
