import { roundDown, roundUp } from '../../allowance/roundUp.ts';
import { RANGE_POINTS } from '../../leather/leatherModel.ts';
import { depthSteps } from '../../pattern/pieces.ts';
import { degreesFromRadians, radians } from '../../units/radians.ts';
import type { Check, CheckContext } from '../check.ts';

/** Does enough board stay in each pocket once the boards have travelled? */
export function pocketHolds({ design, say }: CheckContext): Check {
  const { job, pieces, needs } = design;
  const held = RANGE_POINTS.map((point) => design.fits[point].pocket.held);
  const value = Math.min(...held);
  const limit = job.pockets.hold_mm;
  const holds = value >= limit;
  const depth = roundUp(pieces.pocketDepth + limit - value, depthSteps(job)[0]);
  const deepest = needs.thick.foreEdge.seat + needs.thick.book.width;
  const isRoom = depth <= deepest;
  return {
    id: 'pocketHolds',
    title: 'Pockets hold',
    verdict: holds ? 'fits' : 'fails',
    value,
    limit,
    bound: 'atLeast',
    unit: 'mm',
    message: `${say.range(held)} of each board stays in its pocket; ${say.given(limit)} is wanted.`,
    remedy: holds
      ? ''
      : isRoom
        ? `Make the pockets ${say.cut(depth)} deep, ${say.length(depth - pieces.pocketDepth)} more.`
        : 'The board is too narrow for this holding depth: ask for less.',
    change: holds || !isRoom ? [] : [{ path: 'pockets.depth_mm', value: depth }],
  };
}

/** Can the second board be bent back far enough to pass its pocket mouth? */
export function pocketLoads({ design, say }: CheckContext): Check {
  const { job, pieces, needs } = design;
  const { book, foreEdge } = needs.thick;
  const angles = RANGE_POINTS.map((point) => design.fits[point].pocket.loadingAngle);
  const value = Math.max(...angles);
  const loads = RANGE_POINTS.every((point) => design.fits[point].pocket.loads);
  // At the gap of the heaviest leather, the least there is.
  const gap = Math.max(0, Math.min(design.fits.thick.foreEdge.front, design.fits.thick.foreEdge.back));
  const deepest = foreEdge.seat + gap + book.width * (1 - Math.cos(book.foldBack));
  const depth = roundDown(deepest, depthSteps(job)[0]);
  const isDepth = depth >= 5 && depth < pieces.pocketDepth;
  return {
    id: 'pocketLoads',
    title: 'Boards load',
    verdict: loads ? 'fits' : 'fails',
    value: degreesFromRadians(radians(value)),
    limit: degreesFromRadians(book.foldBack),
    bound: 'atMost',
    unit: 'deg',
    message: `To slide the second board in, the boards bend back ${say.angle(value)} beyond flat; this book allows ${say.angle(book.foldBack)}.`,
    remedy: loads
      ? ''
      : isDepth
        ? `Make the pockets ${say.cut(depth)} deep, ${say.length(pieces.pocketDepth - depth)} less.`
        : 'The book hardly bends back: leave one pocket open at head or tail, or check the fold-back.',
    change: loads || !isDepth ? [] : [{ path: 'pockets.depth_mm', value: depth }],
  };
}
