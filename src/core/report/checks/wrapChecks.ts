import { isRiseEstimated } from '../../book/rise.ts';
import { cutStep } from '../../job/workSchema.ts';
import { RANGE_POINTS, type RangePoint } from '../../leather/leatherModel.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { MM_PER_INCH } from '../../units/mm.ts';
import { type Answer, type CheckContext, type Remedy, verdictWithin } from '../check.ts';
import type { Verdict } from '../checkSchema.ts';
import { type EdgeGap, mendedEase, mendedSize } from './resize.ts';

/** The edges at which a gap is judged. At the fore-edges it is the spare wrap shared evenly: half of it each. */
type Edge = keyof CheckContext['uncertainty'];

const EDGES = {
  foreEdge: { at: 'at each fore-edge', overrun: '' },
  head: { at: 'at the head', overrun: ': the board runs past the place where its edge comes to rest' },
  tail: { at: 'at the tail', overrun: ': the board runs past the place where its edge comes to rest' },
} as const satisfies Record<Edge, object>;

const worstPoint = (slack: (point: RangePoint) => number): RangePoint =>
  RANGE_POINTS.reduce((worst, point) => (slack(point) < slack(worst) ? point : worst));

/** The point of the weight range with the least spare closed wrap. */
export const leastWrap = ({ fits }: CheckContext['design']): RangePoint =>
  worstPoint((point) => fits[point].closedSlack);

/** The gaps of an edge over the weight range, mm. */
const gapsAt = ({ fits }: CheckContext['design'], edge: Edge): readonly number[] =>
  RANGE_POINTS.map((point) => (edge === 'foreEdge' ? fits[point].closedSlack / 2 : fits[point][edge]));

/** Gap and limits of an edge; at the fore-edges the smaller of the closed and the flat gap counts. */
function roomAt({ design, uncertainty }: CheckContext, edge: Edge): EdgeGap {
  const { fits, job } = design;
  const gaps = gapsAt(design, edge);
  const flat = edge === 'foreEdge' ? RANGE_POINTS.map((point) => fits[point].flatSlack / 2) : [];
  return {
    least: Math.min(...gaps, ...flat),
    most: Math.max(...gaps),
    ease: job.ease[`${edge}_mm`],
    error: uncertainty[edge].worst_mm,
    loosest: job.loosest[`${edge}_mm`],
  };
}

/** The measuring error, printed so that it never contradicts the verdict beside a gap that is rounded down. */
function shift(say: CheckContext['say'], error: number, verdict: Verdict): string {
  if (verdict !== 'fits') return say.gap(-error);
  const found = say.gap(error);
  const finest = say.units === 'in' ? MM_PER_INCH / 64 : 0.1;
  return error > 0 && found === say.gap(0) ? `under ${say.length(finest)}` : found;
}

/** A cover sized from an estimated rise is at best `tight`. */
const atBestTight = ({ design }: CheckContext, verdict: Verdict): Verdict =>
  verdict === 'fits' && isRiseEstimated(design.job.book) ? 'tight' : verdict;

/**
 * The size or the ease that corrects an edge. One width serves the closed and the flat wrap and both fore-edges, one
 * height head and tail, so rows that share a size never ask for two.
 */
function mend(context: CheckContext, edge: Edge, verdict: Verdict): Remedy {
  const { design, say } = context;
  const { job, pieces } = design;
  const isWidth = edge === 'foreEdge';
  // Where the rise was estimated it must be measured, which its own row asks for.
  if (verdict === 'fits' || (isWidth && verdict === 'tight' && isRiseEstimated(job.book))) return {};
  const step = cutStep(job);
  const path = isWidth ? 'pattern.outsideWidth_mm' : 'pattern.outsideHeight_mm';
  if (job.pattern[isWidth ? 'outsideWidth_mm' : 'outsideHeight_mm'] !== null) {
    const now = pieces.outside[isWidth ? 'width' : 'height'];
    const edges = (isWidth ? (['foreEdge'] as const) : (['head', 'tail'] as const)).map((each) =>
      roomAt(context, each),
    );
    const size = mendedSize(now, edges, step);
    if (size === null) return noSize(say.size(Math.min(...edges.map(({ loosest }) => loosest))));
    const by = size - now;
    if (Math.abs(by) < TOLERANCE.length) return {};
    return {
      remedy:
        `Cut ${isWidth ? 'the outside' : 'outside and pockets'} ${say.size(size)} ${isWidth ? 'wide' : 'high'}, ` +
        `${say.length(Math.abs(by))} ${by > 0 ? 'more' : 'less'}.`,
      change: [{ path, value: size }],
    };
  }
  const room = roomAt(context, edge);
  const ease = mendedEase(room, step, job.work.units);
  if (ease === null || ease === room.ease) return noSize(say.size(room.loosest));
  return {
    remedy:
      ease > room.ease
        ? `Allow ${say.size(ease)} of ease ${EDGES[edge].at}: the measures may take ${say.length(room.error)} away.`
        : `Ask for ${say.size(ease)} of ease ${EDGES[edge].at}, or allow a looser gap.`,
    change: [{ path: `ease.${edge}_mm`, value: ease }],
  };
}

const noSize = (loosest: string): Remedy => ({
  remedy: `No size is sure to close in the thickest leather and no looser than ${loosest} in the thinnest: choose leather of a narrower weight range, or allow a looser gap.`,
});

/** Does the closed wrap reach from board edge to board edge over the whole weight range? */
export function closes(context: CheckContext): Answer {
  const { design, uncertainty, say } = context;
  const point = leastWrap(design);
  const fit = design.fits[point];
  const verdict = atBestTight(context, verdictWithin(fit.closedSlack, uncertainty.foreEdge, 2));
  const at = say.weight(design.needs[point].leathers.outside.thickness);
  const short = say.gap(fit.closedSlack);
  const message = fit.closes
    ? `${say.range(RANGE_POINTS.map((each) => design.fits[each].closedSlack))} of spare wrap over the weight range` +
      (verdict === 'fits'
        ? '.'
        : `; the measures may take ${shift(say, 2 * uncertainty.foreEdge.worst_mm, verdict)} away.`)
    : fit.staysOpen === null
      ? `The wrap is ${short} short at ${at}; even with the book flat the boards do not go in.`
      : `The wrap is ${short} short at ${at}: the book stays open ${say.angle(fit.staysOpen)}, its fore-edges ${say.length(fit.gape)} apart.`;
  return {
    verdict,
    value: fit.closedSlack,
    bound: 'atLeast',
    message,
    ...mend(context, 'foreEdge', verdict),
  };
}

/** Does the flat wrap reach, so that the book lies open? */
export function opens(context: CheckContext): Answer {
  const { design, uncertainty, say } = context;
  const { flatSlack, opensTo } = design.fits[worstPoint((point) => design.fits[point].flatSlack)];
  const verdict = atBestTight(context, verdictWithin(flatSlack, uncertainty.foreEdge, 2));
  const over = (of: 'flatSlack' | 'boardTravel'): string =>
    say.range(RANGE_POINTS.map((point) => design.fits[point][of]));
  const message =
    flatSlack >= 0
      ? `Lies flat with ${over('flatSlack')} spare; each board moves ${over('boardTravel')} in its pocket.`
      : opensTo === null
        ? `The wrap is ${say.gap(flatSlack)} short with the book flat, and short closed too.`
        : `The wrap is ${say.gap(flatSlack)} short with the book flat: it opens to ${say.angle(opensTo, 'down')}.`;
  return { verdict, value: flatSlack, bound: 'atLeast', message, ...mend(context, 'foreEdge', verdict) };
}

/**
 * The gap at an edge, judged by the thickest leather for room and by the thinnest for looseness; it never fits while over the
 * loosest.
 */
export const edgeGap =
  (edge: Edge) =>
  (context: CheckContext): Answer => {
    const { design, uncertainty, say } = context;
    const { seating } = design.job;
    const { error, loosest } = roomAt(context, edge);
    const gaps = gapsAt(design, edge);
    const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
    const { at, overrun } = EDGES[edge];
    const shared =
      edge !== 'foreEdge' || seating === 'centred' ? '' : `, shared evenly; the boards sit to the ${seating}`;
    const found = `Gap of ${say.range(gaps)} ${at}${shared}`;
    const roomy = verdictWithin(least, uncertainty[edge]);
    if (roomy !== 'fails' && most > loosest + TOLERANCE.length)
      return {
        verdict: 'loose',
        value: most,
        limit: loosest,
        bound: 'atMost',
        message: `${found}; over ${say.size(loosest)} it is too loose, and the cover shifts on the book.`,
        ...mend(context, edge, 'loose'),
      };
    const verdict = edge === 'foreEdge' ? atBestTight(context, roomy) : roomy;
    return {
      verdict,
      value: least,
      bound: 'atLeast',
      message:
        least < 0
          ? `Overrun of ${say.gap(least)} ${at} in the heaviest leather${overrun}.`
          : `${found}; the measures may shift it by ${shift(say, error, verdict)}.`,
      ...mend(context, edge, verdict),
    };
  };

/** Whether the boards go into the cover at all, from seam to seam and at head and tail. */
const boardsGoIn = ({ design, uncertainty }: CheckContext): boolean =>
  RANGE_POINTS.every((point) => design.fits[point].staysOpen !== null) &&
  (['head', 'tail'] as const).every(
    (edge) => verdictWithin(Math.min(...gapsAt(design, edge)), uncertainty[edge]) !== 'fails',
  );

/** A check that has no meaning for a cover whose boards do not go in. */
export const ifBoardsGoIn =
  <Context extends CheckContext>(ask: (context: Context) => Answer) =>
  (context: Context): Answer =>
    boardsGoIn(context)
      ? ask(context)
      : { verdict: 'none', state: 'does not apply', message: 'The boards do not go in, so this is not asked.' };
