import { type Contour, flattened, type Segment, segmentEnd, segmentStart } from './contour.ts';
import { TOLERANCE } from './tolerance.ts';
import { addScaled, distance, subtract, type Vec2 } from './vec2.ts';

/** Turns a contour by half a turn about the middle of a box at the origin. */
export function turnedContour(contour: Contour, width: number, height: number): Segment[] {
  const turn = ([x, y]: Vec2): Vec2 => [width - x, height - y];
  return contour.map((segment): Segment => {
    if (segment.kind === 'line') return { kind: 'line', from: turn(segment.from), to: turn(segment.to) };
    return { ...segment, centre: turn(segment.centre), start: segment.start + Math.PI };
  });
}

export const movedContour = (contour: Contour, by: Vec2): Segment[] =>
  contour.map(
    (segment): Segment =>
      segment.kind === 'line'
        ? { kind: 'line', from: addScaled(segment.from, by, 1), to: addScaled(segment.to, by, 1) }
        : { ...segment, centre: addScaled(segment.centre, by, 1) },
  );

/** Segments in turn as contours of those that follow on from one another. */
export function connectedRuns(segments: readonly Segment[]): Segment[][] {
  const runs: Segment[][] = [];
  for (const segment of segments) {
    const run = runs.at(-1);
    const end = run?.at(-1);
    if (run === undefined || end === undefined || distance(segmentEnd(end), segmentStart(segment)) > TOLERANCE.length)
      runs.push([segment]);
    else run.push(segment);
  }
  return runs;
}

/**
 * The part of a contour from one x to another. A segment that lies across either of them is broken into chords.
 * @param tolerance how far those chords may stray from an arc, mm
 */
export function contourWithin(contour: Contour, from: number, to: number, tolerance: number): Segment[][] {
  const inside = contour.flatMap((segment): Segment[] => {
    const points = flattened([segment], tolerance);
    if (points.every(([x]) => x >= from && x <= to)) return [segment];
    return points.slice(1).flatMap((end, i) => clippedLine(points[i]!, end, from, to));
  });
  return connectedRuns(inside);
}

/** A line cut to the x from one to another; nothing where it has no length there. */
function clippedLine(a: Vec2, b: Vec2, from: number, to: number): Segment[] {
  const step = subtract(b, a);
  const [p, q] = step[0] === 0 ? [from <= a[0] && a[0] <= to ? 0 : 1, 1] : [from, to].map((x) => (x - a[0]) / step[0]);
  const [enter, leave] = [Math.max(0, Math.min(p!, q!)), Math.min(1, Math.max(p!, q!))];
  return leave > enter ? [{ kind: 'line', from: addScaled(a, step, enter), to: addScaled(a, step, leave) }] : [];
}
