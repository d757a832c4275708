/** A place of the needle's way along a row: a hole, or one of the turns of lace through the hole of a corner. */
export interface Station {
  /** Number of its hole. */
  readonly hole: number;
  /** Angle from the hole's own way to the edge, toward the next hole, radians. */
  readonly fan: number;
  /** Thickness of the layers, mm. */
  readonly stack: number;
  /** Distance from the hole to the cut edge, mm. */
  readonly reach: number;
  /** Turns of lace that lie in the hole already. */
  readonly pile: number;
}

/** The stations of one row in the needle's order; a closed row goes on from its last to its first. */
export interface StationRow {
  readonly stations: readonly Station[];
  readonly isClosed: boolean;
  /** mm */
  readonly pitch: number;
}

/** The two stations that a place on a row lies between, and the share of the way from the first to the second. */
export function between({ stations, isClosed }: StationRow, u: number): [from: number, to: number, share: number] {
  const { length } = stations;
  const low = isClosed ? Math.floor(u) : Math.max(0, Math.min(length - 2, Math.floor(u)));
  return [wrapped(low, length), wrapped(low + 1, length), u - low];
}

const wrapped = (i: number, length: number): number => ((i % length) + length) % length;

/** Share of the way between two holes over which the thicker layers go on, where one ends between them. */
const STEP = 0.62;

/** Thickness of the layers at a place on a row, mm: it steps down after the middle of two holes, where a layer ends. */
export function rowStack(row: StationRow, u: number): number {
  const [a, b, share] = between(row, u);
  const [from, to] = [row.stations[a]!.stack, row.stations[b]!.stack];
  const isFirst = from >= to ? share < STEP : share <= 1 - STEP;
  return isFirst ? from : to;
}

/** Distance from seam line to cut edge at a place on a row, mm. */
export function rowReach(row: StationRow, u: number): number {
  const [a, b, share] = between(row, u);
  const [from, to] = [row.stations[a]!.reach, row.stations[b]!.reach];
  return from + (to - from) * share;
}
