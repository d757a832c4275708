import { measureNodeGap, type NodeGap } from './nodeGap.ts';
import { slideOf } from './slideStops.ts';
import { addRod } from './stripModel.ts';
import type { StripEnd, StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';
import { measureVertexGap, newVertexGap } from './vertexGap.ts';

/**
 * How a solve ended. Only `converged` is a shape to trust.
 *
 * stalled: no step lowers the energy; iterationCap: Newton ran out; contactOpen: the multiplier passes ran out with a gap
 * left; looped: the strip has made a loop, a balance of far higher energy; notFinite: the shape degenerated;
 * badInput: the problem itself is wrong, and `message` says where.
 */
export type StripStatus =
  | 'converged'
  | 'stalled'
  | 'iterationCap'
  | 'contactOpen'
  | 'looped'
  | 'notFinite'
  | 'badInput';

/** A force that the obstacle puts on the strip, EI/D^2. */
export interface StripContact {
  readonly kind: 'edge' | 'vertex';
  /** Edge or vertex of the grown outline. */
  readonly index: number;
  /** Place along the strip, edges from its first node. */
  readonly place: number;
  readonly x: number;
  readonly y: number;
  readonly fx: number;
  readonly fy: number;
}

/** What a held end puts on the strip: force EI/D^2 and moment EI/D about the end's own point. */
export interface EndReaction {
  readonly fx: number;
  readonly fy: number;
  readonly moment: number;
  /** How far a sliding end has moved along its line, D. */
  readonly slide: number;
  /** Force of its stops along its line, EI/D^2; 0 while it rests on none. */
  readonly stop: number;
}

export interface StripSolution {
  readonly status: StripStatus;
  /** What was wrong with the input; empty unless the status is `badInput`. */
  readonly message: string;
  /** Newton iterations over all passes and resolutions. */
  readonly iterations: number;
  /** Largest unbalanced nodal force, EI/D^2. */
  readonly residual: number;
  /** Largest depth of the strip inside the outline, D. */
  readonly contactGap: number;
  /** Node positions, x and y in turn, D; empty if there is no shape to show. A clamp lies half way along the end edge. */
  readonly nodes: Float64Array;
  /** Rest length of an edge, D. */
  readonly spacing: number;
  /** Stored elastic energy less the work of the loads, EI/D. */
  readonly energy: number;
  readonly contacts: readonly StripContact[];
  readonly start: EndReaction;
  readonly end: EndReaction;
}

const still: EndReaction = { fx: 0, fy: 0, moment: 0, slide: 0, stop: 0 };

/** Reads a solution out of the workspace; the only place where results are allocated. */
export function readSolution(
  space: StripWorkspace,
  problem: StripProblem,
  status: StripStatus,
  counts: { readonly iterations: number; readonly residual: number },
  contactGap: number,
  message: string,
): StripSolution {
  const finite = status !== 'badInput' && space.nodes.every(Number.isFinite);
  const energy = finite ? addRod(space, space.nodes, problem.stretchStiffness, 'energy') : 0;
  const usable = finite && Number.isFinite(energy) && Number.isFinite(counts.residual);
  return {
    status: usable || status === 'badInput' ? status : 'notFinite',
    message,
    iterations: counts.iterations,
    residual: usable ? counts.residual : 0,
    contactGap: usable && Number.isFinite(contactGap) ? contactGap : 0,
    nodes: usable ? space.nodes.slice() : new Float64Array(0),
    spacing: usable ? space.spacing : 0,
    energy: usable ? energy : 0,
    contacts: usable ? readContacts(space, problem) : [],
    start: usable ? reaction(space, problem.start, 0) : still,
    end: usable ? reaction(space, problem.end, 1) : still,
  };
}

/** The gradient left on the held nodes is the force that holds them. */
function reaction(space: StripWorkspace, end: StripEnd, side: 0 | 1): EndReaction {
  if (end.kind === 'free') return still;
  let fx = 0;
  let fy = 0;
  let moment = 0;
  for (let k = 0; k < 2; k++) {
    const b = 2 * (side === 0 ? k : space.count - 2 + k);
    const gx = space.force[b]!;
    const gy = space.force[b + 1]!;
    fx += gx;
    fy += gy;
    moment += (space.nodes[b]! - end.x) * gy - (space.nodes[b + 1]! - end.y) * gx;
  }
  return {
    fx,
    fy,
    moment,
    slide: slideOf(space, end, side, space.nodes),
    stop: space.stopForce[2 * side]! - space.stopForce[2 * side + 1]!,
  };
}

function readContacts(space: StripWorkspace, problem: StripProblem): StripContact[] {
  const contacts: StripContact[] = [];
  const { obstacle } = problem;
  if (!obstacle) return contacts;
  const node: NodeGap = { gap: 0, nx: 0, ny: 0, past: false };
  for (let k = 0; k < space.count; k++) {
    const push = space.nodeForce[k]!;
    if (!(push > 0)) continue;
    const x = space.nodes[2 * k]!;
    const y = space.nodes[2 * k + 1]!;
    const index = measureNodeGap(obstacle, x, y, space.nodeEdge[k]!, node);
    contacts.push({ kind: 'edge', index, place: k, x, y, fx: push * node.nx, fy: push * node.ny });
  }
  const foot = newVertexGap();
  for (let v = 0; v < space.vertexForce.length; v++) {
    const push = space.vertexForce[v]!;
    if (!(push > 0)) continue;
    const x = obstacle.x[v]!;
    const y = obstacle.y[v]!;
    const i = measureVertexGap(space.nodes, space.count, x, y, space.vertexNode[v]!, foot);
    if (i > 0)
      contacts.push({ kind: 'vertex', index: v, place: i + foot.u, x, y, fx: -push * foot.nx, fy: -push * foot.ny });
  }
  return contacts;
}
