import { describe, expect, it } from 'vitest';
import { createStripSolver, solveStrip } from '../../../src/core/strip/solveStrip.ts';
import { faultIn, type StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { nth } from '../../nth.ts';

const solver = createStripSolver();

/** A strip clamped level at both ends, sagging under a load in the middle, over a floor `depth` below the clamps. */
const loaded = (force: number, depth: number | null, turn = 0): StripProblem => {
  const at = (x: number, y: number) => ({
    x: x * Math.cos(turn) - y * Math.sin(turn),
    y: x * Math.sin(turn) + y * Math.cos(turn),
  });
  return {
    length: 1,
    stretchStiffness: 1e5,
    start: { kind: 'clamp', ...at(0, 0), angle: turn },
    end: { kind: 'slide', ...at(1, 0), angle: turn },
    loads: [{ at: 0.5, fx: force * Math.sin(turn), fy: -force * Math.cos(turn) }],
    ...(depth === null ? {} : { floor: { ...at(0.3, -depth), angle: turn } }),
  };
};
const guess = (turn: number): number[] => [0, 0, Math.cos(turn), Math.sin(turn)];

function lowest(problem: StripProblem, turn = 0): number {
  const { status, nodes } = solveStrip(solver, problem, guess(turn));
  expect(status).toBe('converged');
  return Math.min(
    ...Array.from(
      { length: nodes.length / 2 },
      (_, k) => nth(nodes, 2 * k + 1) * Math.cos(turn) - nth(nodes, 2 * k) * Math.sin(turn),
    ),
  );
}

describe('a floor under a strip', () => {
  it('changes nothing where the strip does not reach it', () => {
    // A beam clamped at both ends sags by P L^3 / (192 EI) under a load in the middle (handbooks of beams).
    expect(lowest(loaded(2, null))).toBeCloseTo(-2 / 192, 4);
    expect(lowest(loaded(2, 0.02))).toBeCloseTo(lowest(loaded(2, null)), 9);
  });

  it('carries what would go through it, level or aslant', () => {
    for (const turn of [0, 0.7, -2]) expect(lowest(loaded(20, 0.05, turn), turn)).toBeCloseTo(-0.05, 5);
    expect(lowest(loaded(20, null))).toBeLessThan(-0.08);
  });

  it('holds a strip between itself and an obstacle', () => {
    const board = {
      x: Float64Array.of(0.2, 0.8),
      y: Float64Array.of(0.03, 0.03),
      closed: false,
      source: Int32Array.of(0, 1),
    };
    const problem = {
      ...loaded(20, 0.01),
      obstacle: board,
      restAngle: Array.from({ length: 101 }, (_, i) => Math.sin((4 * Math.PI * i) / 100)),
    };
    const { status, nodes } = solveStrip(solver, problem, guess(0));
    expect(status).toBe('converged');
    const ys = Array.from({ length: nodes.length / 2 }, (_, k) => nth(nodes, 2 * k + 1));
    expect(Math.min(...ys)).toBeGreaterThan(-0.01 - 1e-5);
    expect(Math.max(...ys)).toBeLessThan(0.03 + 1e-3);
    expect(lowest({ ...problem, floor: undefined })).toBeLessThan(-0.02);
  });

  it('must be at a finite place', () => {
    expect(faultIn({ ...loaded(1, 0.1), floor: { x: 0, y: Number.NaN, angle: 0 } }, 200)).toMatch(/^floor: /);
  });
});
