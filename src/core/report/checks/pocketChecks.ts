import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { depthSteps } from '../../pattern/pocketDepth.ts';
import { degreesFromRadians, radians } from '../../units/radians.ts';
import { type Answer, type CheckContext, judged, type Remedy } from '../check.ts';

/** Shallowest pocket that the job document allows, mm. */
const SHALLOWEST = 5;

/** Depths at which the pockets hold the boards, and at which the second board can be loaded, mm. */
function depths({ design, doubt }: CheckContext): { readonly least: number; readonly most: number } {
  const { job, pieces, needs } = design;
  const { book, foreEdge } = needs.nominal;
  const [step] = depthSteps(job);
  const { held, loading, deviations } = doubt;
  return {
    least: roundUp(pieces.pocketDepth + job.pockets.hold_mm + deviations * held.u - held.mean, step),
    most: roundDown(
      Math.min(pieces.pocketDepth + loading.mean - deviations * loading.u, foreEdge.seat + book.width),
      step,
    ),
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
  const { design, doubt, say } = context;
  const held = RANGE_POINTS.map((point) => design.fits[point].pocket.held);
  const hold = design.job.pockets.hold_mm;
  const { verdict, limit } = judged({ mean: doubt.held.mean - hold, u: doubt.held.u }, doubt.deviations);
  const { least, most } = depths(context);
  return {
    verdict,
    value: doubt.held.mean,
    limit: hold + limit,
    bound: 'atLeast',
    message: `${say.range(held)} of each board stays in its pocket; ${say.wish(hold)} is wanted.`,
    ...(verdict === 'fits'
      ? { remedy: '', change: [] }
      : least <= most
        ? mendDepth(context, least)
        : {
            remedy: `No depth both holds ${say.wish(hold)} of board and lets the boards in: ask for less hold.`,
            change: [],
          }),
  };
}

/** Can the second board be bent back far enough to pass its pocket mouth? */
export function pocketLoads(context: CheckContext): Answer {
  const { design, doubt, say } = context;
  const { foldBack, width } = design.needs.nominal.book;
  const { loading, deviations } = doubt;
  const { verdict, limit } = judged(loading, deviations);
  // Fold-back past flat at which so much board is clear of the mouth.
  const angleFor = (clear: number): number => Math.acos(Math.max(-1, Math.min(1, 1 - clear / width)));
  const allowed = width * (1 - Math.cos(foldBack));
  const value = angleFor(allowed - loading.mean);
  const { least, most } = depths(context);
  // Rounded away from a limit that is broken and not past one that is kept, so that the figures agree with the verdict.
  const bent = say.angle(value, verdict === 'fits' ? 'down' : 'up');
  return {
    verdict,
    value: degreesFromRadians(radians(value)),
    limit: degreesFromRadians(radians(angleFor(allowed - limit))),
    bound: 'atMost',
    message: `The second board goes in with the boards bent back ${bent} past flat; this book allows ${say.angle(foldBack)}.`,
    ...(verdict !== 'fits' &&
      (most >= Math.max(SHALLOWEST, least)
        ? mendDepth(context, most)
        : {
            remedy:
              'The book hardly bends back. Leave one pocket open at head or tail, ask for less hold, or check how far the boards bend back.',
          })),
  };
}
