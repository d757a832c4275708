import { boardEdge, cutEdge, type End, type Lane } from './lane.ts';

/** Of the board, this much is shown beyond its edge, mm; the rest of the drawing is the end of the cover. */
const BOARD_SHOWN = 8;

/** A frame that shows one end of some lanes enlarged. */
export interface EndFrame {
  readonly end: End;
  /** px a millimetre. */
  readonly scale: number;
  /** What the frame shows, mm from the origin, from its left or upper side on. */
  readonly shown: readonly [number, number];
  /** px of a place, mm from the origin. */
  place(at: number): number;
}

/**
 * The largest frames, of one scale, that hold either end of every lane, a ghost among them, and a little of the board.
 * @param room px along the lanes
 * @param pad px kept free beyond the cut edges
 */
export function endFrames(lanes: readonly Lane[], room: number, pad: number): Readonly<Record<End, EndFrame>> {
  const [first, last] = [endShown(lanes, 'first'), endShown(lanes, 'last')];
  const scale = (room - pad) / Math.max(first[1] - first[0], last[1] - last[0]);
  return {
    first: { end: 'first', scale, shown: first, place: (at) => pad + (at - first[0]) * scale },
    last: { end: 'last', scale, shown: last, place: (at) => room - pad - (last[1] - at) * scale },
  };
}

function endShown(lanes: readonly Lane[], end: End): readonly [number, number] {
  const outward = end === 'first' ? -1 : 1;
  const outermost = Math.max(...lanes.map((lane) => outward * cutEdge(lane, end)));
  const innermost = Math.min(...lanes.map((lane) => outward * boardEdge(lane, end))) - BOARD_SHOWN;
  return end === 'first' ? [-outermost, -innermost] : [innermost, outermost];
}

/** The stretches of a lane that a frame shows, from the origin, cut off where the board runs on. */
export function shownSegments({ segments, origin, span }: Lane, { end, shown: [low, high] }: EndFrame) {
  const within = (at: number): number => {
    const place = at - origin;
    return end === 'first' ? Math.min(high, place) : Math.max(low, place);
  };
  const isAtEnd = (at: number): boolean => (end === 'first' ? at < span / 2 : at > span / 2);
  return segments
    .filter(({ from, to }) => isAtEnd(from) || isAtEnd(to))
    .map((segment) => ({ ...segment, from: within(segment.from), to: within(segment.to) }))
    .filter(({ id, kind, from, to }) => from !== to || (kind === 'gap' && id !== 'spineGap'));
}
