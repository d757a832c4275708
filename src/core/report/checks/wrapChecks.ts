import { chanceOf } from '../../doubt/spare.ts';
import type { Gap } from '../../fold/fitDoubt.ts';
import { RANGE_POINTS, type RangePoint } from '../../leather/leatherModel.ts';
import { TOLERANCE } from '../../math/tolerance.ts';
import { type Answer, type CheckContext, chanceWords, type Judged, judged, type Remedy } from '../check.ts';

/** The edges at which a gap is judged. At the fore-edges it is the spare wrap shared evenly: half of it each. */
type Edge = keyof CheckContext['doubt']['gaps'];

const EDGES = {
  foreEdge: { at: 'at each fore-edge', overrun: '' },
  head: { at: 'at the head', overrun: ': the board runs past the place where its edge comes to rest' },
  tail: { at: 'at the tail', overrun: ': the board runs past the place where its edge comes to rest' },
} as const satisfies Record<Edge, object>;

/** The point of the weight range with the least spare closed wrap. */
export const leastWrap = ({ fits }: CheckContext['design']): RangePoint =>
  RANGE_POINTS.reduce((worst, point) => (fits[point].closedSlack < fits[worst].closedSlack ? point : worst));

/** The gaps of an edge over the weight range, mm. */
const gapsAt = ({ fits }: CheckContext['design'], edge: Edge): readonly number[] =>
  RANGE_POINTS.map((point) => (edge === 'foreEdge' ? fits[point].closedSlack / 2 : fits[point][edge]));

/**
 * The size or the ease that corrects an edge: what the tool would choose. One width serves the closed and the flat wrap and both
 * fore-edges, one height head and tail, so rows that share a size never ask for two.
 */
function mend(
  { design, say }: CheckContext,
  dimension: 'width' | 'height',
  verdict: Judged['verdict'] | 'loose',
): Remedy {
  const { job, pieces } = design;
  if (verdict === 'fits') return {};
  const isWidth = dimension === 'width';
  const edges = isWidth ? (['foreEdge'] as const) : (['head', 'tail'] as const);
  const isGiven = job.pattern[isWidth ? 'outsideWidth_mm' : 'outsideHeight_mm'] !== null;
  const isSized = edges.every((edge) => pieces.ease.sized.includes(edge));
  // The row of all conditions at once says what would help where the tool's own size is not enough.
  if (!isGiven && isSized) return {};
  const best = design.bestPieces();
  // A size that does not reach the share either is no remedy for a row that is close to it.
  if (verdict === 'tight' && !best.ease.reaches) return {};
  // The depth of turned ends, part of the width, stays what it is.
  const deeper = isWidth && job.pockets.construction === 'turned' ? pieces.pocketDepth - best.pocketDepth : 0;
  const size = best.outside[dimension] + (2 * deeper) / pieces.growth;
  const by = size - pieces.outside[dimension];
  if (Math.abs(by) < TOLERANCE.length) return {};
  const words = `${isWidth ? 'the outside' : 'outside and pockets'} ${say.size(size)} ${isWidth ? 'wide' : 'high'}, ${say.length(Math.abs(by))} ${by > 0 ? 'more' : 'less'}`;
  if (isGiven) {
    // In another width the tool would choose another depth of turned ends, between other holes.
    const keeps = isWidth && job.pockets.construction === 'turned' && job.pockets.depth_mm === null;
    return {
      remedy: `Cut ${words}${keeps ? `, with the pockets ${say.size(pieces.pocketDepth)} deep as they are` : ''}.`,
      change: [
        { path: isWidth ? 'pattern.outsideWidth_mm' : 'pattern.outsideHeight_mm', value: size },
        ...(keeps ? [{ path: 'pockets.depth_mm', value: pieces.pocketDepth } as const] : []),
      ],
    };
  }
  return {
    remedy: `Leave the ease open: cut ${words}.`,
    change: edges.map((edge) => ({ path: `ease.${edge}_mm`, value: null })),
  };
}

/** Does the closed wrap reach from board edge to board edge? */
export function closes(context: CheckContext): Answer {
  const { design, doubt, say } = context;
  const { closed } = doubt.spare;
  const { verdict, limit } = judged(closed, doubt.deviations);
  const chance = `closes in ${chanceWords(chanceOf(closed))}`;
  const point = leastWrap(design);
  const fit = design.fits[point];
  const at = say.weight(design.needs[point].leathers.outside.thickness);
  const short = say.gap(fit.closedSlack);
  const message = fit.closes
    ? `Spare wrap of ${say.range(RANGE_POINTS.map((each) => design.fits[each].closedSlack))} over the weight range; it ${chance}.`
    : fit.staysOpen === null
      ? `The wrap is ${short} short at ${at}; even with the book flat the boards do not go in. It ${chance}.`
      : `The wrap is ${short} short at ${at}: the book stays open ${say.angle(fit.staysOpen)}, its fore-edges ${say.length(fit.gape)} apart. It ${chance}.`;
  return { verdict, value: closed.mean, limit, bound: 'atLeast', message, ...mend(context, 'width', verdict) };
}

/** Does the flat wrap reach, so that the book lies open? */
export function opens(context: CheckContext): Answer {
  const { design, doubt, say } = context;
  const { flat } = doubt.spare;
  const { verdict, limit } = judged(flat, doubt.deviations);
  const chance = `it lies flat in ${chanceWords(chanceOf(flat))}`;
  const point = RANGE_POINTS.reduce((worst, each) =>
    design.fits[each].flatSlack < design.fits[worst].flatSlack ? each : worst,
  );
  const { flatSlack, opensTo } = design.fits[point];
  const over = (of: 'flatSlack' | 'boardTravel'): string =>
    say.range(RANGE_POINTS.map((each) => design.fits[each][of]));
  const message =
    flatSlack >= 0
      ? `Flat it has ${over('flatSlack')} to spare; each board moves ${over('boardTravel')} in its pocket; ${chance}.`
      : opensTo === null
        ? `The wrap is ${say.gap(flatSlack)} short with the book flat, and short closed too; ${chance}.`
        : `The wrap is ${say.gap(flatSlack)} short with the book flat: it opens to ${say.angle(opensTo, 'down')}; ${chance}.`;
  return { verdict, value: flat.mean, limit, bound: 'atLeast', message, ...mend(context, 'width', verdict) };
}

/** How a gap is judged between too small, where its room is used up, and too loose, by the side that is nearer. */
function judgedGap(
  gap: Gap,
  loosest: number,
  deviations: number,
): Pick<Answer, 'value' | 'limit' | 'bound'> & { verdict: Judged['verdict'] | 'loose' } {
  const small = judged({ mean: gap.room, u: gap.u }, deviations);
  const loose = judged({ mean: loosest - gap.mean, u: gap.u }, deviations);
  if (gap.room <= loosest - gap.mean)
    return { verdict: small.verdict, limit: small.limit + gap.mean - gap.room, value: gap.mean, bound: 'atLeast' };
  const verdict = loose.verdict === 'fails' ? 'loose' : loose.verdict;
  return { verdict, value: gap.mean, limit: loosest - loose.limit, bound: 'atMost' };
}

/** The gap at an edge: room for the board, and no more than the loosest. */
export const edgeGap =
  (edge: Edge) =>
  (context: CheckContext): Answer => {
    const { design, doubt, say } = context;
    const { seating, loosest } = design.job;
    const most = loosest[`${edge}_mm`];
    const gap = doubt.gaps[edge];
    const found = judgedGap(gap, most, doubt.deviations);
    const gaps = gapsAt(design, edge);
    const least = Math.min(...gaps);
    const { at, overrun } = EDGES[edge];
    const shared =
      edge !== 'foreEdge' || seating === 'centred' ? '' : `, shared evenly; the boards sit to the ${seating}`;
    const size =
      least < 0
        ? `Overrun of ${say.gap(least)} ${at} at the thick end of the leather${overrun}`
        : `Gap of ${say.range(gaps)} ${at}${shared}`;
    const chance =
      found.bound === 'atMost'
        ? `it is at most ${say.wish(most)} in ${chanceWords(chanceOf({ mean: most - gap.mean, u: gap.u }))}${found.verdict === 'loose' ? '; looser than that the cover shifts on the book' : ''}`
        : `there is room in ${chanceWords(chanceOf({ mean: gap.room, u: gap.u }))}`;
    return {
      ...found,
      message: `${size}; ${chance}.`,
      ...mend(context, edge === 'foreEdge' ? 'width' : 'height', found.verdict),
    };
  };

/** Whether the boards go into the cover at all, from seam to seam and at head and tail. */
/** Whether the boards go in at all, by the middle leather. */
export const boardsGoIn = ({ design, doubt }: CheckContext): boolean =>
  design.fits.nominal.staysOpen !== null &&
  judged(doubt.gaps.head, 0).verdict !== 'fails' &&
  judged(doubt.gaps.tail, 0).verdict !== 'fails';

/** A check that has no meaning for a cover whose boards do not go in. */
export const ifBoardsGoIn =
  <Context extends CheckContext>(ask: (context: Context) => Answer) =>
  (context: Context): Answer =>
    boardsGoIn(context)
      ? ask(context)
      : { verdict: 'none', state: 'does not apply', message: 'The boards do not go in, so this is not asked.' };
