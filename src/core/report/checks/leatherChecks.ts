import { outerStrain } from '../../leather/bend.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import type { Check, CheckContext } from '../check.ts';

/** Does the grain side stretch too far at the folds of the spine? */
export function foldStrain({ design, elastic, say }: CheckContext): Check {
  const strains = RANGE_POINTS.map((point) => {
    const { book, leathers } = design.needs[point];
    const { foldThickness, neutral, bendRatio } = leathers.outside;
    const pressed = Math.max(book.edgeRadius + (leathers.lining?.foldThickness ?? 0), bendRatio * foldThickness);
    const solved = elastic?.[point].closed;
    // The strip's own radius where it has solved; leather pressed to a crease is bent no sharper than the closed form says.
    const radius = solved?.status === 'converged' ? (solved.insideRadius ?? Number.POSITIVE_INFINITY) : pressed;
    return outerStrain(radius, foldThickness, neutral);
  });
  const value = Math.max(...strains);
  const limit = design.job.leather.outside.strainLimit;
  const holds = value <= limit;
  return {
    id: 'foldStrain',
    title: 'Grain at the folds',
    verdict: holds ? 'fits' : 'tight',
    value,
    limit,
    bound: 'atMost',
    unit: '',
    message: `The grain side stretches ${say.share(value)} at the folds of the spine; ${say.share(limit)} is taken as its limit.`,
    remedy: holds
      ? ''
      : 'Case the leather (fold it damp), groove the flesh side or skive it at the folds, and try an offcut first.',
    change: [],
  };
}

/** Least margin before the thread tears out: one thickness of the outside, and never under this, mm. An assumption. */
const LEAST_MARGIN = 1.5;

/** Usual margins, mm: 1/8 to 3/16 in stitched, about 1/4 in laced. Common practice, no source. */
const USUAL_MARGIN = { stitching: 3.175, lacing: 6.35 } as const;

/** Is there enough leather between the seam and the cut edge? */
export function seamMargin({ design, say }: CheckContext): Check {
  const { seam } = design.job;
  const value = seam.edgeMargin_mm;
  const limit = Math.max(LEAST_MARGIN, design.needs.thick.leathers.outside.thickness);
  const holds = value >= limit;
  const usual = USUAL_MARGIN[seam.method];
  return {
    id: 'seamMargin',
    title: 'Edge margin',
    verdict: holds ? 'fits' : 'fails',
    value,
    limit,
    bound: 'atLeast',
    unit: 'mm',
    message:
      `${say.given(value)} from seam to cut edge; under ${say.given(limit)} the ${seam.method === 'lacing' ? 'lace' : 'thread'} may tear out.` +
      (holds && value < usual - 1e-9 ? ` Narrower than the usual ${say.given(usual)} for ${seam.method}.` : ''),
    remedy: holds ? '' : `Set the seam ${say.given(usual)} from the edge, as is usual for ${seam.method}.`,
    change: holds ? [] : [{ path: 'seam.edgeMargin_mm', value: usual }],
  };
}
