import { type SeatCurve, seatPoint } from '../section/seatCurve.ts';

/** Lines across a cover piece at set distances from its tail edge, close together where head and tail curve. */
export interface RowPlan {
  /** Distance of each row from the tail edge on the pattern, mm, rising. */
  readonly v: readonly number[];
  readonly height: number;
  readonly margin: number;
  /** Distance from a seam within which the layers may curve. */
  readonly reach: number;
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

/** Largest turn of the curves between two rows, radians (12 degrees). */
const MAX_TURN = (12 * Math.PI) / 180;

/**
 * Rows for pieces of one height.
 * @param curve the fullest curve that a layer makes at head or tail
 * @param longest length of the longest curve that any column may need, mm
 */
export function rowPlan(height: number, margin: number, curve: SeatCurve, longest: number): RowPlan {
  const reach = Math.min(Math.max(longest, curve.length) + 0.5, height / 2 - margin - 0.5);
  const steps = Math.max(1, Math.ceil(curve.up / MAX_TURN));
  const arc = curve.up * curve.radius;
  const distances = [0];
  for (let i = 1; i <= steps; i++) distances.push((arc * i) / steps);
  if (curve.straight > 1e-6) distances.push(arc + curve.straight);
  for (let i = 1; i <= steps; i++) distances.push(arc + curve.straight + (arc * i) / steps);
  const last = distances[distances.length - 1]!;
  if (reach > last + 0.2) distances.push((last + reach) / 2);
  const near = distances.filter((at, i) => at < reach - 1e-3 && (i === 0 || at > distances[i - 1]! + 1e-6));
  const tail = [0, ...near.map((at) => margin + at), margin + reach];
  const inside = [1 / 4, 1 / 2, 3 / 4].map((share) => margin + reach + (height - 2 * margin - 2 * reach) * share);
  return { v: [...tail, ...inside, ...tail.map((at) => height - at).reverse()], height, margin, reach };
}

/** Moves the rows of a column in from both edges, to follow a rounded corner; rows well inside stay. */
export function insetRow(plan: RowPlan, v: number, inset: number): number {
  if (inset === 0) return v;
  const edge = Math.min(v, plan.height - v);
  const zone = Math.min(plan.height / 2, 2.5 * inset + plan.margin + plan.reach);
  const moved = edge >= zone ? edge : inset + edge * (1 - inset / zone);
  return v <= plan.height / 2 ? moved : plan.height - moved;
}

/** Level and z of a place on a column at distance v from the tail edge. */
export function onColumn(plan: RowPlan, seat: ColumnSeat, v: number): [level: number, z: number] {
  const { reach, margin, height } = plan;
  const fromTail = v - margin;
  const fromHead = height - margin - v;
  if (fromTail <= reach) {
    const [run, rise] = seatPoint(seat.tail, fromTail);
    return [seat.seamLevel + seat.way * rise, seat.tailSeam + run];
  }
  if (fromHead <= reach) {
    const [run, rise] = seatPoint(seat.head, fromHead);
    return [seat.seamLevel + seat.way * rise, seat.headSeam - run];
  }
  const low = seat.tailSeam + seatPoint(seat.tail, reach)[0];
  const high = seat.headSeam - seatPoint(seat.head, reach)[0];
  const share = (fromTail - reach) / (height - 2 * margin - 2 * reach);
  return [seat.seamLevel + seat.way * seat.head.rise, low + (high - low) * share];
}
