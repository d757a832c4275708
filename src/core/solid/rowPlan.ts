import { type SeatCurve, seatPoint } from '../fold/section/seatCurve.ts';

/**
 * Rows across a cover piece, tail to head: cut edge, seam, the S of the seat, level ground, and the same again at the head.
 * Over the S they follow the curve of their own column, so that every column has its bends sampled alike.
 */
export interface RowPlan {
  readonly count: number;
  readonly height: number;
  readonly margin: number;
  /** Rows over one arc of the S. */
  readonly steps: number;
  /** Distance from a seam within which the layers may curve. */
  readonly reach: number;
  /** Distances of the rows at one edge from it, in a column with the usual curve. */
  readonly near: readonly number[];
  /** Rows at one edge before its seam, as distances from the edge, rising from 0. */
  readonly edge: readonly number[];
  /** Rows over the level ground between the curves, as shares of the way from tail to head there. */
  readonly inside: readonly number[];
}

/** How a layer stands along one column: level at both seams, rise from there to the board, and where the seams are. */
export interface ColumnSeat {
  readonly seamLevel: number;
  /** 1 where the layer rises from the seam to the board, -1 where it falls. */
  readonly way: 1 | -1;
  readonly head: SeatCurve;
  readonly tail: SeatCurve;
  readonly headSeam: number;
  readonly tailSeam: number;
}

/** Largest turn between two rows, radians (12 degrees). */
const MAX_TURN = (12 * Math.PI) / 180;
/** Least spacing of rows over an arc and over the stretch between the arcs, mm: where there is no S rows keep apart. */
const LEAST_ARC = 0.15;
const LEAST_STRAIGHT = 0.02;
/** Least distance between rows that are put in, mm. */
const LEAST_APART = 0.05;
/** Rows over level ground whose edges are straight, as shares of the way over it. */
const FEW = [0.25, 0.5, 0.75];

/**
 * @param fullest the longest curve that any column of the piece may make
 * @param usual the curve of most columns
 * @param inside rows over the level ground, as shares of the way over it
 */
export function rowPlan(
  height: number,
  margin: number,
  fullest: SeatCurve,
  usual: SeatCurve,
  inside: readonly number[] = FEW,
): RowPlan {
  const steps = Math.max(2, Math.ceil(fullest.up / MAX_TURN));
  const longest = Math.max(fullest.length, 2 * LEAST_ARC) + LEAST_STRAIGHT + 0.5;
  const reach = Math.max(0.1, Math.min(longest, height / 2 - margin - 0.1));
  const seat = Array.from({ length: 2 * steps + 3 }, (_, row) => edgeDistance({ margin, steps, reach }, usual, row));
  const edge = [0];
  return { count: rowCount(steps, edge, inside), height, margin, steps, reach, near: [...edge, ...seat], edge, inside };
}

const rowCount = (steps: number, edge: readonly number[], inside: readonly number[]): number =>
  2 * (edge.length + 2 * steps + 3) + inside.length;

/**
 * The same plan with more rows, alike at tail and head. Over the S there are none more: rows follow its curve there.
 * @param fromEdge distances from either edge of the piece, mm
 */
export function withRows(plan: RowPlan, fromEdge: readonly number[]): RowPlan {
  const { height, margin, steps, reach } = plan;
  const level = height - 2 * margin - 2 * reach;
  const shares = fromEdge.map((v) => (v - margin - reach) / level);
  const edge = spaced([...plan.edge, ...fromEdge.filter((v) => v < margin)], LEAST_APART, margin);
  const inside = spaced([...plan.inside, ...shares, ...shares.map((share) => 1 - share)], LEAST_APART / level, 1);
  return { ...plan, count: rowCount(steps, edge, inside), edge, inside };
}

/** Places in rising order from 0 and below `end`, those dropped that are nearer to the one before or to the end than `least`. */
function spaced(places: readonly number[], least: number, end: number): number[] {
  const kept: number[] = [];
  for (const at of [...places].sort((a, b) => a - b))
    if (at >= 0 && at < end - least && at >= (kept.at(-1) ?? Number.NEGATIVE_INFINITY) + least) kept.push(at);
  return kept;
}

/** The rows of one column: distance from the tail edge on the pattern, level and z of each, and its slope as it goes in. */
export interface ColumnRows {
  readonly v: Float64Array;
  readonly level: Float64Array;
  readonly z: Float64Array;
  /** Angle up from the level ground, radians: 0 or more also where the layer comes down. */
  readonly angle: Float64Array;
}

/**
 * Lays the rows of a column.
 * @param spacing the seat by which the rows are spaced, where that is another layer's
 */
export function columnRows(plan: RowPlan, seat: ColumnSeat, spacing = seat): ColumnRows {
  const { count, height, margin, reach, edge, inside } = plan;
  const [v, level] = [new Float64Array(count), new Float64Array(count)];
  const [z, angle] = [new Float64Array(count), new Float64Array(count)];
  const isAlike = seat.head === seat.tail && spacing.head === spacing.tail;
  const side = (count - inside.length) / 2;
  for (let tail = 0; tail < side; tail++) {
    const head = count - 1 - tail;
    const row = tail - edge.length;
    let away = edge[tail] ?? edgeDistance(plan, spacing.tail, row);
    let [run, rise, slope] = seatPoint(seat.tail, away - margin);
    v[tail] = away;
    level[tail] = seat.seamLevel + seat.way * rise;
    z[tail] = seat.tailSeam + run;
    angle[tail] = slope;
    if (!isAlike) {
      away = edge[tail] ?? edgeDistance(plan, spacing.head, row);
      [run, rise, slope] = seatPoint(seat.head, away - margin);
    }
    v[head] = height - away;
    level[head] = seat.seamLevel + seat.way * rise;
    z[head] = seat.headSeam - run;
    angle[head] = slope;
  }
  const low = seat.tailSeam + seatPoint(seat.tail, reach)[0];
  const high = seat.headSeam - seatPoint(seat.head, reach)[0];
  inside.forEach((share, i) => {
    v[side + i] = margin + reach + (height - 2 * margin - 2 * reach) * share;
    level[side + i] = seat.seamLevel + seat.way * seat.head.rise;
    z[side + i] = low + (high - low) * share;
  });
  return { v, level, z, angle };
}

/** Distance of a row from its edge of the piece: row 0 on the seam, the last one where level ground begins, mm. */
function edgeDistance({ margin, steps, reach }: EdgeRows, curve: SeatCurve, row: number): number {
  if (row === 2 * steps + 2) return margin + reach;
  const arc = Math.max(curve.up * curve.radius, LEAST_ARC);
  const along = row <= steps ? (arc * row) / steps : arc + (arc * (row - steps - 1)) / steps;
  const upright = row > steps ? Math.max(curve.straight, LEAST_STRAIGHT) : 0;
  return margin + Math.min(along + upright, reach);
}

type EdgeRows = Pick<RowPlan, 'margin' | 'steps' | 'reach'>;
