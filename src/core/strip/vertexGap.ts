/**
 * Where one vertex of the outline stands to the strip, with the derivatives of the gap.
 *
 * The strip's curve is the quadratic B-spline of its nodes: it passes through the middle of every edge (so through the
 * clamp planes), is smooth across nodes, and lies within curvature h^2/8 of them. A polyline would make the normal jump as
 * a corner slides past a node, and Newton would chatter there.
 */
export interface VertexGap {
  /** Distance of the vertex to the left of the curve (the obstacle's side), negative where it pokes through. */
  gap: number;
  /** Left normal and tangent of the curve at the foot. */
  nx: number;
  ny: number;
  tx: number;
  ty: number;
  /** Length of the curve's derivative, and curvature, at the foot. */
  speed: number;
  curvature: number;
  /** Place in the piece, -1/2 to 1/2. */
  u: number;
}

export const newVertexGap = (): VertexGap => ({ gap: 0, nx: 0, ny: 0, tx: 0, ty: 0, speed: 1, curvature: 0, u: 0 });

/**
 * Finds the foot of a vertex on the strip's curve, walking from the piece it was last on.
 *
 * Piece i, u from -1/2 to 1/2: C(u) = (1/2 - u)^2/2 x[i-1] + (3/4 - u^2) x[i] + (1/2 + u)^2/2 x[i+1]. The foot is the root
 * of (C - v) . C' where it rises.
 *
 * @returns the middle node of the piece, or -1 if the vertex lies beyond an end of the strip (no contact)
 */
export function measureVertexGap(
  nodes: Float64Array,
  count: number,
  vx: number,
  vy: number,
  from: number,
  out: VertexGap,
): number {
  let i = from;
  let came = 0;
  // The walk never turns back, so it ends.
  for (;;) {
    const b = 2 * i;
    const ax = nodes[b - 2]!;
    const ay = nodes[b - 1]!;
    const cx = nodes[b + 2]!;
    const cy = nodes[b + 3]!;
    // C = m + p u + q u^2 / 2, relative to the vertex
    const mx = 0.125 * (ax + cx) + 0.75 * nodes[b]! - vx;
    const my = 0.125 * (ay + cy) + 0.75 * nodes[b + 1]! - vy;
    const px = 0.5 * (cx - ax);
    const py = 0.5 * (cy - ay);
    const qx = ax - 2 * nodes[b]! + cx;
    const qy = ay - 2 * nodes[b + 1]! + cy;
    const low = slopeAt(-0.5, mx, my, px, py, qx, qy);
    const high = slopeAt(0.5, mx, my, px, py, qx, qy);
    const way = low > 0 ? -1 : high < 0 ? 1 : 0;
    if (way !== 0 && came !== -way) {
      i += way;
      came = way;
      if (i < 1 || i > count - 2) return -1;
      continue;
    }
    const u = rootOf(mx, my, px, py, qx, qy);
    const dx = px + qx * u;
    const dy = py + qy * u;
    const speed = Math.sqrt(dx * dx + dy * dy);
    out.u = u;
    out.speed = speed;
    out.tx = dx / speed;
    out.ty = dy / speed;
    out.nx = -out.ty;
    out.ny = out.tx;
    out.gap = -((mx + u * (px + 0.5 * qx * u)) * out.nx + (my + u * (py + 0.5 * qy * u)) * out.ny);
    out.curvature = (out.nx * qx + out.ny * qy) / (speed * speed);
    return i;
  }
}

/** (C - v) . C' at u. */
function slopeAt(u: number, mx: number, my: number, px: number, py: number, qx: number, qy: number): number {
  return (mx + u * (px + 0.5 * qx * u)) * (px + qx * u) + (my + u * (py + 0.5 * qy * u)) * (py + qy * u);
}

/** Steps after which bisection alone has found the foot to 1e-12 of a piece, and step at which it is found. */
const MOST_STEPS = 40;
const STEP_SETTLED = 1e-14;

/** Root of {@link slopeAt} between -1/2 and 1/2: Newton's method, and bisection where that leaves the bracket. */
function rootOf(mx: number, my: number, px: number, py: number, qx: number, qy: number): number {
  let a = -0.5;
  let b = 0.5;
  let u = 0;
  for (let k = 0; k < MOST_STEPS; k++) {
    const value = slopeAt(u, mx, my, px, py, qx, qy);
    if (value > 0) b = u;
    else a = u;
    const dx = px + qx * u;
    const dy = py + qy * u;
    const rise = dx * dx + dy * dy + (mx + u * (px + 0.5 * qx * u)) * qx + (my + u * (py + 0.5 * qy * u)) * qy;
    const next = u - value / rise;
    const safe = next >= a && next <= b ? next : 0.5 * (a + b);
    if (Math.abs(safe - u) < STEP_SETTLED) return safe;
    u = safe;
  }
  return u;
}
