import { boardEdge, cutEdge, type End, type Track } from './track.ts';

/** A frame that shows one end of some tracks enlarged. */
export interface EndFrame {
  readonly end: End;
  /** px a millimetre. */
  readonly scale: number;
  /** What the frame shows, mm from the origin, from its left or upper side on. */
  readonly shown: readonly [number, number];
  /** px of a place, mm from the origin. */
  place(at: number): number;
}

/** Kept free in a frame, px: beyond the cut edges for their tabs, and behind the board's edge for words. */
interface EndRoom {
  readonly tab: number;
  readonly board: number;
}

/**
 * The largest frames, of one scale, that hold either end of every track, the untuned cover among them.
 * @param room px along the tracks
 */
export function endFrames(
  tracks: readonly Track[],
  room: number,
  { tab, board }: EndRoom,
): Readonly<Record<End, EndFrame>> {
  const reaches = { first: endReach(tracks, 'first'), last: endReach(tracks, 'last') };
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
function endReach(tracks: readonly Track[], end: End): readonly [number, number] {
  const outward = end === 'first' ? -1 : 1;
  return [
    Math.max(...tracks.map((track) => outward * cutEdge(track, end))),
    Math.min(...tracks.map((track) => outward * boardEdge(track, end))),
  ];
}

/** The stretches of a track that a frame shows, from the origin, cut off where the board runs on. */
export function shownSegments({ segments, origin, span }: Track, { end, shown: [low, high] }: EndFrame) {
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
