import { addPush } from './contact.ts';
import type { Order } from './stripModel.ts';
import type { Floor, StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

/** Distance of a node above the floor, D, negative below. */
const gapAt = ({ x, y, angle }: Floor, nodes: Float64Array, k: number): number =>
  (nodes[2 * k + 1]! - y) * Math.cos(angle) - (nodes[2 * k]! - x) * Math.sin(angle);

/** Augmented Lagrangian of the floor, as in contact: no node may lie below it. A node that is held across its line cannot. */
export function addFloor(
  space: StripWorkspace,
  { floor }: StripProblem,
  nodes: Float64Array,
  penalty: number,
  order: Order,
): number {
  if (!floor) return 0;
  const { count, held, floorForce } = space;
  let energy = 0;
  for (let k = 0; k < count; k++) {
    if (held[2 * k + 1]) continue;
    const multiplier = floorForce[k]!;
    const push = Math.max(0, multiplier - penalty * gapAt(floor, nodes, k));
    energy += (push * push - multiplier * multiplier) / (2 * penalty);
    if (push > 0 && order === 'hessian')
      addPush(space, k, -Math.sin(floor.angle), Math.cos(floor.angle), push, penalty);
  }
  return energy;
}

/** Takes the present forces of the floor as multipliers; returns the largest gap left, D. */
export function updateFloor(
  { count, held, floorForce }: StripWorkspace,
  { floor }: StripProblem,
  nodes: Float64Array,
  penalty: number,
): number {
  if (!floor) return 0;
  let worst = 0;
  for (let k = 0; k < count; k++) {
    if (held[2 * k + 1]) continue;
    const before = floorForce[k]!;
    const push = Math.max(0, before - penalty * gapAt(floor, nodes, k));
    worst = Math.max(worst, Math.abs(push - before) / penalty);
    floorForce[k] = push;
  }
  return worst;
}
