import {
  arcPoint,
  type Contour,
  type Segment,
  segmentEnd,
  segmentStart,
  TOLERANCE,
  type Vec2,
} from '../../core/index.ts';

/** One line that a machine follows without lifting, in the coordinates of the bed, mm, y up. */
export interface Stroke {
  /** Layer of a cutting file that it belongs to. */
  readonly layer: string;
  /** Place in the work, inside out: 0 drawn, 1 holes and slits, 2 cuts inside a piece, 3 the cut edge. */
  readonly depth: 0 | 1 | 2 | 3;
  readonly path: Contour;
  readonly isClosed: boolean;
}

/** Most places at which a closed stroke may be begun, and those of a circle. */
const STARTS = 24;
const ROUND_STARTS = 8;

export const strokeStart = ({ path }: Pick<Stroke, 'path'>): Vec2 => segmentStart(path[0]!);
export const strokeEnd = ({ path }: Pick<Stroke, 'path'>): Vec2 => segmentEnd(path.at(-1)!);

/** Whether a stroke is a whole circle, in one arc. */
export const isCircle = ({ path: [first, ...rest] }: Pick<Stroke, 'path'>): boolean =>
  rest.length === 0 && first?.kind === 'arc' && Math.abs(first.sweep) >= 2 * Math.PI - TOLERANCE.angle;

function backward(segment: Segment): Segment {
  return segment.kind === 'line'
    ? { kind: 'line', from: segment.to, to: segment.from }
    : { ...segment, start: segment.start + segment.sweep, sweep: -segment.sweep };
}

/** The same stroke from its other end. */
export const reversed = (stroke: Stroke): Stroke => ({ ...stroke, path: stroke.path.map(backward).reverse() });

/** All ways of following a stroke: an open one from either end, a closed one from any of its corners, a circle from eight places. */
export function waysAlong(stroke: Stroke): Stroke[] {
  const { path, isClosed } = stroke;
  if (isCircle(stroke)) {
    const circle = path[0] as Extract<Segment, { kind: 'arc' }>;
    return Array.from({ length: ROUND_STARTS }, (_, i) => ({
      ...stroke,
      path: [{ ...circle, start: circle.start + (i * 2 * Math.PI) / ROUND_STARTS }],
    }));
  }
  if (!isClosed) return [stroke, reversed(stroke)];
  const step = Math.ceil(path.length / STARTS);
  return Array.from({ length: Math.ceil(path.length / step) }, (_, i) => ({
    ...stroke,
    path: [...path.slice(i * step), ...path.slice(0, i * step)],
  }));
}

type Line = Extract<Segment, { kind: 'line' }>;

/** A line as it is, or an arc as chords that stray at most `tolerance` mm. */
export function segmentInChords(segment: Segment, tolerance: number): readonly Line[] {
  if (segment.kind === 'line') return [segment];
  const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / segment.radius));
  const count = Math.max(1, Math.ceil(Math.abs(segment.sweep) / Math.min(widest, Math.PI / 4)));
  return Array.from({ length: count }, (_, i) => ({
    kind: 'line',
    from: arcPoint(segment, i / count),
    to: arcPoint(segment, (i + 1) / count),
  }));
}

/** The stroke with every arc as chords that stray at most `tolerance` mm. */
export const inChords = (stroke: Stroke, tolerance: number): Stroke => ({
  ...stroke,
  path: stroke.path.flatMap((segment) => segmentInChords(segment, tolerance)),
});
