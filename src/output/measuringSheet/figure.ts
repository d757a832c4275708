import type { Arc, Segment, Vec2 } from '../../core/index.ts';

/** A measure in a figure: where it runs, and the letter under which it is written down. */
export interface Measure {
  readonly letter: string;
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A line drawing in mm, y up, with its caption. */
export interface Figure {
  readonly caption: string;
  readonly width: number;
  readonly height: number;
  /** Edges of the book. */
  readonly outline: readonly Segment[];
  /** Pages, and lines that lead out to a measure. */
  readonly thin: readonly Segment[];
  /** The paper strip. */
  readonly strip: readonly Segment[];
  readonly measures: readonly Measure[];
  /** Letters that point at what they stand for. */
  readonly pointers?: readonly Measure[];
}

export const line = (from: Vec2, to: Vec2): Segment => ({ kind: 'line', from, to });

export const arc = (centre: Vec2, radius: number, start: number, sweep: number): Arc => ({
  kind: 'arc',
  centre,
  radius,
  start,
  sweep,
});

/** The four sides of a rectangle from its lower left to its upper right corner. */
export const box = ([left, low]: Vec2, [right, high]: Vec2): Segment[] => [
  line([left, low], [right, low]),
  line([right, low], [right, high]),
  line([right, high], [left, high]),
  line([left, high], [left, low]),
];

/** A segment moved to its place on the page. */
export function placed(segment: Segment, [x, y]: Vec2): Segment {
  const by = ([px, py]: Vec2): Vec2 => [px + x, py + y];
  return segment.kind === 'line' ? line(by(segment.from), by(segment.to)) : { ...segment, centre: by(segment.centre) };
}
