import type { CoverDesign } from '../fold/coverDesign.ts';
import {
  type HalfSection,
  inFromSeam,
  neutralAt,
  placeSection,
  type SectionPoint,
  type SectionPosture,
  sectionStops,
} from '../fold/section/halfSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { repeated } from '../math/remembered.ts';
import { addScaled, dot, heading, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { pieceCorner } from '../pattern/pieceCorner.ts';
import type { EndField } from './endField.ts';
import { columnPlaces, displaced, type Grid, gridNormals, gridOf } from './gridSolid.ts';
import { mouthScoop } from './mouthScoop.ts';
import { bendStops, onBend, type PocketBend } from './pocketBend.ts';
import { type ColumnSeat, columnRows, type RowPlan } from './rowPlan.ts';
import { cornerStops, trimCorners } from './trimCorners.ts';

/** The cover's layers as grids of one shape: inner face, flesh and grain side of the outside, with the pattern's measure. */
export interface CoverGrid {
  /** Distance of each column from the front cut edge on the pattern, mm. */
  readonly s: readonly number[];
  readonly columns: readonly SectionPoint[];
  readonly rows: RowPlan;
  /** Pattern place of every point. */
  readonly uvs: Float64Array;
  /** The face that board and pocket see. */
  readonly inner: Grid;
  readonly flesh: Grid;
  readonly grain: Grid;
  readonly normals: Float64Array;
  /** Columns from the first to the last on which the lining lies; null without a lining. */
  readonly lined: readonly [number, number] | null;
  /** Both halves of the section; pockets stand on them. */
  readonly front: HalfSection;
  readonly back: HalfSection;
}

/** Distance from the fold over which a turned end's bulge at head and tail dies away, mm. Free choice. */
const BULGE_REACH = 15;

export interface CoverHalf {
  readonly half: HalfSection;
  readonly field: EndField;
  /** How pocket or end bend with the board; null where they are level. */
  readonly bend: PocketBend | null;
}

/**
 * Lays the whole outside, and the lining on it, as grids.
 *
 * The inner face is laid first, flesh and grain side stand off it by the layers' thickness along its own normals, so
 * layers neither gap nor cross.
 */
export function coverGrid(
  design: CoverDesign,
  point: RangePoint,
  front: CoverHalf,
  back: CoverHalf,
  posture: SectionPosture,
  rows: RowPlan,
): CoverGrid {
  const { corner } = pieceCorner(design.job, design.pieces);
  const planOf = (end: CoverHalf): HalfPlan => {
    const points = placeSection(end.half, halfStops(end, cornerStops(corner, rows.near)), posture);
    return { points, places: layHalf(design, point, end, points, rows) };
  };
  const onBack = planOf(back);
  const halves = [front === back ? onBack : planOf(front), onBack] as const;

  const frontCount = halves[0].points.length;
  const columns = [...halves[0].points.slice(1).reverse(), ...halves[1].points];
  const inner = gridOf(columns.length, rows.count);
  const slopes = new Float64Array(columns.length * rows.count);
  const uvs = new Float64Array(2 * columns.length * rows.count);
  const s = columns.map(({ d }, i) => (i < frontCount - 1 ? front.half.length - d : front.half.length + d));
  for (const [side, plan] of [
    ['front', halves[0]],
    ['back', halves[1]],
  ] as const) {
    const { places } = plan;
    plan.points.forEach((_, k) => {
      if (side === 'front' && k === 0) return;
      const i = side === 'front' ? frontCount - 1 - k : frontCount - 1 + k;
      for (let j = 0; j < rows.count; j++) {
        const from = 6 * (k * rows.count + j);
        const to = i * rows.count + j;
        inner.points[3 * to] = places[from]!;
        inner.points[3 * to + 1] = (side === 'front' ? -1 : 1) * places[from + 1]!;
        inner.points[3 * to + 2] = places[from + 2]!;
        const d = places[from + 4]!;
        uvs[2 * to] = side === 'front' ? front.half.length - d : front.half.length + d;
        uvs[2 * to + 1] = places[from + 3]!;
        slopes[to] = places[from + 5]!;
      }
    });
  }

  const offset = PARALLEL * design.needs[point].leathers.outside.thickness;
  const normals = coverNormals(inner, columns, slopes, frontCount, offset);
  trimCorners({ grid: inner, normals, uvs }, rows.height, corner, (i) =>
    Math.min(s[i]!, front.half.length + back.half.length - s[i]!),
  );
  const flesh = displaced(inner, normals, (i) => columns[i]!.lining);
  const grain = displaced(inner, normals, (i) => columns[i]!.lining + columns[i]!.outside);
  const reach = (half: HalfSection): number => half.toLiningEnd + 1e-6;
  const firstLined = columns.findIndex(({ d }, i) => i >= frontCount - 1 || d <= reach(front.half));
  const lastLined = columns.findLastIndex(({ d }, i) => i < frontCount || d <= reach(back.half));
  const lined: CoverGrid['lined'] = design.needs[point].leathers.lining ? [firstLined, lastLined] : null;
  return { s, columns, rows, uvs, inner, flesh, grain, normals, lined, front: front.half, back: back.half };
}

interface HalfPlan {
  readonly points: readonly SectionPoint[];
  /** x, y, z, pattern v, neutral length from the middle and slope toward head or tail off its turned end of every point. */
  readonly places: Float64Array;
}

/** Neutral lengths at which half the cover has columns. */
function halfStops({ half, field, bend }: CoverHalf, corners: readonly number[]): number[] {
  const stops = [...sectionStops(half), half.toTip, half.toSeam];
  for (const u of field.stops) stops.push(neutralAt(half, u));
  if (field.foreEdge === null) {
    const bent = bendStops(bend, half.length - foldEnd(half));
    for (const u of [...field.stops, ...bent]) if (u > 0) stops.push(foldEnd(half) + u);
    stops.push(uprightStart(half) + field.seamLevel(0));
  }
  for (const fromEdge of corners) stops.push(half.length - fromEdge);
  return columnPlaces(stops, 0, half.length);
}

/** What `HalfPlan` keeps of every point of half the inner face. */
function layHalf(
  design: CoverDesign,
  point: RangePoint,
  { half, field, bend }: CoverHalf,
  points: readonly SectionPoint[],
  rows: RowPlan,
): Float64Array {
  const board = design.needs[point].book.board;
  const count = rows.count;
  const places = new Float64Array(6 * points.length * count);
  const seam = points.find(({ d, lift }) => d >= half.toSeam - 1e-6 && lift === 0) ?? points[points.length - 1]!;
  const outward = seam.theta;
  const turned = field.foreEdge === null;
  const scoop = turned ? mouthScoop(design) : null;
  const leaf = half.length - foldEnd(half);
  // Over level ground a column lies as the one before it.
  const onOutside = repeated((seat: ColumnSeat, spaced: ColumnSeat) => columnRows(rows, seat, spaced));
  const onPocket = repeated((seat: ColumnSeat, spaced: ColumnSeat) => columnRows(rows, seat, spaced));
  const layersAt = (u: number, lift: number) => {
    const low = field.outsideSeat(u);
    const high = turned ? field.pocketSeat(u, board) : low;
    const spaced = lift === 1 ? high : low;
    const below = onOutside(low, spaced);
    return { below, above: turned ? onPocket(high, spaced) : below };
  };
  points.forEach((column, k) => {
    const { inner, theta, lift, d } = column;
    const onEnd = turned && d > half.toSeam;
    // Distance in from the seam or the fold, along whichever leaf this is.
    const u = onEnd ? Math.max(0, d - foldEnd(half)) : inFromSeam(half, d);
    const straight = layersAt(u, lift);
    const [x, y] = onEnd ? heading(outward) : heading(theta);
    const [backX, backY] = heading(theta);
    for (let j = 0; j < count; j++) {
      // The mouth of a turned end is the cut edge: scooping draws the far part of the leaf in toward the fold.
      const drawn = scoop && onEnd ? scoop(straight.below.v[j]!) * Math.max(0, (2 * u) / leaf - 1) : 0;
      const { below, above } = drawn > 0 ? layersAt(u - drawn, lift) : straight;
      const v = below.v[j]!;
      const [lower, upper] = [below.level[j]!, above.level[j]!];
      const level = onEnd ? lower + (upper - lower) * lift : lower;
      const bulge = turned ? (Math.max(0, board - upper + lower) / 2) * Math.max(0, 1 - (u - drawn) / BULGE_REACH) : 0;
      const rise = level - (onEnd ? lift * board : 0);
      const at = 6 * (k * count + j);
      let across = subtract(
        [inner[0] - rise * y, inner[1] + rise * x],
        [drawn * backX - bulge * x, drawn * backY - bulge * y],
      );
      if (lift === 1) across = bentOn(bend, seam, across);
      [places[at], places[at + 1]] = across;
      places[at + 2] = lift > 0 && lift < 1 ? nearer(below.z[j]!, above.z[j]!) : (lift === 1 ? above : below).z[j]!;
      places[at + 3] = v;
      places[at + 4] = d - drawn;
      // Not on the leaf of a turned end: offset across its curves, normals there came out wrong.
      places[at + 5] = onEnd ? 0 : below.angle[j]!;
    }
  });
  return places;
}

/** A place on a turned end, moved as its leaf bends with the board. */
function bentOn(bend: PocketBend | null, { inner, theta }: SectionPoint, at: Vec2): Vec2 {
  if (bend === null) return at;
  const way = heading(theta);
  const from = subtract(at, inner);
  const [u, h] = onBend(bend, -dot(from, way), dot(from, leftOf(way)));
  return addScaled(addScaled(inner, way, -u), leftOf(way), h);
}

/**
 * Of two places of one row the one nearer to the middle of the height. Where both leaves of a turned end bend to their seam, the
 * upright between them runs behind both curves: straight from one to the other it would cut the start of the one that stands farther in.
 */
const nearer = (a: number, b: number): number => (Math.abs(a) < Math.abs(b) ? a : b);

/** Neutral length at which the upright of a turned end begins. */
function uprightStart({ length, pieces }: HalfSection): number {
  return length - pieces.slice(-3).reduce((sum, piece) => sum + piece.length, 0);
}

/** Neutral length at which the second fold of a turned end is done. */
function foldEnd(half: HalfSection): number {
  return half.length - half.pieces[half.pieces.length - 1]!.length;
}

/** Offset of the grid that normals are taken from, in thicknesses: less than any radius the cover turns away on. */
const PARALLEL = 0.3;

/**
 * Normals of the inner face, taken from the parallel grid a little outward: at a sharp fold columns fall on one another on
 * the inner face, and rows do at the board's edge, but not there.
 */
function coverNormals(
  inner: Grid,
  columns: readonly SectionPoint[],
  slopes: Float64Array,
  frontCount: number,
  offset: number,
): Float64Array {
  const parallel = gridOf(inner.columns, inner.rows);
  parallel.points.set(inner.points);
  columns.forEach(({ theta }, i) => {
    const side = i < frontCount - 1 ? -1 : 1;
    for (let j = 0; j < inner.rows; j++) {
      const at = i * inner.rows + j;
      const slope = slopes[at]!;
      const level = offset * Math.cos(slope);
      parallel.points[3 * at]! += level * Math.sin(theta);
      parallel.points[3 * at + 1]! -= side * level * Math.cos(theta);
      parallel.points[3 * at + 2]! += (j < inner.rows / 2 ? -offset : offset) * Math.sin(slope);
    }
  });
  return gridNormals(parallel);
}
