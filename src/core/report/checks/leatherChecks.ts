import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import type { CoverDesign } from '../../fold/coverDesign.ts';
import { leastBendRatio, outerStrain } from '../../leather/bend.ts';
import { BREAKING_STRAIN, DAMP_GAIN } from '../../leather/breakingStrain.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { MM_PER_INCH } from '../../units/mm.ts';
import { casingCost } from '../casingCost.ts';
import type { Answer, CheckContext, Remedy } from '../check.ts';

/** Step down to which a skived thickness is rounded, and up to which the radius of a bead, mm: 0.1 mm, or 1/64 in. */
const FOLD_STEP = { mm: 0.1, in: MM_PER_INCH / 64 } as const;

/** Thinnest that a fold is skived, mm. Common practice, no source. */
const THINNEST_FOLD = 0.6;

/** Fold of the spine at one point of the weight range, mm. */
interface SpineFold {
  readonly thickness: number;
  readonly neutral: number;
  readonly bendRatio: number;
  /** Radius that the book gives the fold: that of its edge, and the lining over it; 0 where it is sharp. */
  readonly given: number;
}

const foldsOf = ({ needs }: CoverDesign): readonly SpineFold[] =>
  RANGE_POINTS.map((point) => {
    const { book, leathers } = needs[point];
    const { foldThickness, neutral, bendRatio } = leathers.outside;
    const given = book.edgeRadius + (leathers.lining?.foldThickness ?? 0);
    return { thickness: foldThickness, neutral, bendRatio, given };
  });

const strainOf = ({ thickness, neutral, bendRatio, given }: SpineFold): number =>
  outerStrain(Math.max(given, bendRatio * thickness), thickness, neutral);

const worstStrain = (folds: readonly SpineFold[]): number => Math.max(...folds.map(strainOf));

/** Stretch of the grain side at the pressed folds of the spine, as a share, at the worst point of the weight range. */
export const grainStretch = (design: CoverDesign): number => worstStrain(foldsOf(design));

/**
 * Does the grain side stretch too far at the folds of the spine?
 *
 * Strain of the outer face (1 - K) / (r/t + K) at the fold that will be pressed, r the larger of bendRatio t and the book's
 * edge radius with the lining over it: the same with the elastic strip solved and without. Leather that was tested is
 * judged by its own limit. Of leather that was not, nothing is known between what nearly all leathers bear and what none
 * does (`BREAKING_STRAIN`): there the row informs. A strain over the limit is at worst `tight`, for mellow leather crumples
 * inside the fold, which this model leaves out.
 */
export function foldStrain({ design, say }: CheckContext): Answer {
  const folds = foldsOf(design);
  const value = worstStrain(folds);
  const tested = design.job.leather.outside.strainLimit;
  const { least, most } = BREAKING_STRAIN;
  // A strain within its limit is rounded down and one over it up, so that the figures never contradict the verdict.
  const percent = (strain: number, round = Math.round): string => say.share(round(100 * strain) / 100);
  const stretches = (round = Math.round): string =>
    `The grain side stretches ${percent(value, round)} at the pressed folds of the spine`;

  if (tested === null && value > least && value <= most)
    return {
      verdict: 'none',
      state: 'not tested',
      value,
      message: `${stretches()}. Leathers break between ${percent(least)} and ${percent(most)}; where this one cracks is not tested.`,
      remedy:
        'Fold an offcut as the cover will be pressed and look for cracks. If it bears the fold, ' +
        `enter ${percent(value, Math.ceil)} as the strain limit.`,
    };
  const limit = tested ?? (value <= least ? least : most);
  const holds = value <= limit + TOLERANCE.ratio;
  const known =
    tested !== null
      ? `${percent(limit)} is its limit`
      : holds
        ? `nearly every leather bears ${percent(limit)}`
        : `no leather is expected to bear more than ${percent(limit)}`;
  return {
    verdict: holds ? 'fits' : 'tight',
    value,
    limit,
    bound: 'atMost',
    message: `${stretches(holds ? Math.floor : Math.ceil)}; ${known}.`,
    ...(!holds && wayOut(folds, limit, design, say)),
  };
}

/**
 * What brings the strain of the folds to its limit. Each way is tried in the model, and only what does it is offered.
 *
 * Skiving helps where the book gives the fold its radius, which stays while t falls; at a sharp edge r goes with t, and the
 * strain stays. A bead under the fold gives it a radius. Damp leather is taken to bear `DAMP_GAIN` of its limit.
 */
function wayOut(
  folds: readonly SpineFold[],
  limit: number,
  design: CheckContext['design'],
  say: CheckContext['say'],
): Remedy {
  const percent = (strain: number): string => say.share(Math.floor(100 * strain + TOLERANCE.ratio) / 100);
  const keepsLimit = (strain: number): boolean => strain <= limit + TOLERANCE.ratio;
  // One leather, one K; over 0, for a sharp fold does not keep the limit.
  const ratio = leastBendRatio(limit, folds[0]!.neutral);

  const step = FOLD_STEP[say.units];
  const skived = roundDown(Math.min(...folds.map(({ given }) => given)) / ratio, step);
  const skivedStrain = worstStrain(folds.map((fold) => ({ ...fold, thickness: Math.min(fold.thickness, skived) })));
  const canSkive = skived >= THINNEST_FOLD && keepsLimit(skivedStrain);

  const bead = roundUp(ratio * Math.max(...folds.map(({ thickness }) => thickness)), step);
  const beadStrain = worstStrain(folds.map((fold) => ({ ...fold, given: bead })));
  const canBead = bead <= design.needs.thick.book.thickness / 2 && keepsLimit(beadStrain);

  const isEnoughDamp = worstStrain(folds) <= DAMP_GAIN * limit;
  const ways = [
    canSkive && `Skived to ${say.size(skived)} at the folds it stretches ${percent(skivedStrain)}.`,
    isEnoughDamp &&
      `Folded damp (cased) it is taken to bear ${percent(DAMP_GAIN * limit)}, an assumption.${casingCost(design, say)}`,
    canBead &&
      `Over a bead of ${say.size(bead)} radius in each fold it stretches ${percent(beadStrain)}; the wrap grows with it.`,
  ].filter((way) => way !== false);
  return {
    remedy: `${ways.length > 0 ? ways.join(' ') : 'Choose a leather that bears a sharper fold.'} Try an offcut first.`,
    change: canSkive ? [{ path: 'leather.outside.foldThickness_mm', value: skived }] : [],
  };
}

/** Least margin against tearing of the thread: one thickness of the outside, but at least this, mm. An assumption. */
const LEAST_MARGIN = 1.5;

/** Step up to which a remedy rounds a margin that has to be wider than the usual one, mm: 0.5 mm, or 1/32 in. */
const MARGIN_STEP = { mm: 0.5, in: MM_PER_INCH / 32 } as const;

/** Usual margins, mm: 1/8 to 3/16 in stitched, about 1/4 in laced. Common practice, no source. */
const USUAL_MARGIN = { stitching: 3.175, lacing: 6.35 } as const;

/** Is there enough leather between the seam and the cut edge? */
export function seamMargin({ design, say }: CheckContext): Answer {
  const { seam } = design.job;
  const value = seam.edgeMargin_mm;
  const limit = Math.max(LEAST_MARGIN, design.needs.thick.leathers.outside.thickness);
  const holds = value >= limit;
  const usual = USUAL_MARGIN[seam.method];
  const wanted = Math.max(usual, roundUp(limit, MARGIN_STEP[say.units]));
  return {
    verdict: holds ? 'fits' : 'fails',
    value,
    limit,
    bound: 'atLeast',
    message:
      `${say.size(value)} from seam to cut edge; under ${say.size(limit)} the ${seam.method === 'lacing' ? 'lace' : 'thread'} may tear out.` +
      (holds && value < usual - TOLERANCE.length
        ? ` Narrower than the usual ${say.size(usual)} for ${seam.method}.`
        : ''),
    ...(!holds && {
      remedy: `Set the seam ${say.size(wanted)} from the edge${wanted === usual ? `, as is usual for ${seam.method}` : ''}.`,
      change: [{ path: 'seam.edgeMargin_mm', value: wanted }],
    }),
  };
}
