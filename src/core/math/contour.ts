import { type Corner, SQUARE } from './corner.ts';
import { TOLERANCE } from './tolerance.ts';
import { addScaled, cross, distance, heading, subtract, type Vec2 } from './vec2.ts';

/** A straight stretch of a contour. */
export interface Line {
  readonly kind: 'line';
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A circular stretch; `sweep` is counterclockwise where positive, and 2 pi for a whole circle. Radians. */
export interface Arc {
  readonly kind: 'arc';
  readonly centre: Vec2;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

export type Segment = Line | Arc;

/** Segments that follow on from one another; closed where the last ends at the start of the first. */
export type Contour = readonly Segment[];

export const circle = (centre: Vec2, radius: number): Arc => ({
  kind: 'arc',
  centre,
  radius,
  start: 0,
  sweep: 2 * Math.PI,
});

export const arcPoint = ({ centre, radius, start, sweep }: Arc, share: number): Vec2 =>
  addScaled(centre, heading(start + share * sweep), radius);

export const segmentStart = (segment: Segment): Vec2 => (segment.kind === 'line' ? segment.from : arcPoint(segment, 0));
export const segmentEnd = (segment: Segment): Vec2 => (segment.kind === 'line' ? segment.to : arcPoint(segment, 1));

const segmentLength = (segment: Segment): number =>
  segment.kind === 'line' ? distance(segment.from, segment.to) : segment.radius * Math.abs(segment.sweep);

export const contourLength = (contour: Contour): number =>
  contour.reduce((sum, segment) => sum + segmentLength(segment), 0);

/**
 * Closed contour through vertices given counterclockwise, right-angled corners taken off as asked.
 *
 * A rounded corner is the tangent quarter circle of its radius, a clipped one the straight cut between points `size` from
 * the corner along each edge. Corners of size 0 stay.
 * @param vertices right-angled, convex; no edge shorter than the two corner sizes at its ends
 */
export function corneredContour(vertices: readonly { readonly at: Vec2; readonly corner: Corner }[]): Segment[] {
  const count = vertices.length;
  const along = (from: Vec2, to: Vec2): Vec2 => {
    const [x, y] = subtract(to, from);
    const length = Math.hypot(x, y);
    return [x / length, y / length];
  };
  const corners = vertices.map(({ at, corner: { style, size } }, i) => {
    const arriving = along(vertices[(i + count - 1) % count]!.at, at);
    const leaving = along(at, vertices[(i + 1) % count]!.at);
    const [enter, leave] = [addScaled(at, arriving, -size), addScaled(at, leaving, size)];
    const cut: Segment[] =
      size === 0
        ? []
        : style === 'clipped'
          ? [{ kind: 'line', from: enter, to: leave }]
          : [
              {
                kind: 'arc',
                centre: addScaled(enter, leaving, size),
                radius: size,
                start: Math.atan2(-leaving[1], -leaving[0]),
                sweep: Math.PI / 2,
              },
            ];
    return { enter, leave, cut };
  });
  return corners.flatMap(({ leave, cut }, i): Segment[] => {
    const next = corners[(i + 1) % count]!;
    const isEdge = distance(leave, next.enter) > TOLERANCE.length;
    return [...cut, ...(isEdge ? [{ kind: 'line', from: leave, to: next.enter } as const] : [])];
  });
}

/** Rectangle along the axes, counterclockwise from its lower left corner, all four corners alike. */
export const rectangle = (low: Vec2, high: Vec2, corner = SQUARE): Segment[] =>
  corneredContour([low, [high[0], low[1]] as const, high, [low[0], high[1]] as const].map((at) => ({ at, corner })));

/**
 * Arc from one point to another that leaves their chord by a sagitta: R = c^2/(8 s) + s/2.
 * @param sagitta mm, at most half the chord in size; positive bulges to the right of the way, negative to the left, 0 is
 *   a straight line
 */
export function bulgedLine(from: Vec2, to: Vec2, sagitta: number): Segment {
  if (sagitta === 0) return { kind: 'line', from, to };
  const chord = distance(from, to);
  const size = Math.abs(sagitta);
  const radius = chord ** 2 / (8 * size) + size / 2;
  const half = 2 * Math.atan((2 * size) / chord);
  const [x, y] = subtract(to, from);
  const turn = Math.sign(sagitta);
  const middle = Math.atan2(-turn * x, turn * y);
  const centre = addScaled(addScaled(from, [x, y], 0.5), heading(middle), size - radius);
  return { kind: 'arc', centre, radius, start: middle - turn * half, sweep: 2 * turn * half };
}

/** Area inside a closed contour, positive when counterclockwise: the line integral of (x dy - y dx) / 2, arcs exact. */
export function contourArea(contour: Contour): number {
  return contour.reduce((sum, segment) => {
    const chord = cross(segmentStart(segment), segmentEnd(segment)) / 2;
    if (segment.kind === 'line') return sum + chord;
    return sum + chord + (segment.radius ** 2 * (segment.sweep - Math.sin(segment.sweep))) / 2;
  }, 0);
}

/** A place on a contour with the direction of travel there, radians. `at` is the distance from its start. */
export function placeAlong(contour: Contour, at: number): { readonly point: Vec2; readonly heading: number } {
  let before = 0;
  for (const [i, segment] of contour.entries()) {
    const length = segmentLength(segment);
    if (at > before + length && i < contour.length - 1) {
      before += length;
      continue;
    }
    const share = length === 0 ? 0 : (at - before) / length;
    if (segment.kind === 'arc') {
      const angle = segment.start + share * segment.sweep;
      return { point: arcPoint(segment, share), heading: angle + (Math.sign(segment.sweep) * Math.PI) / 2 };
    }
    const step = subtract(segment.to, segment.from);
    return { point: addScaled(segment.from, step, share), heading: Math.atan2(step[1], step[0]) };
  }
  throw new RangeError('Got an empty contour; allowed: one segment or more.');
}

/** Points along a contour, arcs broken into chords that stray at most `tolerance` mm; the end point is included. */
export function flattened(contour: Contour, tolerance: number): Vec2[] {
  const points = contour.length === 0 ? [] : [segmentStart(contour[0]!)];
  for (const segment of contour) {
    if (segment.kind === 'line') {
      points.push(segment.to);
      continue;
    }
    const widest = 2 * Math.acos(Math.max(0, 1 - tolerance / segment.radius));
    const steps = Math.max(1, Math.ceil(Math.abs(segment.sweep) / widest));
    for (let i = 1; i <= steps; i++) points.push(arcPoint(segment, i / steps));
  }
  return points;
}

/** Mirrors in the line x = width / 2 and turns the contour round, so that it stays counterclockwise. */
export function mirroredContour(contour: Contour, width: number): Segment[] {
  const flip = ([x, y]: Vec2): Vec2 => [width - x, y];
  return contour
    .map((segment): Segment => {
      if (segment.kind === 'line') return { kind: 'line', from: flip(segment.to), to: flip(segment.from) };
      return { ...segment, centre: flip(segment.centre), start: Math.PI - segment.start - segment.sweep };
    })
    .reverse();
}
