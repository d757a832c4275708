/**
 * Released boards: how far a cover springs open, and the force that holds the book shut.
 *
 *   const { rests } = releasedOpening({
 *     sectionAt: (opening) => ({ ...input, outline, rate, crease: { angles, set: 0.8 } }),
 *     closingMoment: (opening) => boardWeight_N * (boardWidth / 2) * Math.cos(opening),
 *     most: Math.PI, lever: boardWidth, slip: 0.5,
 *   }, [{ stiffness: 1 / 3, friction: 0.4 }, { stiffness: 1, friction: 0 }], solver);
 *
 * The shape of leather between posed boards does not depend on its stiffness, and its moment is in proportion to it. So one
 * scan of the moment over the opening answers for every stiffness. Never throws: see `status`.
 */

import type { StripSolver } from '../../strip/solveStrip.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import type { SectionInput } from './sectionInput.ts';
import { solveSection } from './solveSection.ts';

export interface ReleasedInput {
  /** The cover at an opening, 0 (closed) to `most`, rad, with the outline's `rate`. */
  readonly sectionAt: (opening: number) => SectionInput;
  /** Moment of everything but the leather at an opening, N mm, positive if it closes: the weight of what swings. */
  readonly closingMoment: (opening: number) => number;
  /** Largest opening the book allows, rad, above 0. */
  readonly most: number;
  /** From hinge to fore-edge, mm, above 0. */
  readonly lever: number;
  /** How far the leather slides on the book for one radian of opening, mm: what friction works over. */
  readonly slip: number;
}

/** Leather that the opening is asked for. */
export interface ReleasedLeather {
  /** Stiffness as a multiple of the input's modulus, above 0. */
  readonly stiffness: number;
  /** Coefficient of friction on the book, 0 up. */
  readonly friction: number;
}

export interface Rest {
  /**
   * Opening at rest, rad: the first at which the leather no longer overcomes the closing moment; 0 if the book stays shut,
   * `most` if the leather overcomes it at every opening.
   */
  readonly opening: number;
  /** Force at the fore-edge that keeps the book shut, N; 0 if it stays shut by itself. */
  readonly force: number;
  /** False where sections did not converge: `opening` is then how far the leather was followed, and it rests there or beyond. */
  readonly isFound: boolean;
}

export interface ReleasedOpening {
  /** `converged`, or how the section ended that kept a rest from being found. */
  readonly status: StripStatus;
  readonly message: string;
  /** For each leather asked for, in that order; empty where the closed cover did not converge. */
  readonly rests: readonly Rest[];
  /** Moment of the leather on the closed book at the input's own modulus, without friction, N mm, positive if it opens. */
  readonly closedMoment: number;
  /** Sections solved. */
  readonly solves: number;
}

/** Largest step of the scan, as a share of the way, and smallest, rad. A smaller dip below rest would not be felt. */
const LARGEST = 1 / 12;
const SMALLEST = 0.02;

/** The scan steps as if the moment could fall this many times as fast as it has so far. */
const CAUTION = 1.5;

/** Share of a step that is tried where the whole one does not converge. */
const RETRY = 0.6;

/** Share of the steepest fall that is kept from one step to the next. */
const MEMORY = 0.7;

/**
 * Finds the opening at which boards come to rest: leather moment = closing moment, for several leathers at once.
 *
 * What is left over, F = stiffness (M - friction slip press) - closing moment, is followed upward from the closed book, where
 * it must be positive for the book to open at all. With L the steepest fall of F so far times `CAUTION`, F cannot reach 0
 * within F/L, which is the next step (Shubert's step for a Lipschitz function), so that the steps shrink toward a
 * resting place and also toward one that F only grazes. The root itself is interpolated over the last, small step.
 *
 * B. O. Shubert, A sequential method seeking the global maximum of a function, SIAM J. Numer. Anal. 9 (1972) 379. From memory.
 */
export function releasedOpening(
  input: ReleasedInput,
  leathers: readonly ReleasedLeather[],
  solver: StripSolver,
): ReleasedOpening {
  const { sectionAt, closingMoment, most, lever, slip } = input;
  let solves = 0;
  const solve = (opening: number) => {
    solves++;
    const section = solveSection(sectionAt(opening), solver);
    const closing = closingMoment(opening);
    const left = leathers.map(
      ({ stiffness, friction }) => stiffness * (section.moment - friction * slip * section.press) - closing,
    );
    return { ...section, opening, left };
  };
  const closed = solve(0);
  if (closed.status !== 'converged')
    return { status: closed.status, message: closed.message, rests: [], closedMoment: 0, solves };

  const openings = closed.left.map((left) => (left > 0 ? most : 0));
  let active = leathers.map((_, i) => i).filter((i) => closed.left[i]! > 0);
  const fall = leathers.map(() => 0);
  let here = closed;
  let lost: typeof closed | null = null;
  let step = SMALLEST;
  while (active.length > 0 && here.opening < most) {
    let next = solve(Math.min(most, here.opening + step));
    // A contact that is just being lost can keep one opening from converging, and not its neighbours.
    if (next.status !== 'converged') next = solve(here.opening + RETRY * step);
    if (next.status !== 'converged') {
      lost = next;
      for (const i of active) openings[i] = here.opening;
      break;
    }
    const run = next.opening - here.opening;
    for (const i of active) {
      const drop = here.left[i]! - next.left[i]!;
      fall[i] = Math.max(MEMORY * fall[i]!, drop / run);
      if (next.left[i]! <= 0) openings[i] = here.opening + (run * here.left[i]!) / drop;
    }
    active = active.filter((i) => next.left[i]! > 0);
    step = Math.min(most * LARGEST, ...active.map((i) => next.left[i]! / (CAUTION * fall[i]!)));
    step = Math.max(SMALLEST, step);
    here = next;
  }
  return {
    status: lost?.status ?? 'converged',
    message: lost?.message ?? '',
    rests: openings.map((opening, i) => ({
      opening,
      force: Math.max(0, closed.left[i]!) / lever,
      isFound: !(lost && active.includes(i)),
    })),
    closedMoment: closed.moment,
    solves,
  };
}
