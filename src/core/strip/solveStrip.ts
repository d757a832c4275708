import { largestPenetration, pairContacts, updateMultipliers } from './contact.ts';
import { updateFloor } from './floor.ts';
import { balance, type NewtonState } from './newton.ts';
import { layAlong, refine } from './resample.ts';
import { measureSag } from './sag.ts';
import { updateStops } from './slideStops.ts';
import { loadProblem, placeEnds } from './stripEnds.ts';
import { faultIn, type StripProblem } from './stripProblem.ts';
import { type StripSettings, settingsFor, stripSettings } from './stripSettings.ts';
import type { StripStatus } from './stripSolution.ts';
import { readSolution, type StripSolution } from './stripSolution.ts';
import { createStripWorkspace, type StripWorkspace } from './stripWorkspace.ts';
import { turningAlong } from './turning.ts';

/** A strip that can be solved again and again: workspaces for every resolution of a cold start, and the last shape. */
export interface StripSolver {
  readonly settings: StripSettings;
  /** Coarse to fine; the last has `settings.segments`. */
  readonly levels: readonly StripWorkspace[];
  /** One with four times the segments; see {@link finerSolver}. */
  finer?: StripSolver;
}

/** Factor on the segments of a finer solver. */
const FINER = 4;

/** A solver with the same settings but four times the segments, kept from one call to the next. */
export function finerSolver(solver: StripSolver): StripSolver {
  const { settings } = solver;
  solver.finer ??= createStripSolver({ ...settings, segments: FINER * settings.segments });
  return solver.finer;
}

/** Tolerances of all but the last strip of a cold start, as multiples: its own error is larger than that. */
const COARSE_LOOSENESS = 1e3;

/** Unbalanced force, in residuals, that a pass may leave while contact is open. */
const OPEN_LOOSENESS = 1e4;

/** Prepares a solver; all memory that iterations use is taken here. */
export function createStripSolver(settings: StripSettings = stripSettings): StripSolver {
  const sizes = [settings.segments];
  while (sizes[0]! >= 2 * settings.coarsest) sizes.unshift(Math.ceil(sizes[0]! / 2));
  return { settings, levels: sizes.map(createStripWorkspace) };
}

/**
 * Finds the shape of least energy of an elastic strip held at its ends, loaded, and kept out of an obstacle.
 *
 * min E(x) subject to gap(x) >= 0: Newton on the augmented Lagrangian, then multipliers take the contact forces, at most
 * `maxPasses` times. See stripModel.ts and contact.ts for the terms.
 *
 * @param guess a path from start to end to begin from, x and y in turn, outside the obstacle: solved on a coarse strip first
 *   and refined. Leave it out to begin from the solver's last shape (same obstacle shape, slightly changed numbers).
 * @returns the shape and how far to trust it; never throws, and every number in it is finite
 */
export function solveStrip(solver: StripSolver, problem: StripProblem, guess?: ArrayLike<number>): StripSolution {
  const { levels } = solver;
  const settings = settingsFor(solver.settings, problem.length);
  const finest = levels.at(-1)!;
  const state: NewtonState = { iterations: 0, residual: 0, energy: 0 };
  const fault = faultIn(problem, settings.segments) ?? faultInGuess(guess, finest);
  if (fault) {
    finest.solved = false;
    return readSolution(finest, problem, 'badInput', state, 0, fault);
  }
  const status = guess
    ? coldStarts(levels, problem, settings, guess, state)
    : warmStart(finest, problem, settings, state);
  finest.solved = status === 'converged';
  const penetration = problem.obstacle ? largestPenetration(finest, problem.obstacle, finest.nodes) : 0;
  return readSolution(finest, problem, status, state, penetration, '');
}

function warmStart(
  space: StripWorkspace,
  problem: StripProblem,
  settings: StripSettings,
  state: NewtonState,
): StripStatus {
  loadProblem(space, problem);
  return solveLevel(space, problem, settings, 1, turningAlong(space.nodes), state);
}

/**
 * Cold starts until one succeeds. One that begins with the strip's own stiffness does for ordinary leather; where that is
 * very stiff, or fails, the strip begins soft. Iterations of all are counted.
 */
function coldStarts(
  levels: readonly StripWorkspace[],
  problem: StripProblem,
  settings: StripSettings,
  guess: ArrayLike<number>,
  state: NewtonState,
): StripStatus {
  const { usualLength, ordinaryStretch, softest, stiffening, starts } = settings;
  const unit = (usualLength / problem.length) ** 2;
  const soft = (softest * unit) / excessOf(guess);
  const first = Array.from({ length: starts }, (_, i) => soft * stiffening ** i).filter(
    (stretch) => stretch < problem.stretchStiffness,
  );
  if (first.length === 0 || problem.stretchStiffness <= ordinaryStretch * unit) first.unshift(Infinity);
  let status: StripStatus = 'stalled';
  let spent = 0;
  for (const stretch of first) {
    status = coldStart(stagesOf(levels, problem, stretch, stiffening), problem, settings, guess, state);
    spent += state.iterations;
    if (status === 'converged' || status === 'notFinite') break;
  }
  state.iterations = spent;
  return status;
}

/** A strip of a cold start. */
interface Stage {
  readonly level: StripWorkspace;
  /** EA D^2/EI. */
  readonly stretch: number;
  /** Factor on the tolerances. */
  readonly looseness: number;
}

/** The strips of a cold start in turn, each finer and stiffer than the one before; the finest is stiffened alone at the end. */
function stagesOf(
  levels: readonly StripWorkspace[],
  { stretchStiffness }: StripProblem,
  first: number,
  stiffening: number,
): Stage[] {
  const stages: Stage[] = [];
  const last = levels.length - 1;
  for (let i = 0; ; i++) {
    const soft = first * stiffening ** i;
    const isSoft = soft > 0 && soft < stretchStiffness;
    const isLast = i >= last && !isSoft;
    stages.push({
      level: levels[Math.min(i, last)]!,
      stretch: isSoft ? soft : stretchStiffness,
      looseness: isLast ? 1 : COARSE_LOOSENESS,
    });
    if (isLast) return stages;
  }
}

/**
 * Solves on ever finer and stiffer strips, each begun from the one before, or from the guess where that one has a loop (long
 * edges step far); only the last decides the outcome.
 */
function coldStart(
  stages: readonly Stage[],
  problem: StripProblem,
  settings: StripSettings,
  guess: ArrayLike<number>,
  state: NewtonState,
): StripStatus {
  let status: StripStatus = 'converged';
  let spent = 0;
  let coarser: StripWorkspace | null = null;
  const turning = turningOf(guess, problem);
  for (const { level, stretch, looseness } of stages) {
    const stage = { ...problem, stretchStiffness: stretch };
    loadProblem(level, stage);
    if (level !== coarser || status === 'looped') {
      // Forces of an earlier solve are dropped, so that the answer depends on the problem alone.
      level.nodeForce.fill(0);
      level.vertexForce.fill(0);
      level.vertexSag.fill(0);
      level.endSag.fill(0);
      level.floorForce.fill(0);
      level.stopForce.fill(0);
      if (coarser && status !== 'looped') {
        refine(coarser, level, stage);
        level.stopForce.set(coarser.stopForce);
        if (problem.obstacle) {
          pairContacts(level, problem.obstacle, level.nodes);
          level.vertexForce.set(coarser.vertexForce);
        }
        measureSag(level, stage);
      } else {
        layAlong(level, stage, guess);
      }
      coarser = level;
    }
    state.iterations = 0;
    status = solveLevel(level, stage, settings, looseness, turning, state);
    spent += state.iterations;
    if (status === 'notFinite') break;
  }
  state.iterations = spent;
  return status;
}

/** Turning of a guess, with what it turns at its very ends from and to the directions in which they are held. */
function turningOf(guess: ArrayLike<number>, { start, end }: StripProblem): number {
  const path = Array.from(guess);
  const [x, y] = [path.at(-2)!, path.at(-1)!];
  if (start.kind !== 'free') path.unshift(path[0]! - Math.cos(start.angle), path[1]! - Math.sin(start.angle));
  if (end.kind !== 'free') path.push(x + Math.cos(end.angle), y + Math.sin(end.angle));
  return turningAlong(path);
}

/** By how much a path is longer than its chord, as a share of its length, 0 to 1. */
function excessOf(path: ArrayLike<number>): number {
  const n = path.length;
  let total = 0;
  for (let i = 2; i < n; i += 2) total += Math.hypot(path[i]! - path[i - 2]!, path[i + 1]! - path[i - 1]!);
  return Math.max(0, 1 - Math.hypot(path[n - 2]! - path[0]!, path[n - 1]! - path[1]!) / total);
}

function faultInGuess(guess: ArrayLike<number> | undefined, finest: StripWorkspace): string | null {
  if (!guess) return finest.solved ? null : 'guess: needed, since this solver holds no earlier solution';
  if (guess.length < 4 || guess.length % 2 !== 0) return 'guess: at least two points are needed, x and y in turn';
  return Array.from(guess).every(Number.isFinite) ? null : 'guess: every coordinate must be a finite number';
}

/** Newton and multiplier passes at one resolution, to `looseness` times the settings' tolerances. */
function solveLevel(
  space: StripWorkspace,
  problem: StripProblem,
  settings: StripSettings,
  looseness: number,
  turning: number,
  state: NewtonState,
): StripStatus {
  const { obstacle } = problem;
  let { penalty } = settings;
  const residual = settings.residual * looseness;
  const gap = settings.gap * looseness;
  let open = Infinity;
  for (let pass = 0; pass < settings.maxPasses; pass++) {
    if (obstacle) pairContacts(space, obstacle, space.nodes);
    placeEnds(space, problem, space.nodes);
    const tolerance = Math.max(residual, Math.min(OPEN_LOOSENESS * settings.residual, 1e-2 * open * penalty));
    const outcome = balance(space, problem, settings, penalty, tolerance, state);
    // A deep contact may leave the edge that it was paired with, and the energy jumps: pair again and go on.
    if (outcome === 'stalled' && obstacle && pass + 1 < settings.maxPasses) continue;
    if (outcome !== 'balanced') return outcome;
    if (Math.abs(turningAlong(space.nodes) - turning) > Math.PI) return 'looped';
    const before = open;
    const sagged = measureSag(space, problem);
    open = Math.max(
      obstacle ? updateMultipliers(space, obstacle, space.nodes, penalty) : 0,
      updateFloor(space, problem, space.nodes, penalty),
      updateStops(space, problem, space.nodes, penalty),
    );
    // A stiff strip over a sharp corner yields little to the penalty: raise it where a pass has not cut the gap fourfold.
    if (open > gap && open > 0.25 * before) penalty = Math.min(settings.mostPenalty, 4 * penalty);
    open = Math.max(open, sagged);
    if (open <= gap && tolerance <= residual) return 'converged';
    if (open <= gap) open = 0;
  }
  return 'contactOpen';
}
