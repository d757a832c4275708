import { describe, expect, it, test } from 'vitest';
import { followStrip } from '../../../src/core/strip/followStrip.ts';
import { createStripSolver, finerSolver, solveStrip } from '../../../src/core/strip/solveStrip.ts';
import type { StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { stripSettings } from '../../../src/core/strip/stripSettings.ts';
import { blockWrapGuess, blockWrapProblem } from '../../external/elasticaCases.ts';

const LEATHER = 3000;
const solver = createStripSolver({ ...stripSettings, segments: 100 });

/** A strip that leaves a book of thickness 1 along both boards, from clamps just before its back. */
const balloon = (length: number): StripProblem => ({
  length,
  stretchStiffness: LEATHER,
  start: { kind: 'clamp', x: 0.1, y: 0.5, angle: Math.PI },
  end: { kind: 'clamp', x: 0.1, y: -0.5, angle: 0 },
});
const RING = [0.1, 0.5, -0.4, 0.3, -0.6, 0, -0.4, -0.3, 0.1, -0.5];

describe('a strip followed from one problem to another', () => {
  it('ends in the shape that is found directly where one is', () => {
    const way = followStrip(
      solver,
      (share) => blockWrapProblem(0.5, 0.05 + 0.3 * share, LEATHER),
      blockWrapGuess(0.5, 0.05),
    );
    const direct = solveStrip(solver, blockWrapProblem(0.5, 0.35, LEATHER), blockWrapGuess(0.5, 0.35));
    expect([way.status, direct.status]).toEqual(['converged', 'converged']);
    expect(way.energy).toBeCloseTo(direct.energy, 6);
  });

  it('makes a balloon of any length, whose energy falls in proportion to its length once that hides the book', () => {
    const energies = [200, 400, 800].map((length) => {
      const way = followStrip(solver, (share) => balloon(2 * (length / 2) ** share), RING);
      expect(way.status).toBe('converged');
      return way.energy * length;
    });
    expect(energies[1]! / energies[0]!).toBeCloseTo(1, 1);
    expect(energies[2]! / energies[1]!).toBeCloseTo(1, 2);
  });

  it('says how the last step failed where none passes, and leaves the last shape to go on from', () => {
    const asked: number[] = [];
    const way = followStrip(
      solver,
      (share) => {
        asked.push(share);
        return balloon(share < 0.4 ? 2 + share : Number.NaN);
      },
      RING,
    );
    expect(Math.max(...asked.filter((share) => share < 0.4))).toBeGreaterThan(0.4 - 1 / 256);
    expect(way.status).toBe('badInput');
    expect(way.message).toContain('length');
    expect(solveStrip(solver, balloon(2.4)).status).toBe('converged');
  });

  it('does not set out from a problem that is not solved', () => {
    const way = followStrip(solver, (share) => balloon(share > 0 ? 2 : -1), RING);
    expect([way.status, way.iterations]).toEqual(['badInput', 0]);
  });
});

test('a finer solver has four times the segments and the same settings, is made once, and finds the same shape nearer', () => {
  const finer = finerSolver(solver);
  expect(finerSolver(solver)).toBe(finer);
  expect(finer.settings).toEqual({ ...solver.settings, segments: 400 });
  const problem = blockWrapProblem(0.5, 0.2, LEATHER);
  const energyOf = (each: typeof solver) => solveStrip(each, problem, blockWrapGuess(0.5, 0.2)).energy;
  const [coarse, fine, finest] = [solver, finer, finerSolver(finer)].map(energyOf);
  expect(Math.abs(fine! - finest!)).toBeLessThan(Math.abs(coarse! - finest!) / 8);
});
