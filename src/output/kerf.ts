import { areaD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import {
  addScaled,
  type Contour,
  type Drawing,
  distance,
  type Entity,
  flattened,
  heading,
  isSimplePolygon,
  type PieceDrawing,
  path,
  type Segment,
  segmentEnd,
  segmentStart,
  TOLERANCE,
  turnBetween,
  type Vec2,
} from '../core/index.ts';

/** Most that a chord stands off its arc where the outline is offset as a polygon, mm. */
const CHORD_TOLERANCE = 0.001;

/** The same where an offset outline is tested for meeting itself, mm. */
const COARSE = 0.02;

/** Decimals of a mm kept by the polygon library, which works in integers. */
const DECIMALS = 5;

/** Least length of a slit and width of a hole, mm: below it the beam alone makes the hole. */
const LEAST = 0.1;

/** Direction of travel at the start or the end of a segment, as a unit vector. */
function travel(segment: Segment, end: 0 | 1): Vec2 {
  if (segment.kind === 'arc')
    return heading(segment.start + end * segment.sweep + (Math.sign(segment.sweep) * Math.PI) / 2);
  const { from, to } = segment;
  const length = distance(from, to);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

const rightOf = ([x, y]: Vec2): Vec2 => [y, -x];

/**
 * Offsets a counterclockwise outline outward by d, inward where d is negative: lines are shifted, an arc's radius r becomes r + d where it is
 * convex and r - d where it is concave. At a corner two lines are extended until they meet; else an arc of radius d
 * about the corner joins the segments, which keeps the corner sharp.
 * @returns null where this gives no outline: a hollow too tight for the beam, an inward corner at an arc, or a path
 *   that meets itself
 */
function exactOffset(outline: Contour, d: number): Segment[] | null {
  const moved = outline.map((segment): Segment => {
    if (segment.kind === 'arc') return { ...segment, radius: segment.radius + Math.sign(segment.sweep) * d };
    const aside = rightOf(travel(segment, 0));
    return { kind: 'line', from: addScaled(segment.from, aside, d), to: addScaled(segment.to, aside, d) };
  });
  if (moved.some((segment) => segment.kind === 'arc' && segment.radius <= 0)) return null;
  const path: Segment[] = [];
  for (let i = 0; i < outline.length; i++) {
    const next = (i + 1) % outline.length;
    const [a, b] = [moved[i]!, moved[next]!];
    path.push(a);
    if (distance(segmentEnd(a), segmentStart(b)) < TOLERANCE.length) continue;
    const [arriving, leaving] = [travel(outline[i]!, 1), travel(outline[next]!, 0)];
    const turn = turnBetween(arriving, leaving);
    const corner = segmentEnd(outline[i]!);
    if (a.kind === 'line' && b.kind === 'line' && Math.abs(turn) < (2 / 3) * Math.PI) {
      // Both lines reach d tan(turn / 2) beyond the corner, and end as much before an inward one.
      const meeting = addScaled(segmentEnd(a), arriving, d * Math.tan(turn / 2));
      path[path.length - 1] = moved[i] = { ...a, to: meeting };
      moved[next] = { ...b, from: meeting };
      if (next === 0) path[0] = { ...(path[0] as typeof b), from: meeting };
    } else if (turn * d < 0) return null;
    else {
      const away = rightOf(arriving);
      path.push({ kind: 'arc', centre: corner, radius: d, start: Math.atan2(away[1], away[0]), sweep: turn });
    }
  }
  return isSimplePolygon(flattened(path, COARSE).slice(0, -1)) ? path : null;
}

/** Offsets a closed outline by a polygon library: corners mitred, arcs as short chords, overlaps merged. */
function polygonOffset(outline: Contour, d: number): Segment[] {
  const polygon = flattened(outline, CHORD_TOLERANCE)
    .slice(0, -1)
    .map(([x, y]) => ({ x, y }));
  const rings = inflatePathsD([polygon], d, JoinType.Miter, EndType.Polygon, 4, DECIMALS);
  const ring = rings.reduce((widest, each) => (areaD(each) > areaD(widest) ? each : widest));
  const at = (i: number): Vec2 => [ring[i % ring.length]!.x, ring[i % ring.length]!.y];
  return ring.map((_, i) => ({ kind: 'line', from: at(i), to: at(i + 1) }));
}

/** Lower left and upper right corner of the box round a slot. */
function boxSides(slot: Contour): readonly [Vec2, Vec2] {
  const points = flattened(slot, COARSE);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
}

/** Width of a slot, mm: the shorter side of its box. */
function slotWidth(slot: Contour): number {
  const [low, high] = boxSides(slot);
  return Math.min(high[0] - low[0], high[1] - low[1]);
}

/** The line along the middle of a slot, from end to end. */
function middleLine(slot: Contour): Segment {
  const [[left, low], [right, high]] = boxSides(slot);
  const [x, y] = [(left + right) / 2, (low + high) / 2];
  return right - left > high - low
    ? { kind: 'line', from: [left, y], to: [right, y] }
    : { kind: 'line', from: [x, low], to: [x, high] };
}

/** A hole smaller by d in radius, a slot by d all round or its middle where it is too narrow, or a slit shorter by d at each end. */
function narrowed(hole: Entity, d: number): Entity {
  if (hole.kind === 'arc') return { ...hole, radius: Math.max(LEAST / 2, hole.radius - d) };
  if (hole.kind === 'path') {
    if (slotWidth(hole.segments) < 2 * d) return narrowed(middleLine(hole.segments), d);
    return { ...hole, segments: exactOffset(hole.segments, -d) ?? hole.segments };
  }
  if (hole.kind !== 'line') return hole;
  const along = travel(hole, 0);
  const off = Math.min(d, (distance(hole.from, hole.to) - LEAST) / 2);
  return { ...hole, from: addScaled(hole.from, along, off), to: addScaled(hole.to, along, -off) };
}

/**
 * The path of the beam that gives the piece its drawn size: cut edge half a kerf out, stitching holes half a kerf in,
 * slits half a kerf shorter at each end. Lines stay lines and arcs arcs.
 * @param kerf width that the beam burns away, mm, 0 to 2; 0 leaves the piece as it is
 */
export function kerfed(piece: PieceDrawing, kerf: number): PieceDrawing {
  if (!(kerf >= 0 && kerf <= 2))
    throw new RangeError(`Got a kerf of ${kerf} mm; allowed: 0 to 2 mm. Measure a slit that the laser has cut.`);
  if (kerf === 0) return piece;
  const d = kerf / 2;
  const outline = exactOffset(piece.outline, d) ?? polygonOffset(piece.outline, d);
  const hole = piece.layers.hole.map((each) => narrowed(each, d));
  // The first of the cut layer is the edge; the rest is cut inside the piece.
  const cut = [path(outline, true), ...piece.layers.cut.slice(1).map((each) => narrowed(each, d))];
  return { ...piece, outline, layers: { ...piece.layers, cut, hole } };
}

/** Notes on holes and slits that are too small for the beam. */
export function kerfNotes({ pieces }: Drawing, kerf: number): string[] {
  const sizes = new Map<string, Set<number>>([
    ['Holes', new Set()],
    ['Slits', new Set()],
  ]);
  for (const hole of pieces.flatMap(({ layers }) => layers.hole)) {
    if (hole.kind === 'arc') sizes.get('Holes')!.add(round(2 * hole.radius));
    else if (hole.kind === 'line') sizes.get('Slits')!.add(round(distance(hole.from, hole.to)));
  }
  const slots = pieces.flatMap(({ layers }) =>
    layers.hole.flatMap((hole) => (hole.kind === 'path' ? [round(slotWidth(hole.segments))] : [])),
  );
  const narrow = [...new Set(slots)].filter((width) => width < kerf);
  const holes = [...sizes].flatMap(([what, all]) =>
    [...all]
      .filter((size) => size < kerf + LEAST)
      .map(
        (size) =>
          `${what} of ${size} mm are too small for a kerf of ${kerf} mm: they burn to ${round(kerf + LEAST)} mm. Punch them by hand instead.`,
      ),
  );
  return [
    ...holes,
    ...narrow.map(
      (width) =>
        `Slots ${width} mm wide are too narrow for a kerf of ${kerf} mm: they burn to ${kerf} mm. Punch them by hand instead.`,
    ),
  ];
}

/** To a thousandth of a mm. */
const round = (size: number): number => Math.round(size * 1000) / 1000;
