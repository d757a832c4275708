/**
 * Released boards: how far a new cover springs open, and the force that holds the book shut.
 *
 *   const released = releasedOpening({
 *     sectionAt: (opening) => ({ ...input, outline: outlineAt(opening), crease: { angles: closed.angles, set: 0.8 } }),
 *     closingMoment: (opening) => boardWeight_N * (boardWidth / 2) * Math.cos(opening),
 *     most: Math.PI, lever: boardWidth,
 *   }, solver);
 *
 * The moment comes from the energy, so it holds for any way in which the outline follows the opening: one board, both, a
 * joint that gives way. Never throws: see `status`.
 */

import type { StripSolver } from '../../strip/solveStrip.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import type { SectionInput } from './sectionInput.ts';
import { type StripSection, solveSection } from './solveSection.ts';

export interface ReleasedInput {
  /** The cover at an opening, 0 (closed) to `most`, rad. */
  readonly sectionAt: (opening: number) => SectionInput;
  /** Moment of everything but the leather at an opening, N mm, positive if it closes: the weight of what swings. */
  readonly closingMoment: (opening: number) => number;
  /** Largest opening the book allows, rad, above 0. */
  readonly most: number;
  /** From hinge to fore-edge, mm, above 0. */
  readonly lever: number;
}

export interface ReleasedOpening {
  /** `converged`, or how the first section that did not converge ended. */
  readonly status: StripStatus;
  readonly message: string;
  /**
   * Opening at rest, rad: the first at which the leather no longer overcomes the closing moment; 0 if the book stays shut,
   * `most` if the leather overcomes it at every opening.
   */
  readonly opening: number;
  /** Opening moment of the leather on the closed book, N mm. */
  readonly closedMoment: number;
  /** Force at the fore-edge that keeps the book shut, N; 0 if it stays shut by itself. */
  readonly closingForce: number;
  /** Sections solved. */
  readonly solves: number;
}

/** Openings tried before bisection: the moment changes gently between them. */
const STEPS = 16;

/** Opening step of the energy's difference quotient, rad: its square is small, and energies differ by far more than noise. */
const DIFFERENCE = 0.01;

/** Opening to which the resting place is found, rad: a twentieth of a degree. */
const OPENING_SETTLED = 1e-3;

/**
 * Finds the opening at which boards come to rest: leather moment -dE/d(opening) = closing moment.
 *
 * Central differences of the energy (forward and second order at the closed book, backward at `most`); the first change of
 * sign from 0 upward, found by bisection.
 */
export function releasedOpening(input: ReleasedInput, solver: StripSolver): ReleasedOpening {
  let failed: StripSection | null = null;
  let solves = 0;
  const energyAt = (opening: number): number => {
    if (failed) return 0;
    const section = solveSection(input.sectionAt(opening), solver);
    solves++;
    if (section.status !== 'converged') failed = section;
    return section.energy;
  };
  const leatherMoment = (opening: number): number => {
    const d = Math.min(DIFFERENCE, input.most / 4);
    const side = opening < d ? 1 : opening > input.most - d ? -1 : 0;
    if (side === 0) return (energyAt(opening - d) - energyAt(opening + d)) / (2 * d);
    const [near, middle, far] = [0, 1, 2].map((k) => energyAt(opening + side * k * d)) as [number, number, number];
    return (side * (3 * near - 4 * middle + far)) / (2 * d);
  };
  const spare = (opening: number): number => leatherMoment(opening) - input.closingMoment(opening);

  const closedMoment = leatherMoment(0);
  const held = closedMoment - input.closingMoment(0);
  let opening = 0;
  if (held > 0) {
    let low = 0;
    let high = input.most;
    for (let k = 1; k <= STEPS && !failed; k++) {
      high = (input.most * k) / STEPS;
      if (spare(high) <= 0) break;
      low = high;
    }
    while (high - low > OPENING_SETTLED && !failed) {
      const middle = (low + high) / 2;
      if (spare(middle) > 0) low = middle;
      else high = middle;
    }
    opening = high;
  }
  if (failed) {
    const { status, message } = failed as StripSection;
    return { status, message, opening: 0, closedMoment: 0, closingForce: 0, solves };
  }
  return {
    status: 'converged',
    message: '',
    opening,
    closedMoment,
    closingForce: Math.max(0, held) / input.lever,
    solves,
  };
}
