import { neutralOffset } from '../allowance/wrap.ts';
import type { PathPiece } from '../book/tautPath.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { CoverDesign } from './coverDesign.ts';

export type SegmentKind = 'edgeMargin' | 'seat' | 'turnedEnd' | 'turn' | 'gap' | 'board' | 'fold' | 'spine' | 'bridge';

/** One stretch of the outside, from a cut edge on. A gap of negative length is an overrun and runs backward. */
export interface StripSegment {
  /** Name of the zone, shared with the scene and the flat pattern. */
  readonly id: string;
  readonly kind: SegmentKind;
  /** mm on the neutral line. */
  readonly length: number;
  /** Places across the outside, mm from the front or the head cut edge; `to` lies before `from` where the board overruns. */
  readonly from: number;
  readonly to: number;
}

interface Stretch {
  readonly id: string;
  readonly kind: SegmentKind;
  readonly length: number;
}

/**
 * Lays the outside out flat with the book closed in it: both ends, both gaps, and between them the wrap by zones.
 * The lengths add up to the outside width, overruns counted negative.
 * @param point end or middle of the weight range that the cover is made in
 */
export function stripSegments(design: CoverDesign, point: RangePoint): readonly StripSegment[] {
  const { pieces, job } = design;
  const needs = design.needs[point];
  const fit = design.fits[point];
  const isTurned = job.pockets.construction === 'turned';
  const end = (side: string): Stretch[] =>
    isTurned
      ? [
          { id: `${side}TurnedEnd`, kind: 'turnedEnd', length: pieces.pocketDepth },
          { id: `${side}Turn`, kind: 'turn', length: needs.foreEdge.turn },
        ]
      : [
          { id: `${side}Margin`, kind: 'edgeMargin', length: needs.foreEdge.margin },
          { id: `${side}Seat`, kind: 'seat', length: needs.foreEdge.seat },
        ];
  const gap = (side: string, length: number): Stretch[] => [{ id: `${side}Gap`, kind: 'gap', length }];
  const slack = fit.closedSlack - fit.foreEdge.front - fit.foreEdge.back;
  const wrap = zones(needs.closed.path.pieces, neutralOffset(needs.leathers));
  const spine = wrap.findIndex(({ kind }) => kind === 'spine') + 1;

  return placed([
    ...end('front'),
    ...gap('front', fit.foreEdge.front),
    ...wrap.slice(0, spine),
    ...(slack > 0 ? gap('spine', slack) : []),
    ...wrap.slice(spine),
    ...gap('back', fit.foreEdge.back),
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
    { id: `${side}Margin`, kind: 'edgeMargin', length: job.seam.edgeMargin_mm },
    { id: `${side}Seat`, kind: 'seat', length: headTail.needed },
    { id: `${side}Gap`, kind: 'gap', length: fits[point][side] },
  ];
  return placed([...end('head'), { id: 'height', kind: 'board', length: book.height }, ...end('tail').reverse()]);
}

const KINDS: Readonly<Record<PathPiece['zone'], SegmentKind>> = {
  frontBoard: 'board',
  frontFold: 'fold',
  spine: 'spine',
  backFold: 'fold',
  backBoard: 'board',
  bridge: 'bridge',
};

/** Neighbouring pieces of the taut path over one zone, taken together, at depth z of the neutral line. */
function zones(path: readonly PathPiece[], z: number): Stretch[] {
  const merged: Stretch[] = [];
  for (const piece of path) {
    const length = piece.kind === 'line' ? piece.length : piece.angle * (piece.radius + z);
    const last = merged.at(-1);
    if (last?.id === piece.zone) merged[merged.length - 1] = { ...last, length: last.length + length };
    else merged.push({ id: piece.zone, kind: KINDS[piece.zone], length });
  }
  return merged;
}

function placed(stretches: readonly Stretch[]): StripSegment[] {
  let at = 0;
  return stretches.map((stretch) => {
    const from = at;
    at += stretch.length;
    return { ...stretch, from, to: at };
  });
}
