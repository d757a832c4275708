import { roundUp } from '../../allowance/roundUp.ts';
import type { Job } from '../../job/jobSchema.ts';
import { cutStep, INCH_STEPS } from '../../job/workSchema.ts';
import { RANGE_POINTS, type RangePoint } from '../../leather/leatherModel.ts';
import { type Check, type CheckContext, type JobChange, verdictWithin } from '../check.ts';

/** Step to which a remedy rounds an ease that it asks for, mm: 0.5 mm or 1/32 in. */
const easeStep = ({ work }: Job): number => (work.units === 'in' ? INCH_STEPS[1] : 0.5);

const worstPoint = (slack: (point: RangePoint) => number): RangePoint =>
  RANGE_POINTS.reduce((worst, point) => (slack(point) < slack(worst) ? point : worst));

/** Makes the outside wider, or, where the tool sizes it, the ease larger, until the gap clears the measuring error. */
function widen({ design, uncertainty, say }: CheckContext, gap: number): { remedy: string; change: JobChange[] } {
  const { job, pieces } = design;
  const wanted = Math.max(job.ease.foreEdge_mm, uncertainty.foreEdge.worst);
  if (job.pattern.outsideWidth_mm !== null) {
    const width = roundUp(pieces.outside.width + 2 * (wanted - gap), cutStep(job));
    return {
      remedy: `Cut the outside ${say.cut(width)} wide, ${say.length(width - pieces.outside.width)} more.`,
      change: [{ path: 'pattern.outsideWidth_mm', value: width }],
    };
  }
  const ease = roundUp(uncertainty.foreEdge.worst, easeStep(job));
  return {
    remedy: `Allow ${say.given(ease)} of ease at each fore-edge, as much as the measuring error can take away.`,
    change: [{ path: 'ease.foreEdge_mm', value: ease }],
  };
}

const NOTHING = { remedy: '', change: [] };

/** Does the closed wrap reach from seat to seat over the whole weight range? */
export function closes(context: CheckContext): Check {
  const { design, uncertainty, say } = context;
  const point = worstPoint((p) => design.fits[p].closedSlack);
  const fit = design.fits[point];
  const verdict = verdictWithin(fit.closedSlack, 2 * uncertainty.foreEdge.worst);
  const at = say.weight(design.needs[point].leathers.outside.thickness);
  const slacks = RANGE_POINTS.map((p) => design.fits[p].closedSlack);
  const short = say.gap(fit.closedSlack);
  const message = fit.closes
    ? `Spare round the closed wrap: ${say.range(slacks)} over the weight range` +
      (verdict === 'tight'
        ? `, less than the measures may be off (${say.length(2 * uncertainty.foreEdge.worst)}).`
        : '.')
    : fit.staysOpen === null
      ? `The wrap is ${short} short at ${at}; even with the book flat the boards do not go in.`
      : `The wrap is ${short} short at ${at}: the book stays open ${say.angle(fit.staysOpen)}, its fore-edges ${say.length(fit.gape)} apart.${pulled(context, point)}`;
  return {
    id: 'closes',
    title: 'Closes',
    verdict,
    value: fit.closedSlack,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message,
    ...(verdict === 'fits' ? NOTHING : widen(context, fit.closedSlack / 2)),
  };
}

/** What a firm pull would do about it, where the strip has been asked. */
function pulled({ elastic, say }: CheckContext, point: RangePoint): string {
  const stretch = elastic?.[point].stretch;
  if (!stretch) return '';
  return stretch.takes
    ? ` A pull of ${say.force(stretch.pull)} would stretch it home, and it would creep back.`
    : ` A firm pull takes up no more than ${say.gap(stretch.most)} of it.`;
}

/** Does the flat wrap reach, so that the book lies open? */
export function opens(context: CheckContext): Check {
  const { design, uncertainty, say } = context;
  const point = worstPoint((p) => design.fits[p].flatSlack);
  const fit = design.fits[point];
  const verdict = verdictWithin(fit.flatSlack, 2 * uncertainty.foreEdge.worst);
  const travel = say.range(RANGE_POINTS.map((p) => design.fits[p].boardTravel));
  const message =
    fit.flatSlack >= 0
      ? `Lies flat with ${say.range(RANGE_POINTS.map((p) => design.fits[p].flatSlack))} spare; each board moves ${travel} in its pocket.`
      : fit.opensTo === null
        ? `The wrap is ${say.gap(fit.flatSlack)} short with the book flat, and short closed too.`
        : `The wrap is ${say.gap(fit.flatSlack)} short with the book flat: it opens to ${say.angle(fit.opensTo, 'down')}.`;
  return {
    id: 'opens',
    title: 'Lies open',
    verdict,
    value: fit.flatSlack,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message,
    ...(verdict === 'fits' ? NOTHING : widen(context, fit.flatSlack / 2)),
  };
}

/** Gap at one fore-edge when the spare wrap is shared evenly. */
export function foreEdge(context: CheckContext): Check {
  const { design, uncertainty, say } = context;
  const gaps = RANGE_POINTS.map((p) => design.fits[p].closedSlack / 2);
  const value = Math.min(...gaps);
  const verdict = verdictWithin(value, uncertainty.foreEdge.worst);
  const { seating } = design.job;
  const shared = seating === 'centred' ? '' : `, shared evenly; the boards sit to the ${seating}`;
  return {
    id: 'foreEdge',
    title: 'Fore-edges',
    verdict,
    value,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message:
      value >= 0
        ? `Gap of ${say.range(gaps)} at each fore-edge${shared}; the measures may shift it by ${say.length(uncertainty.foreEdge.worst)}.`
        : `Overrun of ${say.gap(value)} at each fore-edge in the heaviest leather.`,
    ...(verdict === 'fits' ? NOTHING : widen(context, value)),
  };
}

const EDGES = { head: 'ease.head_mm', tail: 'ease.tail_mm' } as const;

/** Gap at head or at tail. */
export function headOrTail(context: CheckContext, edge: 'head' | 'tail'): Check {
  const { design, uncertainty, say } = context;
  const { job, pieces } = design;
  const gaps = RANGE_POINTS.map((p) => design.fits[p][edge]);
  const value = Math.min(...gaps);
  const error = uncertainty[edge].worst;
  const verdict = verdictWithin(value, error);
  const ease = roundUp(error, easeStep(job));
  const wanted = Math.max(edge === 'head' ? job.ease.head_mm : job.ease.tail_mm, error);
  const height = roundUp(pieces.outside.height + 2 * (wanted - value), cutStep(job));
  const fixed = job.pattern.outsideHeight_mm !== null;
  return {
    id: edge,
    title: edge === 'head' ? 'Head' : 'Tail',
    verdict,
    value,
    limit: 0,
    bound: 'atLeast',
    unit: 'mm',
    message:
      value >= 0
        ? `Gap of ${say.range(gaps)} at the ${edge}; the measures may shift it by ${say.length(error)}.`
        : `Overrun of ${say.gap(value)} at the ${edge} in the heaviest leather: the board runs past its seat.`,
    remedy:
      verdict === 'fits'
        ? ''
        : fixed
          ? `Cut outside and pockets ${say.cut(height)} high, ${say.length(height - pieces.outside.height)} more.`
          : `Allow ${say.given(ease)} of ease at the ${edge}, as much as the measuring error can take away.`,
    change:
      verdict === 'fits'
        ? []
        : fixed
          ? [{ path: 'pattern.outsideHeight_mm', value: height }]
          : [{ path: EDGES[edge], value: ease }],
  };
}
