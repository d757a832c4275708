import { growOutline } from '../../src/core/strip/obstacle.ts';
import { createStripSolver, type StripSolver, solveStrip } from '../../src/core/strip/solveStrip.ts';
import type { StripProblem } from '../../src/core/strip/stripProblem.ts';
import { stripSettings } from '../../src/core/strip/stripSettings.ts';
import type { StripSolution } from '../../src/core/strip/stripSolution.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';

/** Stiff enough that stretching changes no checked figure by more than a tenth of its tolerance. */
const INEXTENSIBLE = 1e7;

export const solverWith = (segments: number): StripSolver => createStripSolver({ ...stripSettings, segments });

function solved(solver: StripSolver, problem: StripProblem, guess: number[]): StripSolution {
  const solution = solveStrip(solver, problem, guess);
  if (solution.status !== 'converged') {
    throw new Error(`${solution.status} ${solution.message} residual ${solution.residual} gap ${solution.contactGap}`);
  }
  return solution;
}

/** Largest coordinate (0: x, 1: y) along the strip times `sign`, by a parabola through the highest node and its neighbours. */
function peak({ nodes }: StripSolution, coordinate: 0 | 1, sign: 1 | -1): number {
  const at = (k: number) => sign * nth(nodes, 2 * k + coordinate);
  let best = 1;
  for (let k = 2; k < nodes.length / 2 - 1; k++) if (at(k) > at(best)) best = k;
  const rise = 0.5 * (at(best + 1) - at(best - 1));
  const bend = at(best + 1) - 2 * at(best) + at(best - 1);
  return bend < 0 ? at(best) - (rise * rise) / (2 * bend) : at(best);
}

/** Clamped at the origin along +x, length 1, with a dead load of (fx, fy) at the free end. */
export function cantilever(solver: StripSolver, fx: number, fy: number) {
  const problem: StripProblem = {
    length: 1,
    stretchStiffness: INEXTENSIBLE,
    start: { kind: 'clamp', x: 0, y: 0, angle: 0 },
    end: { kind: 'free' },
    loads: [{ at: 1, fx, fy }],
  };
  const { nodes } = solved(solver, problem, [0, 0, 1, 0]);
  return { x: nth(nodes, -2), y: nth(nodes, -1) };
}

/** Both ends clamped along +x, brought nearer by `shortening`, length 1. */
export function clampedClamped(solver: StripSolver, shortening: number) {
  const problem: StripProblem = {
    length: 1,
    stretchStiffness: INEXTENSIBLE,
    start: { kind: 'clamp', x: 0, y: 0, angle: 0 },
    end: { kind: 'clamp', x: 1 - shortening, y: 0, angle: 0 },
  };
  const guess: number[] = [];
  const height = (2 / Math.PI) * Math.sqrt(shortening);
  for (let i = 0; i <= 40; i++) {
    guess.push((i / 40) * (1 - shortening), 0.5 * height * (1 - Math.cos((Math.PI * i) / 20)));
  }
  const solution = solved(solver, problem, guess);
  return { height: peak(solution, 1, 1), force: Math.abs(solution.start.fx) };
}

/** Both ends clamped parallel, 1 apart, so that the strip makes a U of the given length. */
export function uBend(solver: StripSolver, length: number) {
  const problem: StripProblem = {
    length,
    stretchStiffness: INEXTENSIBLE,
    start: { kind: 'clamp', x: 0, y: 0.5, angle: Math.PI },
    end: { kind: 'clamp', x: 0, y: -0.5, angle: 0 },
  };
  const leg = Math.max(0, (length - Math.PI / 2) / 2);
  const guess = [0, 0.5];
  for (let i = 0; i <= 20; i++) {
    guess.push(-leg - 0.5 * Math.sin((Math.PI * i) / 20), 0.5 * Math.cos((Math.PI * i) / 20));
  }
  guess.push(0, -0.5);
  const solution = solved(solver, problem, guess);
  return { force: Math.abs(solution.start.fy), protrusion: peak(solution, 0, -1), energy: solution.energy };
}

/** A block 1 thick with sharp corners at x = 0; the strip is clamped to its faces at x = a. */
export function blockWrapProblem(a: number, slack: number, stretch = INEXTENSIBLE): StripProblem {
  return {
    length: 2 * a + 1 + slack,
    stretchStiffness: stretch,
    start: { kind: 'clamp', x: a, y: 0.5, angle: Math.PI },
    end: { kind: 'clamp', x: a, y: -0.5, angle: 0 },
    obstacle: growOutline([a + 1, 0.5, 0, 0.5, 0, -0.5, a + 1, -0.5], false, 0, stripSettings.facetTurn),
  };
}

/** An ellipse off the spine, and straight legs: outside the block, and about the right length. */
export function blockWrapGuess(a: number, slack: number): number[] {
  const guess = [a, 0.5];
  const bow = 0.05 + Math.sqrt(0.3 * slack);
  for (let i = 0; i <= 20; i++) {
    guess.push(-bow * Math.sin((Math.PI * i) / 20), 0.52 * Math.cos((Math.PI * i) / 20));
  }
  guess.push(a, -0.5);
  return guess;
}

export function blockWrap(solver: StripSolver, a: number, slack: number) {
  const solution = solved(solver, blockWrapProblem(a, slack), blockWrapGuess(a, slack));
  const corner = solution.contacts.find((c) => c.kind === 'vertex' && c.y > 0);
  return {
    bow: peak(solution, 0, -1),
    bulge: peak(solution, 1, 1) - 0.5,
    cornerForce: corner ? Math.hypot(corner.fx, corner.fy) : 0,
    energy: solution.energy,
    solution,
  };
}

/**
 * A strip drawn round a sharp corner at the origin through `angle` by a tension; lambda = sqrt(EI/T) = 1.
 *
 * Far off, the strip is straight along the tension. With no moment there, the moment at the corner is the tension times the
 * corner's distance from that line, so the line passes (curvature) lambda^2 from the corner, which places the clamp.
 *
 * @returns curvature at the corner, extrapolated from both sides
 */
export function tautOverCorner(solver: StripSolver, angle: number) {
  const offset = 2 * Math.sin(angle / 4);
  const reach = 7;
  const half = angle / 2;
  // The strip comes in along -half, turns left by `angle` round the corner, and leaves along +half.
  const x = -reach * Math.cos(half) - offset * Math.sin(half);
  const y = reach * Math.sin(half) - offset * Math.cos(half);
  const far = 40;
  const problem: StripProblem = {
    length: 2 * reach,
    stretchStiffness: INEXTENSIBLE,
    start: { kind: 'clamp', x, y, angle: -half },
    end: { kind: 'free' },
    loads: [{ at: 1, fx: Math.cos(half), fy: Math.sin(half) }],
    obstacle: growOutline(
      [
        -far * Math.sin(angle / 8),
        far * Math.cos(angle / 8),
        0,
        0,
        far * Math.sin(angle / 8),
        far * Math.cos(angle / 8),
      ],
      false,
      0,
      stripSettings.facetTurn,
    ),
  };
  const solution = solved(solver, problem, [x, y, 0, -offset, -x, y]);
  const corner = defined(solution.contacts.find((c) => c.kind === 'vertex'));
  const curvature = (k: number) => {
    const n = solution.nodes;
    const [ax, ay] = [nth(n, 2 * k) - nth(n, 2 * k - 2), nth(n, 2 * k + 1) - nth(n, 2 * k - 1)];
    const [bx, by] = [nth(n, 2 * k + 2) - nth(n, 2 * k), nth(n, 2 * k + 3) - nth(n, 2 * k + 1)];
    return Math.atan2(ax * by - ay * bx, ax * bx + ay * by) / solution.spacing;
  };
  const i = Math.floor(corner.place);
  const u = corner.place - i;
  // Parabola through three nodes clear of the one whose cell holds the kink.
  const beyond = (side: 1 | -1, first: number, d: number) =>
    curvature(first) * 0.5 * (1 + d) * (2 + d) -
    curvature(first + side) * d * (2 + d) +
    curvature(first + 2 * side) * 0.5 * d * (1 + d);
  const left = beyond(-1, i - 1, 1 + u);
  const right = beyond(1, i + 2, 2 - u);
  return (left + right) / 2;
}
