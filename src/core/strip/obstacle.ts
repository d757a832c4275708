/**
 * A rigid outline that the strip may not enter: vertices in order with the solid on the left.
 *
 * An edge runs from each vertex to the next; a closed outline has one more, from the last to the first.
 */
export interface Obstacle {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly closed: boolean;
  /** Point of the input that each vertex came from, so that a force can be traced to a part of the outline. */
  readonly source: Int32Array;
}

/**
 * Grows an outline by an offset, rounding outside corners with facets.
 *
 * Every edge moves out by `offset` along its normal; an outside corner of turn A becomes ceil(A / facetTurn) facets with
 * their corners on the arc; an inside corner, or one of less than half a facet, lies where the moved edges meet.
 *
 * @param points x, y in turn, solid on the left (counter-clockwise when closed), at least 2 points; repeats are skipped
 * @param closed whether the last point joins the first
 * @param offset at least 0, same unit as the points
 * @param facetTurn most turn per facet, rad
 */
export function growOutline(points: ArrayLike<number>, closed: boolean, offset: number, facetTurn: number): Obstacle {
  const { px, py, from } = distinctPoints(points, closed);
  const n = px.length;
  const x: number[] = [];
  const y: number[] = [];
  const source: number[] = [];
  const put = (vx: number, vy: number, i: number): void => {
    x.push(vx);
    y.push(vy);
    source.push(from[i]!);
  };
  for (let i = 0; i < n; i++) {
    const before = closed || i > 0 ? (i + n - 1) % n : i;
    const after = closed || i < n - 1 ? (i + 1) % n : i;
    const first = before === i ? null : Math.atan2(py[i]! - py[before]!, px[i]! - px[before]!);
    const second = after === i ? null : Math.atan2(py[after]! - py[i]!, px[after]! - px[i]!);
    const a = first ?? second ?? 0;
    const c = second ?? first ?? 0;
    const turn = Math.atan2(Math.sin(c - a), Math.cos(c - a));
    if (offset === 0) put(px[i]!, py[i]!, i);
    else if (turn > facetTurn / 2) {
      const facets = Math.ceil(turn / facetTurn - 1e-9);
      for (let k = 0; k <= facets; k++) {
        const angle = a + (turn * k) / facets;
        put(px[i]! + offset * Math.sin(angle), py[i]! - offset * Math.cos(angle), i);
      }
    } else {
      const middle = a + turn / 2;
      const reach = offset / Math.max(Math.cos(turn / 2), 0.1);
      put(px[i]! + reach * Math.sin(middle), py[i]! - reach * Math.cos(middle), i);
    }
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), closed, source: Int32Array.from(source) };
}

/** Drops points that repeat their neighbour and keeps the index of each that stays. */
function distinctPoints(points: ArrayLike<number>, closed: boolean) {
  const px: number[] = [];
  const py: number[] = [];
  const from: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i]!;
    const y = points[i + 1]!;
    if (px.length > 0 && x === px.at(-1) && y === py.at(-1)) continue;
    px.push(x);
    py.push(y);
    from.push(i / 2);
  }
  if (closed && px.length > 1 && px[0] === px.at(-1) && py[0] === py.at(-1)) {
    px.pop();
    py.pop();
    from.pop();
  }
  return { px, py, from };
}
