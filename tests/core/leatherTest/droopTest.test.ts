import { describe, expect, test } from 'vitest';
import { type DroopFigures, droopTest } from '../../../src/core/leatherTest/droopTest.ts';
import { droopReadingSchema } from '../../../src/core/leatherTest/testSchema.ts';
import { hangingStrip } from './hangingStrip.ts';

type Reading = Parameters<typeof droopTest>[0];

/** A strip of 60 MPa and 950 kg/m3, 30 x 2 mm, as it hangs over by `overhang_mm`. */
function hanging(overhang_mm: number): Reading {
  const [thickness_mm, width_mm, length_mm] = [2, 30, 400];
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

  test('has the uncertainty of readings moved one by one', () => {
    const reading = hanging(250);
    const at = figures(reading).modulus_MPa;
    const moved = (change: Partial<Record<keyof Reading, number>>): number => {
      const [up, down] = [1, -1].map((sign) => {
        const all = Object.entries(change).map(([key, u]) => [key, Number(reading[key as keyof Reading]) + sign * u]);
        return figures({ ...reading, ...Object.fromEntries(all) }).modulus_MPa.value;
      });
      return (Number(up) - Number(down)) / 2;
    };
    const parts = [
      moved({ droop_mm: 0.5 }),
      moved({ overhang_mm: 0.5 }),
      moved({ length_mm: 0.5 }),
      moved({ width_mm: 0.5 }),
      moved({ weight_g: 0.25 }),
      moved({ thickness_mm: 0.05 }),
    ];
    expect(at.u / Math.hypot(...parts)).toBeCloseTo(1, 1);
    expect(at.u / at.value).toBeGreaterThan(0.075);
  });

  test('stretches the grain at the edge by half its thickness times the curvature there', () => {
    const { strain, bendingLength_mm } = figures(hanging(250));
    const { curvature } = hangingStrip((250 / bendingLength_mm) ** 3);
    expect(strain / ((curvature / 250) * (2 / 2))).toBeCloseTo(1, 3);
    expect(strain).toBeLessThan(0.02);
  });

  test.each([
    ['longer than the strip', { overhang_mm: 410 }, /check both/],
    ['that hangs straight down', { droop_mm: 230 }, /let less/],
    ['below its edge by more than it hangs over', { droop_mm: 300 }, /let less/],
    ['too little to read', { droop_mm: 2.5 }, /let more/],
  ])('%s says why it tells nothing', (_, change, reason) => {
    const answer = droopTest({ ...hanging(250), ...(change as object) });
    expect('reason' in answer ? answer.reason : '').toMatch(reason);
  });
});
