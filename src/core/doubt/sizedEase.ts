import type { Ease } from '../allowance/ease.ts';
import { endNeed, largestHeadTail, type NeedsOverRange } from '../allowance/needs.ts';
import { roundDown, roundUp } from '../allowance/roundUp.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep } from '../job/workSchema.ts';
import { changeOf } from '../leather/changeOf.ts';
import { handOf } from '../leather/handOf.ts';
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

/** Step of the search for the best cut where sizes are not rounded, mm. */
const FINE_STEP = 0.1;

/**
 * Sizes the ease that the job leaves open, so that all conditions together (closes, goes in at head and tail, lies open, no
 * edge looser than wished) reach the wished share once the cover is cut in whole steps, with as little room as will do.
 *
 * Width and height get room for the same number of standard deviations. Head and tail are sized alike; where one of them is
 * typed, the other stays what it would be beside its like, and never takes of the gap that the typed one asks for. Where that does not reach the share, the cut with the best chance is
 * searched step by step, and then once more with head and tail as different as the gaps that are allowed there.
 *
 * Where no cut reaches the share, `reaches` is false. A dimension left open beside one that the maker fixed then reaches it by
 * itself; else the cut with the best chance is taken.
 *
 * Ease is counted at the thick end of the leather, as for a typed one, so that it may come out under 0 where the range of the
 * leather is the largest doubt. Sizes that the job fixes are left aside: the ease is what the tool would allow.
 * @param turned depth of turned ends, mm, which is rounded together with the width; 0 while it is not known
 */
export function sizedEase(job: Job, needs: NeedsOverRange, doubt: CoverDoubt, turned = 0): Ease {
  const alike = sizedWith(job, needs, doubt, turned, 0);
  const lean = (job.loosest.head_mm - job.loosest.tail_mm) / 2;
  if (alike.reaches || lean === 0 || job.ease.head_mm !== null || job.ease.tail_mm !== null) return alike;
  const uneven = sizedWith(job, needs, doubt, turned, lean);
  return uneven.reaches ? uneven : alike;
}

/** @param lean half of what the head gets more than the tail where both are open, mm */
function sizedWith(job: Job, needs: NeedsOverRange, doubt: CoverDoubt, turned: number, lean: number): Ease {
  const { foreEdge_mm: foreEdge, head_mm: head, tail_mm: tail, share } = job.ease;
  const sized = (['foreEdge', 'head', 'tail'] as const).filter((edge) => job.ease[`${edge}_mm`] === null);
  const { thick } = needs;
  const change = changeOf(job);
  const hand = handOf(job);
  const step = cutStep(job);
  // Turned ends are cut in one with the width, and are no part of it here.
  const ends = { width: job.pockets.construction === 'turned' ? (2 * turned) / (1 + change.width) : 0, height: 0 };
  const rounded = (round: typeof roundUp, dimension: Dimension, size: number): number =>
    round(size + ends[dimension], step) - ends[dimension];
  // What the thick end needs, without ease; size as cut, not rounded.
  const bare: CutSize = {
    width: (Math.max(thick.closed.length, thick.flat.length) + 2 * endNeed(thick) - hand.width) / (1 + change.width),
    height:
      (thick.book.height + 2 * (largestHeadTail(needs).needed + job.seam.edgeMargin_mm) - hand.height) /
      (1 + change.height),
  };
  const highIn = ({ height }: CutSize): number => (height - bare.height) * (1 + change.height);
  const easeIn = (cut: CutSize, reaches: boolean): Ease => {
    const high = highIn(cut);
    return {
      foreEdge_mm: foreEdge ?? mm(((cut.width - bare.width) * (1 + change.width)) / 2),
      head_mm: head ?? mm(tail === null ? high / 2 + lean : high - tail),
      tail_mm: tail ?? mm(head === null ? high / 2 - lean : high - head),
      sized,
      reaches,
    };
  };
  const isOpen = { width: foreEdge === null, height: head === null || tail === null };
  if (!isOpen.width && !isOpen.height) return easeIn(bare, true);

  const typed: CutSize = {
    width: rounded(roundUp, 'width', bare.width + (2 * (foreEdge ?? 0)) / (1 + change.width)),
    height: rounded(roundUp, 'height', bare.height + ((head ?? 0) + (tail ?? 0)) / (1 + change.height)),
  };
  const chance = (cut: CutSize, by: number, of?: Dimension): number =>
    new CutChances(doubt, spareOf(doubt, cut), loosestOf(job, by)).fits(of);
  const isBeside = (head === null) !== (tail === null);
  /** Chance of a cut with the eases that it comes to; 0 where an open one takes of what a typed one asks for. */
  const chanceIn = (cut: CutSize): number => {
    const { head_mm, tail_mm } = easeIn(cut, false);
    if (isBeside && Math.min(head_mm, tail_mm) < 0) return 0;
    return chance(cut, (head_mm - tail_mm) / 2);
  };

  const none = spareOf(doubt, bare);
  const limits = loosestOf(job, lean);
  /** The cut with room for z standard deviations wherever the size is open, but never past the middle of what may be. */
  const withRoom = (z: number): CutSize => {
    const lower = Math.max(z * none.closed.u - none.closed.mean, z * none.flat.u - none.flat.mean);
    const middle = (limits.wrap + Math.max(0, none.closed.mean - none.flat.mean)) / 2 - none.closed.mean;
    const high = Math.min(z * none.height.u, limits.height / 2) - none.height.mean;
    return {
      width: isOpen.width ? bare.width + Math.min(lower, middle) / (1 + change.width) : typed.width,
      height: isOpen.height ? bare.height + high / (1 + change.height) : typed.height,
    };
  };
  /** The least room that reaches the share, of the whole or of one dimension, head and tail alike; null where none is found. */
  const reaching = (of?: Dimension): CutSize | null => {
    const chanceOf = (cut: CutSize): number => chance(cut, isOpen.height ? lean : ((head ?? 0) - (tail ?? 0)) / 2, of);
    let [low, high] = [0, FAR];
    let z = normalQuantile((1 + share) / 2);
    for (let i = 0; i < MOST_STEPS; i++) {
      if (i === 1 && high === FAR && chanceOf(withRoom(FAR)) < share) return null;
      const reached = chanceOf(withRoom(z));
      if (reached >= share) high = Math.min(high, z);
      else low = Math.max(low, z);
      if (reached >= share && reached - share < SHARE_WITHIN) break;
      const next = z + normalQuantile(share + SHARE_WITHIN / 2) - normalQuantile(reached);
      const isNewton = i < NEWTON_STEPS && next > low && next < high;
      z = isNewton ? next : high === FAR ? 2 * z : (low + high) / 2;
    }
    return madeOf(withRoom(high), chanceOf);
  };
  /** The cut where its rounding up keeps the share, else sizes of the cut step next to it that do; null where none does. */
  const madeOf = (cut: CutSize, chanceOf: (cut: CutSize) => number): CutSize | null => {
    const round = (dimension: Dimension): readonly number[] =>
      isOpen[dimension]
        ? [rounded(roundUp, dimension, cut[dimension]), rounded(roundDown, dimension, cut[dimension])]
        : [cut[dimension]];
    const tried = round('width').flatMap((width) => round('height').map((height) => ({ width, height })));
    const found = tried.find((each) => chanceOf(each) >= share) ?? null;
    return found === tried[0] ? cut : found;
  };
  /** The cut in which an open head or tail beside a typed one is what it is in a cut with its like. */
  const beside = (cut: CutSize): CutSize => {
    if (!isBeside) return cut;
    return { ...cut, height: bare.height + (highIn(cut) / 2 + (head ?? tail ?? 0)) / (1 + change.height) };
  };
  const whole = reaching();
  if (whole !== null) {
    const cut = beside(whole);
    const isKept = !isBeside || chanceIn({ ...cut, height: rounded(roundUp, 'height', cut.height) }) >= share;
    if (isKept) return easeIn(cut, true);
  }

  /** The best cut that is reached from here by single steps up or down in the open dimensions; the first that reaches the share. */
  const climbed = (from: CutSize): { readonly cut: CutSize; readonly chance: number } => {
    const by = (dimension: Dimension): number[] =>
      (isOpen[dimension] ? [-1, 0, 1] : [0]).map((k) => k * (step || FINE_STEP));
    let best = { cut: from, chance: chanceIn(from) };
    while (best.chance < share) {
      const { width, height } = best.cut;
      const next = by('width')
        .flatMap((w) => by('height').map((h) => ({ width: width + w, height: height + h })))
        .map((cut) => ({ cut, chance: chanceIn(cut) }))
        .reduce((a, b) => (b.chance > a.chance ? b : a));
      if (next.chance <= best.chance) break;
      best = next;
    }
    return best;
  };
  const middle = withRoom(FAR);
  const nearest = (dimension: Dimension): number =>
    isOpen[dimension] ? rounded(roundDown, dimension, middle[dimension] + step / 2) : middle[dimension];
  const best = climbed({
    width: nearest('width'),
    // No less than a typed head or tail needs by itself.
    height: isBeside ? Math.max(nearest('height'), typed.height) : nearest('height'),
  });
  if (best.chance >= share) return easeIn(best.cut, true);
  const alone = isOpen.width === isOpen.height ? null : reaching(isOpen.width ? 'width' : 'height');
  return easeIn(alone === null ? best.cut : beside(alone), false);
}
