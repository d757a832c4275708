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
 * their corners on the arc; an inside corner, or one of less than half a facet, lies where the moved edges meet. An edge or
 * facet that an inside corner leaves no length is dropped, and its neighbours meet.
 *
 * @param points x, y in turn, solid on the left (counter-clockwise when closed), at least 2 points; repeats are skipped
 * @param closed whether the last point joins the first
 * @param offset at least 0, same unit as the points
 * @param facetTurn most turn per facet, rad
 */
export function growOutline(points: ArrayLike<number>, closed: boolean, offset: number, facetTurn: number): Obstacle {
  const { px, py, from } = distinctPoints(points, closed);
  const n = px.length;
  const vertices: Vertex[] = [];
  /** Direction in which the outline leaves each vertex. */
  const angles: number[] = [];
  const put = (vx: number, vy: number, i: number, angle: number): void => {
    vertices.push({ x: vx, y: vy, source: from[i]! });
    angles.push(angle);
  };
  for (let i = 0; i < n; i++) {
    const before = closed || i > 0 ? (i + n - 1) % n : i;
    const after = closed || i < n - 1 ? (i + 1) % n : i;
    const first = before === i ? null : Math.atan2(py[i]! - py[before]!, px[i]! - px[before]!);
    const second = after === i ? null : Math.atan2(py[after]! - py[i]!, px[after]! - px[i]!);
    const a = first ?? second ?? 0;
    const c = second ?? first ?? 0;
    const turn = Math.atan2(Math.sin(c - a), Math.cos(c - a));
    if (offset === 0) put(px[i]!, py[i]!, i, c);
    else if (turn > facetTurn / 2) {
      const facets = Math.ceil(turn / facetTurn - 1e-9);
      for (let k = 0; k <= facets; k++) {
        const angle = a + (turn * k) / facets;
        const leaves = k === facets ? c : angle + turn / facets / 2;
        put(px[i]! + offset * Math.sin(angle), py[i]! - offset * Math.cos(angle), i, leaves);
      }
    } else {
      const middle = a + turn / 2;
      const reach = offset / Math.max(Math.cos(turn / 2), 0.1);
      put(px[i]! + reach * Math.sin(middle), py[i]! - reach * Math.cos(middle), i, c);
    }
  }
  dropReversed(vertices, angles, closed);
  return {
    x: Float64Array.from(vertices, ({ x }) => x),
    y: Float64Array.from(vertices, ({ y }) => y),
    closed,
    source: Int32Array.from(vertices, ({ source }) => source),
  };
}

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly source: number;
}

/** Drops every edge that runs against its direction, the longest first; the ends of an open outline stay. */
function dropReversed(vertices: Vertex[], angles: number[], closed: boolean): void {
  for (;;) {
    const n = vertices.length;
    let worst = -1;
    let most = -REVERSED;
    for (let i = closed ? 0 : 1; i < n - (closed ? 0 : 2); i++) {
      const [a, b, angle] = [vertices[i]!, vertices[(i + 1) % n]!, angles[i]!];
      const length = (b.x - a.x) * Math.cos(angle) + (b.y - a.y) * Math.sin(angle);
      if (length < most) {
        most = length;
        worst = i;
      }
    }
    if (worst < 0 || n <= 3) return;
    const next = (worst + 1) % n;
    vertices[next] = crossing(vertices[worst]!, angles.at(worst - 1)!, vertices[next]!, angles[next]!);
    vertices.splice(worst, 1);
    angles.splice(worst, 1);
  }
}

/** Length from which an edge counts as reversed, and sine under which two count as parallel: more than rounding. */
const [REVERSED, PARALLEL] = [1e-12, 1e-9];

/** Where a line through a meets one through b, in given directions; b where they are parallel. */
function crossing(a: Vertex, along: number, b: Vertex, other: number): Vertex {
  const sine = Math.sin(other - along);
  if (Math.abs(sine) < PARALLEL) return b;
  const reach = ((b.x - a.x) * Math.sin(other) - (b.y - a.y) * Math.cos(other)) / sine;
  return { x: a.x + reach * Math.cos(along), y: a.y + reach * Math.sin(along), source: b.source };
}

/** Points nearer to each other than this share of the largest coordinate are one: the direction between them is rounding. */
const APART = 1e-9;

/** Drops points that repeat their neighbour and keeps the index of each that stays. */
function distinctPoints(points: ArrayLike<number>, closed: boolean) {
  const px: number[] = [];
  const py: number[] = [];
  const from: number[] = [];
  const apart = APART * Array.from(points).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const isRepeat = (x: number, y: number, i: number): boolean => Math.hypot(x - px[i]!, y - py[i]!) <= apart;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = points[i]!;
    const y = points[i + 1]!;
    if (px.length > 0 && isRepeat(x, y, px.length - 1)) continue;
    px.push(x);
    py.push(y);
    from.push(i / 2);
  }
  if (closed && px.length > 1 && isRepeat(px[0]!, py[0]!, px.length - 1)) {
    px.pop();
    py.pop();
    from.pop();
  }
  return { px, py, from };
}
