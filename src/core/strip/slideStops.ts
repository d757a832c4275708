import { addPush } from './contact.ts';
import type { Order } from './stripModel.ts';
import type { StripEnd, StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

/** How far an end has slid past its own point, D; 0 unless it is a slide. */
export function slideOf(space: StripWorkspace, end: StripEnd, side: 0 | 1, nodes: Float64Array): number {
  if (end.kind !== 'slide') return 0;
  const b = side === 0 ? 0 : 2 * (space.count - 1);
  const inward = (side === 0 ? 0.5 : -0.5) * space.spacing;
  return (nodes[b]! - end.x) * Math.cos(end.angle) + (nodes[b + 1]! - end.y) * Math.sin(end.angle) + inward;
}

/** Augmented Lagrangian of the slide stops, as in contact: the outermost node may not pass `min` or `max`. */
export function addStops(
  space: StripWorkspace,
  problem: StripProblem,
  nodes: Float64Array,
  penalty: number,
  order: Order,
): number {
  let energy = 0;
  for (let stop = 0; stop < 4; stop++) {
    const gap = stopGap(space, problem, nodes, stop);
    if (gap === Infinity) continue;
    const multiplier = space.stopForce[stop]!;
    const push = Math.max(0, multiplier - penalty * gap);
    energy += (push * push - multiplier * multiplier) / (2 * penalty);
    if (push === 0 || order === 'energy') continue;
    const end = (stop < 2 ? problem.start : problem.end) as { angle: number };
    const sign = stop % 2 === 0 ? 1 : -1;
    const node = stop < 2 ? 0 : space.count - 1;
    addPush(space, node, sign * Math.cos(end.angle), sign * Math.sin(end.angle), push, penalty);
  }
  return energy;
}

/** Takes the present stop forces as multipliers; returns the largest gap left, D. */
export function updateStops(
  space: StripWorkspace,
  problem: StripProblem,
  nodes: Float64Array,
  penalty: number,
): number {
  let worst = 0;
  for (let stop = 0; stop < 4; stop++) {
    const before = space.stopForce[stop]!;
    const push = Math.max(0, before - penalty * stopGap(space, problem, nodes, stop));
    worst = Math.max(worst, Math.abs(push - before) / penalty);
    space.stopForce[stop] = push;
  }
  return worst;
}

function stopGap(space: StripWorkspace, problem: StripProblem, nodes: Float64Array, stop: number): number {
  const end = stop < 2 ? problem.start : problem.end;
  if (end.kind !== 'slide') return Infinity;
  const slide = slideOf(space, end, stop < 2 ? 0 : 1, nodes);
  return stop % 2 === 0 ? slide - (end.min ?? -Infinity) : (end.max ?? Infinity) - slide;
}
