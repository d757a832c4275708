import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { depthSteps } from '../../pattern/pocketDepth.ts';
import { degreesFromRadians, radians } from '../../units/radians.ts';
import type { Answer, CheckContext, Remedy } from '../check.ts';

/** Shallowest pocket that the job document allows, mm. */
const SHALLOWEST = 5;

/** Depths at which the pockets hold the boards, and at which the second board can be loaded, mm. */
function depths({ design }: CheckContext): { readonly least: number; readonly most: number } {
  const { job, pieces, needs, fits } = design;
  const { book, foreEdge } = needs.thick;
  const held = Math.min(...RANGE_POINTS.map((point) => fits[point].pocket.held));
  // At the gap of the heaviest leather, which is the smallest.
  const gap = Math.max(0, Math.min(fits.thick.foreEdge.front, fits.thick.foreEdge.back));
  const [step] = depthSteps(job);
  const loading = foreEdge.seat + gap + book.width * (1 - Math.cos(book.foldBack));
  return {
    least: roundUp(pieces.pocketDepth + job.pockets.hold_mm - held, step),
    most: roundDown(Math.min(loading, foreEdge.seat + book.width), step),
  };
}

/** A depth that corrects the pocket, where it does not change the outside, of which turned ends are a part. */
function mendDepth(context: CheckContext, to: number): Remedy {
  const { job, pieces } = context.design;
  const { say } = context;
  const by = to - pieces.pocketDepth;
  const turned = job.pockets.construction === 'turned' && job.pattern.outsideWidth_mm !== null;
  return {
    remedy:
      `Make the pockets ${say.size(to)} deep, ${say.length(Math.abs(by))} ${by > 0 ? 'more' : 'less'}` +
      (turned ? ', and the outside wider or narrower by twice that.' : '.'),
    change: turned ? [] : [{ path: 'pockets.depth_mm', value: to }],
  };
}

/** Does enough board stay in each pocket once the boards have travelled? */
export function pocketHolds(context: CheckContext): Answer {
  const { design, say } = context;
  const held = RANGE_POINTS.map((point) => design.fits[point].pocket.held);
  const value = Math.min(...held);
  const limit = design.job.pockets.hold_mm;
  const holds = value >= limit;
  const { least, most } = depths(context);
  return {
    verdict: holds ? 'fits' : 'fails',
    value,
    limit,
    bound: 'atLeast',
    message: `${say.range(held)} of each board stays in its pocket; ${say.size(limit)} is wanted.`,
    ...(holds
      ? { remedy: '', change: [] }
      : least <= most
        ? mendDepth(context, least)
        : {
            remedy: `No depth both holds ${say.size(limit)} of board and lets the boards in: ask for less hold.`,
            change: [],
          }),
  };
}

/** Can the second board be bent back far enough to pass its pocket mouth? */
export function pocketLoads(context: CheckContext): Answer {
  const { design, say } = context;
  const { foldBack } = design.needs.thick.book;
  const value = Math.max(...RANGE_POINTS.map((point) => design.fits[point].pocket.loadingAngle));
  const loads = RANGE_POINTS.every((point) => design.fits[point].pocket.loads);
  const { least, most } = depths(context);
  // Rounded away from a limit that is broken and not past one that is kept, so that the figures agree with the verdict.
  const bent = say.angle(value, loads ? 'down' : 'up');
  return {
    verdict: loads ? 'fits' : 'fails',
    value: degreesFromRadians(radians(value)),
    limit: degreesFromRadians(foldBack),
    bound: 'atMost',
    message: `The second board goes in with the boards bent back ${bent} past flat; this book allows ${say.angle(foldBack)}.`,
    ...(!loads &&
      (most >= Math.max(SHALLOWEST, least)
        ? mendDepth(context, most)
        : {
            remedy:
              'The book hardly bends back: leave one pocket open at head or tail, ask for less hold, or check how far the boards bend back.',
          })),
  };
}
