import type { Needs } from '../allowance/needs.ts';
import type { CoverDoubt } from '../doubt/coverDoubt.ts';
import { measureNext, type NextMeasure } from '../doubt/measureNext.ts';
import { CutChances, type Doubted, doubted, loosestOf, type Spare, spareOf } from '../doubt/spare.ts';
import type { Job } from '../job/jobSchema.ts';
import { normalQuantile } from '../math/normal.ts';
import type { Pieces } from '../pattern/pieces.ts';

/** A gap at an edge. */
export interface Gap extends Doubted {
  /** How much smaller it may be, mm, before the boards go in no more: itself, but for head and tail half of what both have. */
  readonly room: number;
}

/** The fit of a cover at the middle of its leather, each length with its doubt to first order, and the chances that follow. */
export interface FitDoubt {
  /** Wished share of covers that fit. */
  readonly share: number;
  /** Standard uncertainties between a mean and its limit at that share. */
  readonly deviations: number;
  /** Spare wrap closed and flat, and spare height, mm. */
  readonly spare: Spare;
  /** Gaps, mm: at each fore-edge half the spare wrap. */
  readonly gaps: Readonly<Record<'foreEdge' | 'head' | 'tail', Gap>>;
  /** Board that stays in its pocket, mm, not cut off at 0. */
  readonly held: Doubted;
  /** Board that could be covered more and the second board still be loaded, mm. */
  readonly loading: Doubted;
  readonly chances: CutChances;
  /** Measurements that would save most; found when they are first asked for. */
  readonly next: () => readonly NextMeasure[];
}

/**
 * Works out what the checks of a cover are judged by.
 * @param needs at the middle of the leather
 * @param pieces as they are cut
 */
export function fitDoubt(job: Job, needs: Needs, pieces: Pieces, doubt: CoverDoubt): FitDoubt {
  const isTurned = job.pockets.construction === 'turned';
  // Marked on the cut leather, the depth changes with it.
  const depth = pieces.pocketDepth / pieces.growth;
  const cut = {
    width: pieces.outside.width - (isTurned ? 2 * depth : 0),
    height: pieces.outside.height,
  };
  const spare = spareOf(doubt, cut);
  const { closed, height } = spare;
  // As in `coverFit`: head and tail keep the difference of their eases where there is room for it.
  const lean = (pieces.ease.head_mm - pieces.ease.tail_mm) / 2;
  const leans = height.mean >= 2 * Math.abs(lean) ? lean : 0;
  const half = shared(height);
  const [least, most] = gapShares(job.seating, closed.mean);
  const wrap = (share: number) => ({ widthChange: share * cut.width, widthAdds: share, closed: -share });
  // Held: depth less seat, less the larger gap, less half of what the wrap is longer closed than flat.
  const { means } = doubt;
  const drawn = means.closed > means.flat ? 1 / 2 : 0;
  const heldWrap = wrap(-most);
  let next: readonly NextMeasure[] | undefined;
  const stay = 1 - Math.cos(needs.book.foldBack);
  return {
    share: job.ease.share,
    deviations: normalQuantile(job.ease.share),
    spare,
    gaps: {
      foreEdge: shared(closed),
      head: { ...half, mean: half.mean + leans },
      tail: { ...half, mean: half.mean - leans },
    },
    held: doubted(
      doubt,
      {
        ...heldWrap,
        widthChange: heldWrap.widthChange + depth,
        closed: heldWrap.closed - drawn,
        flat: drawn,
        seat: -1,
      },
      depth - most * cut.width,
    ),
    loading: doubted(
      doubt,
      { ...wrap(least), widthChange: least * cut.width - depth, board: stay, seat: 1 },
      least * cut.width - depth,
    ),
    chances: new CutChances(doubt, spare, loosestOf(job, lean)),
    next: () => (next ??= measureNext(job, doubt, cut)),
  };
}

/** Half of a spare room, as each of two edges has it. */
const shared = ({ mean, u, slopes }: Doubted): Gap => ({
  mean: mean / 2,
  room: mean / 2,
  u: u / 2,
  slopes: slopes.map((slope) => slope / 2),
});

/** Shares of the spare wrap at the smaller and at the larger fore-edge gap, as the boards sit; an overrun covers no board less. */
function gapShares(seating: Job['seating'], spare: number): [least: number, most: number] {
  if (spare <= 0 || seating === 'spine') return [0, 0];
  return seating === 'centred' ? [1 / 2, 1 / 2] : [0, 1];
}
