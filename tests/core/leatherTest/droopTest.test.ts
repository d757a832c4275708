import { describe, expect, test } from 'vitest';
import { type DroopFigures, droopTest } from '../../../src/core/leatherTest/droopTest.ts';
import { droopReadingSchema } from '../../../src/core/leatherTest/testSchema.ts';
import { hangingStrip } from './hangingStrip.ts';

type Reading = Parameters<typeof droopTest>[0];

/** A strip of 60 MPa and 950 kg/m3, 30 x 2 mm, as it hangs over by `overhang_mm`. */
function hanging(overhang_mm: number): Reading {
  const [thickness_mm, width_mm, length_mm] = [2, 30, 400] as const;
  const weight_g = 950e-6 * thickness_mm * width_mm * length_mm;
  const line = (weight_g * 9.80665e-3) / length_mm;
  const rigidity = (60 * width_mm * thickness_mm ** 3) / 12;
  const droop_mm = overhang_mm * hangingStrip((line * overhang_mm ** 3) / rigidity).droop;
  const errors = { error_mm: 1, callipers_mm: 0.1, scales_g: 0.5 };
  return droopReadingSchema.parse({ thickness_mm, width_mm, length_mm, weight_g, overhang_mm, droop_mm, ...errors });
}

const figures = (reading: Reading): DroopFigures => {
  const answer = droopTest(reading);
  if ('reason' in answer) throw new Error(answer.reason);
  return answer;
};

describe('a strip that hangs over an edge', () => {
  test.each([120, 150, 250, 350])('by %d mm gives back its stiffness and density', (overhang) => {
    const { modulus_MPa, density_kg_m3, rigidity_Nmm } = figures(hanging(overhang));
    expect(modulus_MPa.value / 60).toBeCloseTo(1, 4);
    expect(density_kg_m3.value).toBeCloseTo(950, 9);
    expect(rigidity_Nmm).toBeCloseTo((60 * 2 ** 3) / 12, 2);
  });

  test('needs 258 mm to droop by 41.5 degrees at 2 mm and 60 MPa, and bends half as far by itself', () => {
    const { bendingLength_mm } = figures(hanging(258));
    expect(bendingLength_mm).toBeCloseTo(129, 0);
  });

  /** How the stiffness moves with each reading by one standard uncertainty, all together. */
  const byMoving = (reading: Reading): number => {
    const u = { thickness_mm: reading.callipers_mm / 2, weight_g: reading.scales_g / 2 };
    const length = reading.error_mm / 2;
    const moves = { ...u, droop_mm: length, overhang_mm: length, length_mm: length, width_mm: length };
    const parts = Object.entries(moves).map(([key, by]) => {
      const at = (sign: number): number => {
        const value = Number(reading[key as keyof Reading]) + sign * by;
        return figures({ ...reading, [key]: value }).modulus_MPa.value;
      };
      return (at(1) - at(-1)) / 2;
    });
    return Math.hypot(...parts);
  };

  test.each([
    ['lengths alone are in doubt', { error_mm: 1, callipers_mm: 1e-6, scales_g: 1e-6 }],
    ['the weight alone is', { error_mm: 1e-6, callipers_mm: 1e-6, scales_g: 0.5 }],
    ['the thickness alone is', { error_mm: 1e-6, callipers_mm: 0.02, scales_g: 1e-6 }],
  ])('has the uncertainty of its readings moved one by one where %s', (_, errors) => {
    for (const overhang of [150, 250, 350]) {
      const reading = { ...hanging(overhang), ...(errors as object) } as Reading;
      expect(figures(reading).modulus_MPa.u / byMoving(reading)).toBeCloseTo(1, 2);
    }
  });

  test('is known by its thickness worst: 2.5 % of it are 7.5 % of the stiffness, and of the density 2.5 %', () => {
    const { modulus_MPa, density_kg_m3 } = figures({ ...hanging(250), error_mm: 1e-6, scales_g: 1e-6 } as Reading);
    expect(modulus_MPa.u / modulus_MPa.value).toBeCloseTo(0.075, 6);
    expect(density_kg_m3.u / density_kg_m3.value).toBeCloseTo(0.025, 6);
  });

  test('stretches the grain at the edge by half its thickness times the curvature there', () => {
    const { strain, bendingLength_mm } = figures(hanging(250));
    const { curvature } = hangingStrip((250 / bendingLength_mm) ** 3);
    expect(strain / ((curvature / 250) * (2 / 2))).toBeCloseTo(1, 3);
    expect(strain).toBeLessThan(0.02);
    // Twice as thick with the same shape: twice the stretch.
    expect(figures({ ...hanging(250), thickness_mm: 4 } as Reading).strain / strain).toBeCloseTo(2, 9);
  });

  test.each([
    ['longer than the strip', { overhang_mm: 410 }, /check both/],
    ['that hangs straight down', { droop_mm: 230 }, /let less/],
    ['below its edge by more than it hangs over', { droop_mm: 300 }, /let less/],
    ['too little to read', { droop_mm: 2.9 }, /let more/],
    ['too little for a worse rule', { droop_mm: 11, error_mm: 4 }, /let more/],
  ])('%s says why it tells nothing', (_, change, reason) => {
    const answer = droopTest({ ...hanging(250), ...(change as object) });
    expect('reason' in answer ? answer.reason : '').toMatch(reason);
  });

  test('may hang over whole, and droop by three times the error of reading', () => {
    expect(figures({ ...hanging(250), length_mm: 250 } as Reading).modulus_MPa.value).toBeGreaterThan(0);
    expect(figures({ ...hanging(250), droop_mm: 3 } as Reading).modulus_MPa.value).toBeGreaterThan(60);
  });
});
