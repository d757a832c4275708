import { boardEdge, cutEdge, type End, type Lane } from './lane.ts';

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

/** Kept free in a frame, px: beyond the cut edges for their tabs, and behind the board's edge for what is written there. */
interface EndRoom {
  readonly tab: number;
  readonly board: number;
}

/**
 * The largest frames, of one scale, that hold either end of every lane, a ghost among them.
 * @param room px along the lanes
 */
export function endFrames(
  lanes: readonly Lane[],
  room: number,
  { tab, board }: EndRoom,
): Readonly<Record<End, EndFrame>> {
  const reaches = { first: endReach(lanes, 'first'), last: endReach(lanes, 'last') };
  const scale = (room - tab - board) / Math.max(...Object.values(reaches).map(([outer, inner]) => outer - inner));
  const frame = (end: End): EndFrame => {
    const [outermost, innermost] = reaches[end];
    const inner = innermost - board / scale;
    return end === 'first'
      ? { end, scale, shown: [-outermost, -inner], place: (at) => tab + (at + outermost) * scale }
      : { end, scale, shown: [inner, outermost], place: (at) => room - tab - (outermost - at) * scale };
  };
  return { first: frame('first'), last: frame('last') };
}

/** The outermost cut edge and the innermost edge of the board, mm outward from the origin. */
function endReach(lanes: readonly Lane[], end: End): readonly [number, number] {
  const outward = end === 'first' ? -1 : 1;
  return [
    Math.max(...lanes.map((lane) => outward * cutEdge(lane, end))),
    Math.min(...lanes.map((lane) => outward * boardEdge(lane, end))),
  ];
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
