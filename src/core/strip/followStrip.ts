import { type StripSolver, solveStrip } from './solveStrip.ts';
import type { StripProblem } from './stripProblem.ts';
import type { StripSolution } from './stripSolution.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

/** First, largest and least step along the way from one problem to the other. */
const STEP = { first: 1 / 32, most: 1 / 8, least: 1 / 1024 };

/** Factors on the step after one that converged and one that did not. */
const [LONGER, SHORTER] = [2, 1 / 4];

/** Most Newton iterations of a step, which a good one ends in a few tens of, and of the whole way. */
const MOST_ITERATIONS = { step: 150, way: 4000 };

/**
 * Solves a strip by way of others, from one that is easily solved: continuation in whatever changes between them.
 *
 * Each begins from the shape before, grown about the middle of its ends by as much as the strip is longer, since a strip laid
 * too short would first have to buckle. A step that fails is shortened.
 * @param problemAt the problem at a share of the way, 0 to 1: same obstacle, same kinds of ends
 * @param guess for the problem at 0, as for solveStrip
 * @returns the solution at 1, or the failure that no step could pass; iterations of all
 */
export function followStrip(
  solver: StripSolver,
  problemAt: (share: number) => StripProblem,
  guess: ArrayLike<number>,
): StripSolution {
  const space = solver.levels.at(-1)!;
  const brisk = { ...solver, settings: { ...solver.settings, maxIterations: MOST_ITERATIONS.step } };
  let here = problemAt(0);
  let solution = solveStrip(solver, here, guess);
  if (solution.status !== 'converged') return solution;
  let { iterations } = solution;
  let kept = keep(space);
  let share = 0;
  let step = STEP.first;
  while (share < 1 && step >= STEP.least && iterations < MOST_ITERATIONS.way) {
    const next = Math.min(1, share + step);
    const problem = problemAt(next);
    grow(space, problem.length / here.length);
    solution = solveStrip(brisk, problem);
    iterations += solution.iterations;
    if (solution.status === 'converged') {
      here = problem;
      share = next;
      step = Math.min(STEP.most, LONGER * step);
      kept = keep(space);
    } else {
      step *= SHORTER;
      restore(space, kept);
    }
  }
  const isGivenUp = solution.status === 'converged' && share < 1;
  return { ...solution, status: isGivenUp ? 'iterationCap' : solution.status, iterations };
}

const STATE = ['nodes', 'nodeForce', 'vertexForce', 'vertexSag', 'endSag', 'floorForce', 'stopForce'] as const;

const keep = (space: StripWorkspace): Float64Array[] => STATE.map((name) => space[name].slice());

function restore(space: StripWorkspace, kept: readonly Float64Array[]): void {
  STATE.forEach((name, i) => {
    space[name].set(kept[i]!);
  });
  space.solved = true;
}

/** Grows a shape about the middle of its ends. */
function grow({ nodes }: StripWorkspace, factor: number): void {
  const last = nodes.length - 2;
  for (let c = 0; c < 2; c++) {
    const middle = (nodes[c]! + nodes[last + c]!) / 2;
    for (let i = c; i < nodes.length; i += 2) nodes[i] = middle + factor * (nodes[i]! - middle);
  }
}
