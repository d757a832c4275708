import { factorBandedLdl, HALF_BANDWIDTH, ROW_STRIDE, solveBandedLdl } from './bandedLdl.ts';
import { addContact } from './contact.ts';
import { addFloor } from './floor.ts';
import { addStops } from './slideStops.ts';
import { holdEnds, releaseStep } from './stripEnds.ts';
import { addRod, type Order } from './stripModel.ts';
import type { StripProblem } from './stripProblem.ts';
import type { StripSettings } from './stripSettings.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

export type NewtonOutcome = 'balanced' | 'stalled' | 'iterationCap' | 'notFinite';

/** Counters of a solve, carried through its passes. */
export interface NewtonState {
  iterations: number;
  residual: number;
  energy: number;
}

function evaluate(
  space: StripWorkspace,
  problem: StripProblem,
  nodes: Float64Array,
  penalty: number,
  order: Order,
): number {
  if (order === 'hessian') {
    space.gradient.fill(0);
    space.band.fill(0);
  }
  let energy = addRod(space, nodes, problem.stretchStiffness, order);
  if (problem.obstacle) energy += addContact(space, problem.obstacle, nodes, penalty, order);
  energy += addFloor(space, problem, nodes, penalty, order);
  energy += addStops(space, problem, nodes, penalty, order);
  if (order === 'hessian') {
    space.force.set(space.gradient);
    holdEnds(space, problem);
  }
  return energy;
}

/**
 * Newton's method with backtracking on the energy, at fixed multipliers.
 *
 * Each iteration solves (H + shift I) p = -g, the shift raised from 0 until every pivot is positive, caps p so that no node
 * moves more than `stepCap` edges, and halves it until the energy falls by `armijo` times the predicted drop. Where that
 * drop is below what a double can resolve in the energy, the full step is taken and judged by the residual instead.
 *
 * @param penalty of contact, EI/D^3
 * @param tolerance largest unbalanced nodal force to stop at, EI/D^2
 * @returns how it ended; `space.nodes` holds the shape reached, always finite
 */
export function balance(
  space: StripWorkspace,
  problem: StripProblem,
  settings: StripSettings,
  penalty: number,
  tolerance: number,
  state: NewtonState,
): NewtonOutcome {
  const { nodes, trial, gradient, step } = space;
  const size = 2 * space.count;
  // Rounding of positions (of order 1) through the stretching stiffness: forces below this carry no meaning.
  const noise = (4 * Number.EPSILON * problem.stretchStiffness * problem.length) / space.spacing;
  const enough = Math.max(tolerance, noise);
  let blind = 0;
  let before = Infinity;
  for (;;) {
    const energy = evaluate(space, problem, nodes, penalty, 'hessian');
    const residual = largest(gradient);
    if (!Number.isFinite(energy) || !Number.isFinite(residual)) return 'notFinite';
    state.energy = energy;
    state.residual = residual;
    if (residual <= enough) return 'balanced';
    if (state.iterations >= settings.maxIterations) return 'iterationCap';
    state.iterations++;
    if (!direction(space, settings)) return 'stalled';
    let slope = 0;
    let reach = 0;
    for (let i = 0; i < size; i++) slope += gradient[i]! * step[i]!;
    releaseStep(space, problem);
    for (let i = 0; i < size; i += 2) reach = Math.max(reach, Math.hypot(step[i]!, step[i + 1]!));
    if (!Number.isFinite(reach)) return 'notFinite';
    let share = Math.min(1, (settings.stepCap * space.spacing) / reach);
    const unresolved = -slope * share <= 1e-13 * (Math.abs(energy) + problem.stretchStiffness * Number.EPSILON);
    // Steps too small to be judged by energy: a few must reach the residual, or nothing will. One that does not lower it
    // jumps to and fro across a kink, where a corner leaves one piece of the curve for the next; half of it lands there.
    if (unresolved && ++blind > settings.maxBlind) return 'stalled';
    if (unresolved && residual > 0.5 * before) share *= 0.5;
    before = unresolved ? residual : Infinity;
    for (let halvings = 0; ; halvings++) {
      for (let i = 0; i < size; i++) trial[i] = nodes[i]! + share * step[i]!;
      if (unresolved) break;
      const next = evaluate(space, problem, trial, penalty, 'energy');
      if (next <= energy + settings.armijo * share * slope) break;
      if (halvings >= settings.maxBacktracks) return 'stalled';
      share *= 0.5;
    }
    nodes.set(trial);
  }
}

/** Solves for the Newton direction into `space.step`, shifting the diagonal until the matrix is positive definite. */
function direction(space: StripWorkspace, settings: StripSettings): boolean {
  const { band, factors, gradient, step } = space;
  const size = 2 * space.count;
  let shift = 0;
  for (let tries = 0; tries <= settings.maxShifts; tries++) {
    factors.set(band);
    if (shift > 0) {
      for (let i = 0; i < size; i++) {
        const d = i * ROW_STRIDE + HALF_BANDWIDTH;
        factors[d] = factors[d]! + shift;
      }
    }
    if (factorBandedLdl(factors, size, settings.minPivot) < 0) {
      for (let i = 0; i < size; i++) step[i] = -gradient[i]!;
      solveBandedLdl(factors, size, step);
      return true;
    }
    shift = shift === 0 ? settings.firstShift : shift * settings.shiftGrowth;
  }
  return false;
}

function largest(values: Float64Array): number {
  let worst = 0;
  // Math.max, so that a NaN stays.
  for (let i = 0; i < values.length; i++) worst = Math.max(worst, Math.abs(values[i]!));
  return worst;
}
