import { type Arc, line, type Segment, type Vec2 } from '../../core/index.ts';

/** A measure in a figure and its letter on the sheet. */
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
  /** Letters with an arrow to what they name. */
  readonly pointers?: readonly Measure[];
}

export const arc = (centre: Vec2, radius: number, start: number, sweep: number): Arc => ({
  kind: 'arc',
  centre,
  radius,
  start,
  sweep,
});

/** A segment shifted to its place on the page. */
export function placed(segment: Segment, [x, y]: Vec2): Segment {
  const by = ([px, py]: Vec2): Vec2 => [px + x, py + y];
  return segment.kind === 'line' ? line(by(segment.from), by(segment.to)) : { ...segment, centre: by(segment.centre) };
}
