import { describe, expect, test } from 'vitest';
import { type Model, propagate } from '../../src/core/doubt/propagate.ts';
import { runTrials, summary, type TrialSummary } from '../../src/core/doubt/trials.ts';
import type { Uncertain } from '../../src/core/doubt/uncertain.ts';
import { normalDistribution } from '../../src/core/math/normal.ts';
import { nth } from '../nth.ts';

/**
 * JCGM 101:2008, clause 9, by a public transcription of its examples: inputs of 9.2 and table 5, u 2.00 with 3.92 and 3.88, 10.15
 * with 19.9 and 17.0, and table 6 with u 0.0539 and 0.0754. Coverage intervals of table 6 are from memory. Each value has a
 * derivation beside it that does not depend on the text. A numerical tolerance delta is that of 7.9.2: half a unit of the last
 * digit of u.
 */
const DRAWS = 200_000;
const trialsOf = (model: Model, inputs: readonly Uncertain[]): TrialSummary =>
  summary(nth(runTrials(model, inputs, [], DRAWS, 1), 0));
const expectWithin = (delta: number, got: readonly number[], right: readonly number[]): void => {
  for (const [i, value] of right.entries()) expect(Math.abs(nth(got, i) - value)).toBeLessThan(delta);
};

const input = (distribution: Uncertain['distribution'], u: number): Uncertain => ({ value: 0, u, distribution });
const sum: Model = (x) => [x.reduce((a, b) => a + b, 0)];

describe('the additive model of 9.2', () => {
  test('9.2.2: four normal inputs give u 2.0 and +-3.92, to the second decimal with trials within delta 0.05', () => {
    const inputs = Array.from({ length: 4 }, () => input('normal', 1));
    const { mean, u, symmetric, shortest } = trialsOf(sum, inputs);
    expect(nth(propagate(sum, inputs).u, 0)).toBeCloseTo(2, 9);
    expectWithin(0.05, [mean, u, ...symmetric], [0, 2, -3.92, 3.92]);
    // The shortest interval of a flat-topped count of trials moves more than the symmetric one.
    expectWithin(0.05, [shortest[1] - shortest[0]], [7.84]);
  });

  test('9.2.3: four even inputs of one width give +-3.88 where first order gives +-3.92', () => {
    const { mean, u, symmetric, shortest } = trialsOf(
      sum,
      Array.from({ length: 4 }, () => input('even', 1)),
    );
    // The fourth power law of the tail of such a sum: +-2 sqrt 3 (2 - (3/5)^(1/4)) = 3.879.
    const exact = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25);
    expect(Number(exact.toFixed(2))).toBe(3.88);
    expectWithin(0.05, [mean, u, ...symmetric], [0, 2, -3.88, 3.88]);
    // Standard error of a quantile: sqrt(p (1 - p) / n) / density = sqrt(0.025 0.975 / n) / 0.056.
    const error = Math.sqrt((0.025 * 0.975) / DRAWS) / 0.056;
    expectWithin(4 * error, symmetric, [-exact, exact]);
    expectWithin(0.05, [shortest[1] - shortest[0]], [2 * exact]);
    expect(symmetric[1]).toBeLessThan(1.959964 * 2 - 4 * error);
  });

  test('9.2.4: with one of ten times the width they give u 10.1 and +-17.0 where first order gives +-19.9', () => {
    const inputs = [...Array.from({ length: 3 }, () => input('even', 1)), input('even', 10)];
    const { mean, u, symmetric } = trialsOf(sum, inputs);
    const firstOrder = nth(propagate(sum, inputs).u, 0);
    expect(firstOrder).toBeCloseTo(Math.sqrt(103), 9);
    expect(Number((1.959964 * firstOrder).toFixed(1))).toBe(19.9);
    expectWithin(0.5, [mean, u, ...symmetric], [0, 10.1, -17.0, 17.0]);
    // With a = 10 sqrt 3 the half width of the wide one and S the sum of the others, P(Y > y) = E[max(0, a - y + S)] / 2 a. For a
    // sum of three even ones the mean is 2 sqrt 3 (x^4 - 3 (x - 1)^4) / 24, x = 3/2 + (a - y) / 2 sqrt 3 from 1 to 2.
    const a = 10 * Math.sqrt(3);
    const exact = 17.015814;
    const x = 1.5 + (a - exact) / (2 * Math.sqrt(3));
    expect((2 * Math.sqrt(3) * (x ** 4 - 3 * (x - 1) ** 4)) / 24 / (2 * a)).toBeCloseTo(0.025, 6);
    // Four standard errors of the quantile, where the density is 0.0166.
    expectWithin((4 * Math.sqrt((0.025 * 0.975) / DRAWS)) / 0.0166, symmetric, [-exact, exact]);
  });
});

describe('the mass calibration of 9.3', () => {
  // Masses in mg, densities in kg/m3; equation 33: (mR + dm) (1 + (rhoA - 1.2) (1 / rhoW - 1 / rhoR)) - 100 000.
  const inputs: Uncertain[] = [
    { value: 100_000, u: 0.05, distribution: 'normal' },
    { value: 1.234, u: 0.02, distribution: 'normal' },
    { value: 1.2, u: 0.1 / Math.sqrt(3), distribution: 'even' },
    { value: 8000, u: 1000 / Math.sqrt(3), distribution: 'even' },
    { value: 8000, u: 50 / Math.sqrt(3), distribution: 'even' },
  ];
  const excess: Model = ([reference = 0, dm = 0, air = 0, weight = 0, other = 0]) => [
    (reference + dm) * (1 + (air - 1.2) * (1 / weight - 1 / other)) - 100_000,
  ];

  test('gives u 0.054 mg by first order, which misses the buoyancy', () => {
    const { values, u, curvature } = propagate(excess, inputs);
    expect(Number(nth(values, 0).toFixed(3))).toBe(1.234);
    expect(Number(nth(u, 0).toFixed(4))).toBe(0.0539);
    // No input bends the model by itself: what is missing is a product of two, which only trials show.
    for (const bend of nth(curvature, 0)) expect(Math.abs(bend)).toBeLessThan(1e-6);
  });

  test('gives 1.234 mg, u 0.075 mg and [1.084, 1.384] mg by trials, within delta 0.005', () => {
    const { mean, u, shortest, symmetric } = trialsOf(excess, inputs);
    expectWithin(0.0005, [u], [0.0754]);
    expectWithin(0.005, [mean, ...symmetric, shortest[1] - shortest[0]], [1.234, 1.084, 1.384, 0.3]);
  });

  test('has 2.5 % beyond 1.0845 and 1.3835 mg, by a sum over the densities', () => {
    const steps = 30;
    const middles = (a: number, b: number): number[] =>
      Array.from({ length: steps }, (_, i) => a + ((b - a) * (i + 0.5)) / steps);
    // Given the three densities the excess is normal about 1.234 plus the buoyancy.
    const beyond = (excess: number): number => {
      let sum = 0;
      for (const air of middles(-0.1, 0.1))
        for (const weight of middles(7000, 9000))
          for (const other of middles(7950, 8050)) {
            const buoyancy = 100_001.234 * air * (1 / weight - 1 / other);
            sum += normalDistribution((1.234 + buoyancy - excess) / Math.hypot(0.05, 0.02));
          }
      return sum / steps ** 3;
    };
    const exact = [1.0845, 1.3835];
    expect(exact.map(beyond).map((share) => Number(share.toFixed(3)))).toEqual([0.975, 0.025]);
    // Four standard errors of the quantile, where the density is 0.74.
    expectWithin((4 * Math.sqrt((0.025 * 0.975) / DRAWS)) / 0.74, trialsOf(excess, inputs).symmetric, exact);
  });

  test('has the variance of its parts, of which the third is a product of independent factors', () => {
    // E[(rhoA - 1.2)^2] E[(1 / rhoW - 1 / rhoR)^2], with E 1/rho = ln(b / a) / (b - a) and E 1/rho^2 = 1 / (a b) over a to b.
    const mean = (a: number, b: number): number => Math.log(b / a) / (b - a);
    const square = 1 / (7000 * 9000) - 2 * mean(7000, 9000) * mean(7950, 8050) + 1 / (7950 * 8050);
    const right = Math.sqrt(0.05 ** 2 + 0.02 ** 2 + 100_001.234 ** 2 * (0.1 ** 2 / 3) * square);
    expect(Number(right.toFixed(4))).toBe(0.0755);
    expect(Math.abs(trialsOf(excess, inputs).u - right)).toBeLessThan((4 * right) / Math.sqrt(2 * DRAWS));
  });
});
