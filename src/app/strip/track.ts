import {
  type CoverDesign,
  hasOneThickness,
  heightSegments,
  type PatternZone,
  type Printer,
  type RangePoint,
  type StripSegment,
  stripSegments,
} from '../../core/index.ts';

/** One line of stretches, aligned with others so that the same parts of the book are in line. */
export interface Track {
  readonly title: string;
  readonly segments: readonly StripSegment[];
  /** The place in it, mm, that is in line with the other tracks': the middle of the spine, or of the board's height. */
  readonly origin: number;
  /** Cut edge to cut edge, mm. */
  readonly span: number;
}

type Axis = PatternZone['axis'];

/** One end of a track: front and head are where it begins. */
export type End = 'first' | 'last';

export const END_NAMES: Readonly<Record<Axis, Readonly<Record<End, string>>>> = {
  width: { first: 'front', last: 'back' },
  height: { first: 'head', last: 'tail' },
};

/** A cover across its width or its height in leather of one thickness. */
export function track(design: CoverDesign, axis: Axis, point: RangePoint, title: string): Track {
  const segments = axis === 'width' ? stripSegments(design, point) : heightSegments(design, point);
  const span = design.made.outside[axis];
  const board = segments.find(({ id }) => id === 'height');
  return { title, segments, origin: board === undefined ? span / 2 : (board.from + board.to) / 2, span };
}

/** A cover at both ends of its leather, thick end first; one track where every leather has one thickness. */
export function rangeTracks(design: CoverDesign, axis: Axis, lengths: Printer): readonly Track[] {
  const thickness = (point: RangePoint): number => design.needs[point].leathers.outside.thickness;
  const [thick, thin] = [thickness('thick'), thickness('thin')];
  if (hasOneThickness(design.needs)) return [track(design, axis, 'thick', lengths.weight(thick))];
  return [
    track(design, axis, 'thick', `thick end ${lengths.weight(thick)}`),
    track(design, axis, 'thin', `thin end ${lengths.weight(thin)}`),
  ];
}

/** The cut edge of one end, mm from the origin. */
export const cutEdge = ({ origin, span }: Track, end: End): number => (end === 'first' ? -origin : span - origin);

/** Where the margin or the turned end meets the rest, mm from the origin. */
export function seamLine({ segments, origin }: Track, end: End): number {
  const outermost = segments.at(end === 'first' ? 0 : -1)!;
  return (end === 'first' ? outermost.to : outermost.from) - origin;
}

/** Where the board can be written on, mm from the origin: behind its edge and behind an overrun's hatch. */
export function boardEdge({ segments, origin }: Track, end: End): number {
  const gaps = segments.filter(({ id, kind }) => kind === 'gap' && id !== 'spineGap');
  const { from, to } = gaps.at(end === 'first' ? 0 : -1)!;
  return (end === 'first' ? Math.max(from, to) : Math.min(from, to)) - origin;
}

/** Where the mouths of separate pockets lie across the width, mm to either side of the spine's middle; null for turned ends. */
export function mouth({ job, made: pieces, needs }: CoverDesign): number | null {
  if (job.pockets.construction === 'turned') return null;
  return pieces.outside.width / 2 - needs.thick.foreEdge.margin - pieces.pocketDepth;
}
