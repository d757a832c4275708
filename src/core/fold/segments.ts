import { neutralOffset } from '../allowance/wrap.ts';
import type { PathPiece } from '../book/tautPath.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { CoverDesign } from './coverDesign.ts';

/** What each stretch of the outside is, by its name: from front to back, then from head to tail. */
const SEGMENT_KINDS = {
  frontTurnedEnd: 'turnedEnd',
  frontTurn: 'turn',
  frontMargin: 'edgeMargin',
  frontSeat: 'seat',
  frontGap: 'gap',
  frontBoard: 'board',
  frontFold: 'fold',
  spine: 'spine',
  spineGap: 'gap',
  bridge: 'bridge',
  backFold: 'fold',
  backBoard: 'board',
  backGap: 'gap',
  backSeat: 'seat',
  backMargin: 'edgeMargin',
  backTurn: 'turn',
  backTurnedEnd: 'turnedEnd',
  headMargin: 'edgeMargin',
  headSeat: 'seat',
  headGap: 'gap',
  height: 'board',
  tailGap: 'gap',
  tailSeat: 'seat',
  tailMargin: 'edgeMargin',
} as const;

/** Name of a stretch, shared by the strips, the scene and the flat pattern. */
export type SegmentId = keyof typeof SEGMENT_KINDS;
export type SegmentKind = (typeof SEGMENT_KINDS)[SegmentId];

/** One stretch of the outside, from a cut edge on. A gap of negative length is an overrun and runs backward. */
export interface StripSegment {
  readonly id: SegmentId;
  readonly kind: SegmentKind;
  /** mm on the neutral line. */
  readonly length: number;
  /** Places across the outside, mm from the front or the head cut edge; `to` lies before `from` where the board overruns. */
  readonly from: number;
  readonly to: number;
}

type Stretch = readonly [id: SegmentId, length: number];

/**
 * Lays the outside out flat with the book closed in it: both ends, both gaps, and between them the wrap by zones.
 * The lengths add up to the outside width, overruns counted negative.
 * @param point end or middle of the weight range that the cover is made in
 */
export function stripSegments(design: CoverDesign, point: RangePoint): readonly StripSegment[] {
  const { made: pieces, job } = design;
  const needs = design.needs[point];
  const fit = design.fits[point];
  const end = (side: 'front' | 'back'): Stretch[] =>
    job.pockets.construction === 'turned'
      ? [
          [`${side}TurnedEnd`, pieces.pocketDepth],
          [`${side}Turn`, needs.foreEdge.turn],
        ]
      : [
          [`${side}Margin`, needs.foreEdge.margin],
          [`${side}Seat`, needs.foreEdge.seat],
        ];
  const slack = fit.closedSlack - fit.foreEdge.front - fit.foreEdge.back;
  const wrap = zones(needs.closed.path.pieces, neutralOffset(needs.leathers));
  const spine = wrap.findIndex(([id]) => id === 'spine') + 1;

  return placed([
    ...end('front'),
    ['frontGap', fit.foreEdge.front],
    ...wrap.slice(0, spine),
    ...(slack > 0 ? ([['spineGap', slack]] as const) : []),
    ...wrap.slice(spine),
    ['backGap', fit.foreEdge.back],
    ...end('back').reverse(),
  ]);
}

/**
 * Lays the outside out from its head to its tail over a board in its pocket: margin, seat and gap at either end of the
 * board's height. The lengths add up to the outside height, overruns counted negative.
 * @param point end or middle of the weight range that the cover is made in
 */
export function heightSegments({ job, needs, fits }: CoverDesign, point: RangePoint): readonly StripSegment[] {
  const { book, headTail } = needs[point];
  const end = (side: 'head' | 'tail'): Stretch[] => [
    [`${side}Margin`, job.seam.edgeMargin_mm],
    [`${side}Seat`, headTail.needed],
    [`${side}Gap`, fits[point][side]],
  ];
  return placed([...end('head'), ['height', book.height], ...end('tail').reverse()]);
}

/** Neighbouring pieces of the taut path over one zone, taken together, at depth z of the neutral line. */
function zones(path: readonly PathPiece[], z: number): Stretch[] {
  const merged: Stretch[] = [];
  for (const piece of path) {
    const length = piece.kind === 'line' ? piece.length : piece.angle * (piece.radius + z);
    const [zone, before] = merged.at(-1) ?? [];
    if (zone === piece.zone) merged[merged.length - 1] = [zone, before! + length];
    else merged.push([piece.zone, length]);
  }
  return merged;
}

function placed(stretches: readonly Stretch[]): StripSegment[] {
  let at = 0;
  return stretches.map(([id, length]) => {
    const from = at;
    at += length;
    return { id, kind: SEGMENT_KINDS[id], length, from, to: at };
  });
}
