import type { StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';
import { measureVertexGap, newVertexGap } from './vertexGap.ts';

const foot = newVertexGap();

/**
 * Measures how far the polygon of nodes cuts inside the smooth strip it stands for, at both held ends and at every vertex.
 *
 * Chords as long as the arc they replace: on a circle of radius 1/c the nodes lie c h^2/24 outside it and the middles of
 * edges c h^2/12 inside it, and so does the B-spline through those middles. Ends and corners hold the smooth strip, so the
 * polygon is held c h^2/12 to the inside. The curvature is taken from the last pass, since a moving one would couple four
 * nodes; what that leaves out is of the order of the bending energy's own error.
 *
 * @returns largest change since the last measure, D
 */
export function measureSag(space: StripWorkspace, problem: StripProblem): number {
  const { nodes, count, spacing: h, vertexSag, vertexNode, endSag } = space;
  const { obstacle } = problem;
  let change = 0;
  for (let side = 0; side < 2; side++) {
    const end = side === 0 ? problem.start : problem.end;
    // The clamp plane is half an edge before the first inner node: extrapolate from the first two.
    const near = side === 0 ? 1 : count - 2;
    const next = side === 0 ? 2 : count - 3;
    const sag = end.kind === 'free' ? 0 : capped(1.5 * turnAt(nodes, near) - 0.5 * turnAt(nodes, next), h);
    change = Math.max(change, Math.abs(sag - endSag[side]!));
    endSag[side] = sag;
  }
  if (!obstacle) return change;
  for (let v = 0; v < vertexSag.length; v++) {
    const i = measureVertexGap(nodes, count, obstacle.x[v]!, obstacle.y[v]!, vertexNode[v]!, foot);
    const sag = i > 0 ? capped(turnAround(nodes, count, i, foot.u), h) : 0;
    if (space.vertexForce[v]! > 0) change = Math.max(change, Math.abs(sag - vertexSag[v]!));
    vertexSag[v] = sag;
  }
  return change;
}

/** Sag c h^2/12 of a turn c h at one node; a turn over one radian is no smooth bend and is held at one. */
const capped = (turn: number, h: number): number => (Math.max(-1, Math.min(1, turn)) * h) / 12;

/** Turn at a foot in piece i, blended with the nearer neighbour so that it does not jump as the foot leaves the piece. */
function turnAround(nodes: Float64Array, count: number, i: number, u: number): number {
  const beside = Math.min(count - 2, Math.max(1, i + Math.sign(u)));
  return (1 - Math.abs(u)) * turnAt(nodes, i) + Math.abs(u) * turnAt(nodes, beside);
}

function turnAt(nodes: Float64Array, k: number): number {
  const b = 2 * k;
  const ax = nodes[b]! - nodes[b - 2]!;
  const ay = nodes[b + 1]! - nodes[b - 1]!;
  const cx = nodes[b + 2]! - nodes[b]!;
  const cy = nodes[b + 3]! - nodes[b + 1]!;
  return Math.atan2(ax * cy - ay * cx, ax * cx + ay * cy);
}
