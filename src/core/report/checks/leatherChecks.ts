import { roundUp } from '../../allowance/roundUp.ts';
import { outerStrain } from '../../leather/bend.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import type { Answer, CheckContext } from '../check.ts';

/**
 * Does the grain side stretch too far at the folds of the spine?
 *
 * Strain of the outer face (1 - K) / (r/t + K) at the fold that will be pressed, r the larger of the book's edge radius and
 * bendRatio t: the same with the elastic strip solved and without.
 */
export function foldStrain({ design, say }: CheckContext): Answer {
  const strains = RANGE_POINTS.map((point) => {
    const { book, leathers } = design.needs[point];
    const { foldThickness, neutral, bendRatio } = leathers.outside;
    const radius = Math.max(book.edgeRadius + (leathers.lining?.foldThickness ?? 0), bendRatio * foldThickness);
    return outerStrain(radius, foldThickness, neutral);
  });
  const value = Math.max(...strains);
  const limit = design.job.leather.outside.strainLimit;
  const verdict = value <= limit ? 'fits' : 'tight';
  // A strain under its limit is rounded down and one over it up, so that the figures never contradict the verdict.
  const percent = (strain: number, round: (x: number) => number): string => say.share(round(100 * strain) / 100);
  return {
    verdict,
    value,
    limit,
    bound: 'atMost',
    message: `The grain side stretches ${percent(value, verdict === 'fits' ? Math.floor : Math.ceil)} at the pressed folds of the spine; ${percent(limit, Math.round)} is taken as its limit.`,
    remedy:
      verdict === 'fits'
        ? ''
        : 'Case the leather (fold it damp), groove the flesh side or skive it at the folds, and try an offcut first.',
  };
}

/** Least margin against tearing of the thread: one thickness of the outside, but at least this, mm. An assumption. */
const LEAST_MARGIN = 1.5;

/** Step to which a remedy rounds a margin that has to be wider than the usual one, mm. */
const MARGIN_STEP = 0.5;

/** Usual margins, mm: 1/8 to 3/16 in stitched, about 1/4 in laced. Common practice, no source. */
const USUAL_MARGIN = { stitching: 3.175, lacing: 6.35 } as const;

/** Is there enough leather between the seam and the cut edge? */
export function seamMargin({ design, say }: CheckContext): Answer {
  const { seam } = design.job;
  const value = seam.edgeMargin_mm;
  const limit = Math.max(LEAST_MARGIN, design.needs.thick.leathers.outside.thickness);
  const holds = value >= limit;
  const usual = USUAL_MARGIN[seam.method];
  const wanted = Math.max(usual, roundUp(limit, MARGIN_STEP));
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
