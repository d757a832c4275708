import { isRiseEstimated } from '../../book/rise.ts';
import type { JobPath } from '../../job/jobPath.ts';
import { cutStep } from '../../job/workSchema.ts';
import { RANGE_POINTS, type RangePoint } from '../../leather/leatherModel.ts';
import { MM_PER_INCH } from '../../units/mm.ts';
import { type Check, type CheckContext, NOISE, stateOf, type Verdict, verdictWithin } from '../check.ts';
import type { ErrorBand } from '../uncertainty.ts';
import { type EdgeGap, mendedEase, mendedSize } from './resize.ts';

interface Remedy {
  readonly remedy: string;
  readonly change: Check['change'];
}

const NOTHING: Remedy = { remedy: '', change: [] };

/** What the measures may take, printed so that it never contradicts the verdict beside a gap that is rounded down. */
function shift(say: CheckContext['say'], error: number, verdict: Verdict): string {
  if (verdict !== 'fits') return say.gap(-error);
  const found = say.gap(error);
  const finest = say.units === 'in' ? MM_PER_INCH / 64 : 0.1;
  return error > 0 && found === say.gap(0) ? `under ${say.length(finest)}` : found;
}

const worstPoint = (slack: (point: RangePoint) => number): RangePoint =>
  RANGE_POINTS.reduce((worst, point) => (slack(point) < slack(worst) ? point : worst));

/** Where in the weight range the closed wrap has least to spare: what the headline and the row of closing tell of. */
export const leastWrap = ({ fits }: CheckContext['design']): RangePoint =>
  worstPoint((point) => fits[point].closedSlack);

const over = (of: (point: RangePoint) => number): readonly number[] => RANGE_POINTS.map(of);

/** The fore-edges as one: half the spare wrap each, the smaller of closed and flat to be mended. */
function foreEdgeGap({ design, uncertainty }: CheckContext): EdgeGap {
  const { fits, job } = design;
  return {
    least: Math.min(...over((point) => Math.min(fits[point].closedSlack, fits[point].flatSlack))) / 2,
    most: Math.max(...over((point) => fits[point].closedSlack)) / 2,
    ease: job.ease.foreEdge_mm,
    error: uncertainty.foreEdge.worst,
    loosest: job.loosest.foreEdge_mm,
  };
}

/** A cover sized from an estimate of the rise may turn out either way, however the estimate comes out. */
const atBestTight = ({ design }: CheckContext, verdict: Verdict): Verdict =>
  verdict === 'fits' && isRiseEstimated(design.job.book) ? 'tight' : verdict;

/** The one width that mends the closed and the flat wrap and both fore-edges, so that these rows never ask for two. */
function mendWidth(context: CheckContext, verdict: Verdict): Remedy {
  const { design, say } = context;
  const { job, pieces } = design;
  if (verdict === 'fits') return NOTHING;
  // Only the measure can help, and its own row asks for it.
  if (verdict === 'tight' && isRiseEstimated(job.book)) return NOTHING;
  const edge = foreEdgeGap(context);
  const step = cutStep(job);
  if (job.pattern.outsideWidth_mm !== null)
    return cutTo(
      context,
      'wide',
      'pattern.outsideWidth_mm',
      pieces.outside.width,
      mendedSize(pieces.outside.width, [edge], step),
    );
  return (
    easeTo(context, 'at each fore-edge', 'ease.foreEdge_mm', edge, mendedEase(edge, step, job.work.units)) ??
    noSize(say.size(edge.loosest))
  );
}

const noSize = (loosest: string): Remedy => ({
  remedy: `No size is sure to close in the thickest leather and no looser than ${loosest} in the thinnest: choose leather of a narrower weight range, or allow a looser gap.`,
  change: [],
});

function cutTo(
  { design, say }: CheckContext,
  way: 'wide' | 'high',
  path: JobPath,
  now: number,
  size: number | null,
): Remedy {
  const { loosest } = design.job;
  if (size === null)
    return noSize(say.size(way === 'wide' ? loosest.foreEdge_mm : Math.min(loosest.head_mm, loosest.tail_mm)));
  const by = size - now;
  if (Math.abs(by) < NOISE) return NOTHING;
  const what = way === 'wide' ? 'the outside' : 'outside and pockets';
  return {
    remedy: `Cut ${what} ${say.size(size)} ${way}, ${say.length(Math.abs(by))} ${by > 0 ? 'more' : 'less'}.`,
    change: [{ path, value: size }],
  };
}

function easeTo(
  { say }: CheckContext,
  where: string,
  path: JobPath,
  { ease, error }: EdgeGap,
  to: number | null,
): Remedy | null {
  if (to === null || to === ease) return null;
  return {
    remedy:
      to > ease
        ? `Allow ${say.size(to)} of ease ${where}: the measures may take ${say.length(error)} away.`
        : `Ask for ${say.size(to)} of ease ${where}, or allow a looser gap.`,
    change: [{ path, value: to }],
  };
}

/** The spare wrap is off by what both fore-edges are. */
const doubled = ({ worst, ruler }: ErrorBand) => ({ worst: 2 * worst, ruler: 2 * ruler });

/** Does the closed wrap reach from board edge to board edge over the whole weight range? */
export function closes(context: CheckContext): Check {
  const { design, uncertainty, say } = context;
  const point = leastWrap(design);
  const fit = design.fits[point];
  const error = 2 * uncertainty.foreEdge.worst;
  const verdict = atBestTight(context, verdictWithin(fit.closedSlack, doubled(uncertainty.foreEdge)));
  const at = say.weight(design.needs[point].leathers.outside.thickness);
  const slacks = over((p) => design.fits[p].closedSlack);
  const short = say.gap(fit.closedSlack);
  const message = fit.closes
    ? `${say.range(slacks)} of spare wrap over the weight range` +
      (verdict === 'fits' ? '.' : `; the measures may take ${shift(say, error, verdict)} away.`)
    : fit.staysOpen === null
      ? `The wrap is ${short} short at ${at}; even with the book flat the boards do not go in.`
      : `The wrap is ${short} short at ${at}: the book stays open ${say.angle(fit.staysOpen)}, its fore-edges ${say.length(fit.gape)} apart.`;
  return {
    id: 'closes',
    title: 'Closing',
    verdict,
    state: stateOf(verdict, 'too small'),
    value: fit.closedSlack,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message,
    ...mendWidth(context, verdict),
  };
}

/** Does the flat wrap reach, so that the book lies open? */
export function opens(context: CheckContext): Check {
  const { design, uncertainty, say } = context;
  const point = worstPoint((p) => design.fits[p].flatSlack);
  const fit = design.fits[point];
  const verdict = atBestTight(context, verdictWithin(fit.flatSlack, doubled(uncertainty.foreEdge)));
  const travel = say.range(over((p) => design.fits[p].boardTravel));
  const message =
    fit.flatSlack >= 0
      ? `Lies flat with ${say.range(over((p) => design.fits[p].flatSlack))} spare; each board moves ${travel} in its pocket.`
      : fit.opensTo === null
        ? `The wrap is ${say.gap(fit.flatSlack)} short with the book flat, and short closed too.`
        : `The wrap is ${say.gap(fit.flatSlack)} short with the book flat: it opens to ${say.angle(fit.opensTo, 'down')}.`;
  return {
    id: 'opens',
    title: 'Opening flat',
    verdict,
    state: stateOf(verdict, 'too small'),
    value: fit.flatSlack,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message,
    ...mendWidth(context, verdict),
  };
}

/** Gap at one fore-edge when the spare wrap is shared evenly: half of it. */
export function foreEdge(context: CheckContext): Check {
  const { design } = context;
  const { seating } = design.job;
  const gaps = over((p) => design.fits[p].closedSlack / 2);
  const { error, loosest } = foreEdgeGap(context);
  const judged = edgeVerdict(gaps, context.uncertainty.foreEdge, loosest);
  const verdict = atBestTight(context, judged.verdict);
  const shared = seating === 'centred' ? '' : `, shared evenly; the boards sit to the ${seating}`;
  return {
    id: 'foreEdge',
    title: 'Fore-edges',
    ...judged,
    verdict,
    state: stateOf(verdict, 'too small'),
    unit: 'mm',
    message: edgeMessage(context, gaps, verdict, { at: 'at each fore-edge', shared, error, loosest, overrun: '' }),
    ...mendWidth(context, verdict),
  };
}

/** A gap is judged by the thickest leather for room and by the thinnest for looseness; it never fits while over the loosest. */
function edgeVerdict(
  gaps: readonly number[],
  band: ErrorBand,
  loosest: number,
): Pick<Check, 'verdict' | 'value' | 'limit' | 'bound'> {
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  const verdict = verdictWithin(least, band);
  if (verdict !== 'fails' && most > loosest + NOISE)
    return { verdict: 'loose', value: most, limit: loosest, bound: 'atMost' };
  return { verdict, value: least, limit: 0, bound: 'atLeast' };
}

function edgeMessage(
  { say }: CheckContext,
  gaps: readonly number[],
  verdict: Verdict,
  {
    at,
    shared,
    error,
    loosest,
    overrun,
  }: { at: string; shared: string; error: number; loosest: number; overrun: string },
): string {
  const least = Math.min(...gaps);
  if (least < 0 && verdict !== 'loose') return `Overrun of ${say.gap(least)} ${at} in the heaviest leather${overrun}.`;
  const found = `Gap of ${say.range(gaps)} ${at}${shared}`;
  if (verdict === 'loose')
    return `${found}; over ${say.size(loosest)} it is too loose, and the cover shifts on the book.`;
  return `${found}; the measures may shift it by ${shift(say, error, verdict)}.`;
}

const EDGES = { head: 'ease.head_mm', tail: 'ease.tail_mm' } as const;

type HeadTail = keyof typeof EDGES;

function headTailGap({ design, uncertainty }: CheckContext, edge: HeadTail): EdgeGap {
  const { fits, job } = design;
  const gaps = over((point) => fits[point][edge]);
  const [ease, loosest] =
    edge === 'head' ? [job.ease.head_mm, job.loosest.head_mm] : [job.ease.tail_mm, job.loosest.tail_mm];
  return { least: Math.min(...gaps), most: Math.max(...gaps), ease, error: uncertainty[edge].worst, loosest };
}

/** The one height that mends head and tail, for they are cut in one. */
function mendHeight(context: CheckContext, edge: HeadTail, verdict: Verdict): Remedy {
  if (verdict === 'fits') return NOTHING;
  const { job, pieces } = context.design;
  const step = cutStep(job);
  if (job.pattern.outsideHeight_mm !== null) {
    const { height } = pieces.outside;
    const edges = [headTailGap(context, 'head'), headTailGap(context, 'tail')];
    return cutTo(context, 'high', 'pattern.outsideHeight_mm', height, mendedSize(height, edges, step));
  }
  const gap = headTailGap(context, edge);
  return (
    easeTo(context, `at the ${edge}`, EDGES[edge], gap, mendedEase(gap, step, job.work.units)) ??
    noSize(context.say.size(gap.loosest))
  );
}

/** Gap at head or at tail. */
export function headOrTail(context: CheckContext, edge: HeadTail): Check {
  const gaps = over((p) => context.design.fits[p][edge]);
  const { error, loosest } = headTailGap(context, edge);
  const judged = edgeVerdict(gaps, context.uncertainty[edge], loosest);
  return {
    id: edge,
    title: edge === 'head' ? 'Head' : 'Tail',
    ...judged,
    state: stateOf(judged.verdict, 'too small'),
    unit: 'mm',
    message: edgeMessage(context, gaps, judged.verdict, {
      at: `at the ${edge}`,
      shared: '',
      error,
      loosest,
      overrun: ': the board runs past the place where its edge comes to rest',
    }),
    ...mendHeight(context, edge, judged.verdict),
  };
}

/** Whether the boards go into the cover at all, from seam to seam and at head and tail; what cannot go in is not asked more. */
export const boardsGoIn = (context: CheckContext): boolean =>
  RANGE_POINTS.every((point) => context.design.fits[point].staysOpen !== null) &&
  (['head', 'tail'] as const).every((edge) => {
    return verdictWithin(headTailGap(context, edge).least, context.uncertainty[edge]) !== 'fails';
  });
