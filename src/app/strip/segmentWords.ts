import {
  type Job,
  type JobPath,
  type SegmentId,
  type SegmentKind,
  type StripSegment,
  termOf,
  type Word,
} from '../../core/index.ts';

interface SegmentWords {
  readonly name: string;
  readonly note: string;
}

const term = (word: Word): SegmentWords => ({ name: word, note: termOf(word).meaning });

/** What each kind of stretch is called, and what it is. */
const SEGMENT_WORDS: Readonly<Record<SegmentKind, SegmentWords>> = {
  edgeMargin: term('edge margin'),
  seat: { name: 'stop', note: termOf('seam to stop').meaning },
  turnedEnd: term('turned end'),
  turn: { name: 'turn', note: 'Extra length that the turn round the board edge takes up.' },
  gap: term('gap'),
  board: { name: 'board', note: 'Over the board, fore-edge to fold.' },
  fold: { name: 'fold', note: 'Extra length that the bend at the spine takes up.' },
  spine: { name: 'spine', note: 'Over the spine of the book.' },
  bridge: { name: 'bridge', note: 'Leather that spans a hollow.' },
};

/** Name and note of one stretch; a gap is named by its sign. */
export function segmentWords({ id, kind, length }: StripSegment): SegmentWords {
  if (id === 'height') return { name: 'board', note: 'Over the board, head to tail.' };
  if (kind !== 'gap') return SEGMENT_WORDS[kind];
  if (length < 0) return term('overrun');
  return id === 'spineGap' ? { name: 'spare wrap', note: 'Spare wrap behind the spine.' } : SEGMENT_WORDS.gap;
}

/** Field of the job that changes a stretch most directly. */
export function tunedBy({ id, kind }: StripSegment, { pattern }: Job): JobPath | null {
  if (id === 'height') return 'book.height_mm';
  if (id === 'headGap' || id === 'tailGap')
    return pattern.outsideHeight_mm === null
      ? id === 'headGap'
        ? 'ease.head_mm'
        : 'ease.tail_mm'
      : 'pattern.outsideHeight_mm';
  const paths: Record<SegmentKind, JobPath | null> = {
    edgeMargin: 'seam.edgeMargin_mm',
    seat: 'leather.outside.bendRatio',
    turnedEnd: 'pockets.depth_mm',
    turn: 'book.boardThickness_mm',
    gap: pattern.outsideWidth_mm === null ? 'ease.foreEdge_mm' : 'pattern.outsideWidth_mm',
    board: 'book.width_mm',
    fold: 'leather.outside.neutral',
    spine: 'book.thickness_mm',
    bridge: null,
  };
  return paths[kind];
}

/** Which side of the cover a stretch is on, in words; empty for spine and board themselves. */
export const sideOf = (id: SegmentId): string => /^(front|back|head(?=[A-Z])|tail)|^spine(?=Gap)/.exec(id)?.[0] ?? '';
