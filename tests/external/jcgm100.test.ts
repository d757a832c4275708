import { describe, expect, test } from 'vitest';
import { budgetOf, type Model, propagate } from '../../src/core/doubt/propagate.ts';
import { runTrials, summary } from '../../src/core/doubt/trials.ts';
import { covarianceOf, type Uncertain } from '../../src/core/doubt/uncertain.ts';
import { nth } from '../nth.ts';

/**
 * JCGM 100:2008, H.1: end gauge calibrated against a standard, lengths in nm, temperatures in degrees Celsius. Inputs, length and
 * combined uncertainty agree in three public transcriptions of the annex. Two of them have the components of table H.1; the last
 * is 16.6 in one and 16.7 in the other, which starts from the rounded 0.029. The 34 nm of H.1.7 are from memory, with their
 * derivation.
 */
const even = (value: number, halfWidth: number): Uncertain => ({
  value,
  u: halfWidth / Math.sqrt(3),
  distribution: 'even',
});
const INPUTS: Uncertain[] = [
  { value: 50_000_623, u: 25, distribution: 'normal' }, // length of the standard
  { value: 215, u: 9.7, distribution: 'normal' }, // difference measured
  even(11.5e-6, 2e-6), // expansion of the standard
  { value: -0.1, u: 0.41, distribution: 'normal' }, // temperature over 20
  even(0, 1e-6), // difference of expansions
  even(0, 0.05), // difference of temperatures
];

/** Equation H.3: l = lS + d - lS (dAlpha theta + alphaS dTheta). */
const length: Model = ([standard = 0, d = 0, alpha = 0, theta = 0, dAlpha = 0, dTheta = 0]) => [
  standard + d - standard * (dAlpha * theta + alpha * dTheta),
];

describe('the end gauge of JCGM 100, H.1', () => {
  const { values, sensitivities, u } = propagate(length, INPUTS);
  const parts = nth(sensitivities, 0).map((c, i) => Math.abs(c) * nth(INPUTS, i).u);

  test('has the length 50 000 838 nm and the combined standard uncertainty 32 nm', () => {
    expect(Math.round(nth(values, 0))).toBe(50_000_838);
    expect(Math.round(nth(u, 0))).toBe(32);
  });

  test('has the uncertainty components of table H.1', () => {
    const printed = [25, 9.7, 0, 0, 2.9, 16.6];
    expect(parts.map((part, i) => Number(part.toFixed(i === 0 ? 0 : 1)))).toEqual(printed);
  });

  test('has the sensitivities of table H.1', () => {
    // 1, 1, 0, 0, -lS theta and -lS alphaS.
    const [cStandard, cd, cAlpha, cTheta, cDAlpha, cDTheta] = nth(sensitivities, 0);
    expect([cStandard, cd].map((c) => Number(c?.toFixed(6)))).toEqual([1, 1]);
    expect(Math.abs(cAlpha ?? Number.NaN) * nth(INPUTS, 2).u).toBeLessThan(1e-6);
    expect(Math.abs(cTheta ?? Number.NaN)).toBeLessThan(1e-6);
    expect((cDAlpha ?? 0) / (50_000_623 * 0.1)).toBeCloseTo(1, 6);
    expect((cDTheta ?? 0) / (-50_000_623 * 11.5e-6)).toBeCloseTo(1, 6);
  });

  test('has the squares of its components as budget', () => {
    const shares = budgetOf(nth(sensitivities, 0), covarianceOf(INPUTS));
    for (const [i, share] of shares.entries()) expect(share).toBeCloseTo((nth(parts, i) / nth(u, 0)) ** 2, 9);
  });

  test('has 34 nm with the terms of second order, as H.1.7 says, by trials', () => {
    const [lengths = []] = runTrials(length, INPUTS, [], 200_000, 1);
    const trials = summary(lengths);
    expect(Math.round(trials.u)).toBe(34);
    // The products of independent inputs add lS u(dAlpha) u(theta) and lS u(alphaS) u(dTheta). Four standard errors of u.
    const added = [nth(INPUTS, 4).u * nth(INPUTS, 3).u, nth(INPUTS, 2).u * nth(INPUTS, 5).u].map(
      (product) => 50_000_623 * product,
    );
    expect(Math.abs(trials.u - Math.hypot(nth(u, 0), ...added))).toBeLessThan((4 * 34) / Math.sqrt(2 * 200_000));
  });
});
