import { HALF_BANDWIDTH, ROW_STRIDE } from './bandedLdl.ts';
import { measureNodeGap, type NodeGap, nearestEdge } from './nodeGap.ts';
import type { Obstacle } from './obstacle.ts';
import type { Order } from './stripModel.ts';
import type { StripWorkspace } from './stripWorkspace.ts';
import { measureVertexGap, newVertexGap } from './vertexGap.ts';

const nodeGap: NodeGap = { gap: 0, nx: 0, ny: 0, past: false };
const vertexGap = newVertexGap();
const weight = new Float64Array(3);
const rate = new Float64Array(3);

/** Below this, 1 - gap * curvature is held, since the foot of a vertex near the curve's own centre is not defined. */
const LEAST_FOCUS = 0.2;

/** Pairs every node with its nearest edge and every vertex with its nearest node, from scratch. */
export function pairContacts(space: StripWorkspace, obstacle: Obstacle, nodes: Float64Array): void {
  const { count, nodeEdge } = space;
  const vertices = obstacle.x.length;
  if (space.vertexForce.length !== vertices) {
    space.vertexForce = new Float64Array(vertices);
    space.vertexNode = new Int32Array(vertices);
    space.vertexSag = new Float64Array(vertices);
  }
  for (let k = 0; k < count; k++) nodeEdge[k] = nearestEdge(obstacle, nodes[2 * k]!, nodes[2 * k + 1]!);
  for (let v = 0; v < vertices; v++) {
    let best = 1;
    let bestSquare = Infinity;
    for (let k = 1; k < count - 1; k++) {
      const square = (nodes[2 * k]! - obstacle.x[v]!) ** 2 + (nodes[2 * k + 1]! - obstacle.y[v]!) ** 2;
      if (square < bestSquare) {
        bestSquare = square;
        best = k;
      }
    }
    space.vertexNode[v] = best;
  }
}

/**
 * Augmented Lagrangian of contact: nodes against edges of the outline, and its vertices against the strip's curve.
 *
 * Each contact of gap g and multiplier m adds (p^2 - m^2)/(2 rho) with p = max(0, m - rho g); the force is p along the
 * normal, the Hessian rho dg dg^T - p d2g. Nocedal & Wright, Numerical Optimization, 17.4. The multiplier of a corner is
 * kept on the vertex, so it stays put while the strip slides over it.
 *
 * @param penalty rho, EI/D^3
 * @returns energy, EI/D
 */
export function addContact(
  space: StripWorkspace,
  obstacle: Obstacle,
  nodes: Float64Array,
  penalty: number,
  order: Order,
): number {
  const { count, held, nodeEdge, nodeForce, vertexForce, vertexNode, vertexSag, gradient, band } = space;
  let energy = 0;
  for (let k = 0; k < count; k++) {
    if (held[2 * k + 1]) continue;
    const multiplier = nodeForce[k]!;
    nodeEdge[k] = measureNodeGap(obstacle, nodes[2 * k]!, nodes[2 * k + 1]!, nodeEdge[k]!, nodeGap);
    const push = Math.max(0, multiplier - penalty * nodeGap.gap);
    energy += (push * push - multiplier * multiplier) / (2 * penalty);
    if (push === 0 || order === 'energy') continue;
    addPush(space, k, nodeGap.nx, nodeGap.ny, push, penalty);
  }
  for (let v = 0; v < vertexForce.length; v++) {
    const multiplier = vertexForce[v]!;
    const i = measureVertexGap(nodes, count, obstacle.x[v]!, obstacle.y[v]!, vertexNode[v]!, vertexGap);
    if (i > 0) vertexNode[v] = i;
    const push = i > 0 ? Math.max(0, multiplier - penalty * (vertexGap.gap + vertexSag[v]!)) : 0;
    energy += (push * push - multiplier * multiplier) / (2 * penalty);
    if (push > 0 && order === 'hessian') addVertex(gradient, band, 2 * (i - 1), push, penalty);
  }
  return energy;
}

/** Adds a contact of one node: the force p along its unit normal n to the gradient, the stiffness rho n n^T to the Hessian. */
export function addPush(
  { gradient, band }: StripWorkspace,
  node: number,
  nx: number,
  ny: number,
  push: number,
  penalty: number,
): void {
  const r = 2 * node;
  gradient[r] = gradient[r]! - push * nx;
  gradient[r + 1] = gradient[r + 1]! - push * ny;
  const row = r * ROW_STRIDE + HALF_BANDWIDTH;
  band[row] = band[row]! + penalty * nx * nx;
  band[row + ROW_STRIDE - 1] = band[row + ROW_STRIDE - 1]! + penalty * nx * ny;
  band[row + ROW_STRIDE] = band[row + ROW_STRIDE]! + penalty * ny * ny;
}

/** Weights of the three nodes in the foot (weight) and in the curve's derivative there (rate). */
function setWeights(u: number): void {
  weight[0] = 0.5 * (0.5 - u) * (0.5 - u);
  weight[1] = 0.75 - u * u;
  weight[2] = 0.5 * (0.5 + u) * (0.5 + u);
  rate[0] = u - 0.5;
  rate[1] = -2 * u;
  rate[2] = u + 0.5;
}

/**
 * Adds one vertex contact.
 *
 * With weights w, rates w', speed l, curvature c, normal n, tangent t: dg/dx_k = -w_k n, and differentiating the foot too,
 * d2g/dx_k dx_j = [(w'_k w_j n t^T + w_k w'_j t n^T)/l - g w'_k w'_j n n^T/l^2 - c w_k w_j t t^T] / (1 - g c).
 */
function addVertex(gradient: Float64Array, band: Float64Array, b: number, push: number, penalty: number): void {
  const { gap, nx, ny, tx, ty, speed, curvature, u } = vertexGap;
  setWeights(u);
  const bend = push / Math.max(LEAST_FOCUS, 1 - gap * curvature);
  for (let k = 0; k < 3; k++) {
    const wk = weight[k]!;
    const rk = rate[k]! / speed;
    const r = b + 2 * k;
    gradient[r] = gradient[r]! + push * wk * nx;
    gradient[r + 1] = gradient[r + 1]! + push * wk * ny;
    for (let j = 0; j <= k; j++) {
      const wj = weight[j]!;
      const rj = rate[j]! / speed;
      const nn = penalty * wk * wj + bend * gap * rk * rj;
      const tt = bend * curvature * wk * wj;
      const nt = -bend * rk * wj;
      const tn = -bend * wk * rj;
      const row = r * ROW_STRIDE + HALF_BANDWIDTH - 2 * (k - j);
      const next = row + ROW_STRIDE - 1;
      band[row] = band[row]! + nn * nx * nx + tt * tx * tx + nt * nx * tx + tn * tx * nx;
      band[next] = band[next]! + nn * ny * nx + tt * ty * tx + nt * ny * tx + tn * ty * nx;
      band[next + 1] = band[next + 1]! + nn * ny * ny + tt * ty * ty + nt * ny * ty + tn * ty * ny;
      if (j < k) band[row + 1] = band[row + 1]! + nn * nx * ny + tt * tx * ty + nt * nx * ty + tn * tx * ny;
    }
  }
}

/**
 * Takes the present contact forces as multipliers: m = max(0, m - rho g).
 *
 * @returns largest penetration, or gap under a contact that still pushes, D
 */
export function updateMultipliers(
  space: StripWorkspace,
  obstacle: Obstacle,
  nodes: Float64Array,
  penalty: number,
): number {
  const { count, held, nodeEdge, nodeForce, vertexForce, vertexNode, vertexSag } = space;
  let worst = 0;
  for (let k = 0; k < count; k++) {
    if (held[2 * k + 1]) continue;
    nodeEdge[k] = measureNodeGap(obstacle, nodes[2 * k]!, nodes[2 * k + 1]!, nodeEdge[k]!, nodeGap);
    const before = nodeForce[k]!;
    const push = nodeGap.past ? 0 : Math.max(0, before - penalty * nodeGap.gap);
    worst = Math.max(worst, Math.abs(push - before) / penalty);
    nodeForce[k] = push;
  }
  for (let v = 0; v < vertexForce.length; v++) {
    const i = measureVertexGap(nodes, count, obstacle.x[v]!, obstacle.y[v]!, vertexNode[v]!, vertexGap);
    const before = vertexForce[v]!;
    const push = i > 0 ? Math.max(0, before - penalty * (vertexGap.gap + vertexSag[v]!)) : 0;
    worst = Math.max(worst, Math.abs(push - before) / penalty);
    vertexForce[v] = push;
  }
  return worst;
}

/** Largest depth by which the strip enters the outline, D; 0 when it stays outside. Pairs must be current. */
export function largestPenetration(space: StripWorkspace, obstacle: Obstacle, nodes: Float64Array): number {
  const { count, held, nodeEdge, vertexNode, vertexSag } = space;
  let deepest = 0;
  for (let k = 0; k < count; k++) {
    if (held[2 * k + 1]) continue;
    nodeEdge[k] = measureNodeGap(obstacle, nodes[2 * k]!, nodes[2 * k + 1]!, nodeEdge[k]!, nodeGap);
    deepest = Math.max(deepest, -nodeGap.gap);
  }
  for (let v = 0; v < vertexNode.length; v++) {
    const i = measureVertexGap(nodes, count, obstacle.x[v]!, obstacle.y[v]!, vertexNode[v]!, vertexGap);
    if (i > 0) deepest = Math.max(deepest, -vertexGap.gap - vertexSag[v]!);
  }
  return deepest;
}
