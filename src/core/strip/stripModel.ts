import { HALF_BANDWIDTH, ROW_STRIDE } from './bandedLdl.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

/** What an energy function adds up: the value alone, or the gradient and Hessian too (into the workspace). */
export type Order = 'energy' | 'hessian';

// Local copies: read a hundred times a node, and an imported binding is not always folded into a constant.
const STRIDE = ROW_STRIDE;
const DIAGONAL = HALF_BANDWIDTH;

/** Place of row r, column c (c <= r) in the band. */
const entry = (r: number, c: number): number => r * STRIDE + DIAGONAL + c - r;

/**
 * Elastic energy of a planar discrete rod in node positions, less the work of the dead loads.
 *
 * E = sum over edges EA/(2h) (l - h)^2 + sum over inner nodes EI/(2h) (psi - psi0)^2 - sum f . x, with EI = 1, l an edge's
 * length, h its rest length and psi the turn from one edge to the next. With theta(e) the direction of edge e = (x, y):
 * grad theta = (-y, x)/l^2 and Hess theta = [[2xy, yy-xx], [yy-xx, -2xy]]/l^4, so the Hessian is exact.
 * Bergou et al. 2008, Discrete elastic rods, reduced to the plane.
 *
 * @param nodes positions x0 y0 x1 y1 ..., D
 * @param stretch EA D^2/EI
 * @param order with `hessian`, adds to `space.gradient` and `space.band`
 * @returns energy, EI/D; where two neighbours coincide the gradient is NaN
 */
export function addRod(space: StripWorkspace, nodes: Float64Array, stretch: number, order: Order): number {
  const { count, spacing: h, gradient, band, load, restTurn } = space;
  const withHessian = order === 'hessian';
  const stretchRate = stretch / h;
  const bendRate = 1 / h;
  let energy = 0;
  let ax = 0;
  let ay = 0;
  let aSquare = 1;
  for (let k = 0; k < count - 1; k++) {
    const b = 2 * k;
    const x = nodes[b + 2]! - nodes[b]!;
    const y = nodes[b + 3]! - nodes[b + 1]!;
    const square = x * x + y * y;
    const l = Math.sqrt(square);
    const excess = l - h;
    energy += 0.5 * stretchRate * excess * excess;
    if (withHessian) addStretch(gradient, band, b, x, y, l, excess, stretchRate);
    if (k > 0) {
      const offset = Math.atan2(ax * y - ay * x, ax * x + ay * y) - restTurn[k]!;
      energy += 0.5 * bendRate * offset * offset;
      if (withHessian) addBend(gradient, band, b - 2, ax, ay, aSquare, x, y, square, offset, bendRate);
    }
    ax = x;
    ay = y;
    aSquare = square;
  }
  for (let i = 0; i < 2 * count; i++) {
    const f = load[i]!;
    if (f === 0) continue;
    energy -= f * nodes[i]!;
    if (withHessian) gradient[i] = gradient[i]! - f;
  }
  return energy;
}

function addStretch(
  gradient: Float64Array,
  band: Float64Array,
  b: number,
  x: number,
  y: number,
  l: number,
  excess: number,
  rate: number,
): void {
  const tension = (rate * excess) / l;
  const gx = tension * x;
  const gy = tension * y;
  gradient[b] = gradient[b]! - gx;
  gradient[b + 1] = gradient[b + 1]! - gy;
  gradient[b + 2] = gradient[b + 2]! + gx;
  gradient[b + 3] = gradient[b + 3]! + gy;
  // rate [(1 - h/l) I + (h/l) e e^T / l^2], with h = l - excess
  const along = (rate * (l - excess)) / (l * l * l);
  addDifference(band, b, tension + along * x * x, along * x * y, tension + along * y * y);
}

/** Adds the second derivative [[p, q], [q, r]] of a function of (node b/2 + 1) - (node b/2). */
function addDifference(band: Float64Array, b: number, p: number, q: number, r: number): void {
  for (let side = 0; side < 2; side++) {
    const c = b + 2 * side;
    band[entry(c, c)] = band[entry(c, c)]! + p;
    band[entry(c + 1, c)] = band[entry(c + 1, c)]! + q;
    band[entry(c + 1, c + 1)] = band[entry(c + 1, c + 1)]! + r;
  }
  band[entry(b + 2, b)] = band[entry(b + 2, b)]! - p;
  band[entry(b + 2, b + 1)] = band[entry(b + 2, b + 1)]! - q;
  band[entry(b + 3, b)] = band[entry(b + 3, b)]! - q;
  band[entry(b + 3, b + 1)] = band[entry(b + 3, b + 1)]! - r;
}

const slope = new Float64Array(6);

function addBend(
  gradient: Float64Array,
  band: Float64Array,
  b: number,
  ax: number,
  ay: number,
  aSquare: number,
  cx: number,
  cy: number,
  cSquare: number,
  offset: number,
  rate: number,
): void {
  const a0 = -ay / aSquare;
  const a1 = ax / aSquare;
  const c0 = -cy / cSquare;
  const c1 = cx / cSquare;
  slope[0] = a0;
  slope[1] = a1;
  slope[2] = -a0 - c0;
  slope[3] = -a1 - c1;
  slope[4] = c0;
  slope[5] = c1;
  const moment = rate * offset;
  for (let r = 0; r < 6; r++) {
    const s = slope[r]!;
    gradient[b + r] = gradient[b + r]! + moment * s;
    const row = entry(b + r, b);
    for (let c = 0; c <= r; c++) band[row + c] = band[row + c]! + rate * s * slope[c]!;
  }
  const a4 = moment / (aSquare * aSquare);
  const c4 = moment / (cSquare * cSquare);
  const aq = a4 * (ay * ay - ax * ax);
  const cq = c4 * (cy * cy - cx * cx);
  addDifference(band, b, -2 * a4 * ax * ay, -aq, 2 * a4 * ax * ay);
  addDifference(band, b + 2, 2 * c4 * cx * cy, cq, -2 * c4 * cx * cy);
}
