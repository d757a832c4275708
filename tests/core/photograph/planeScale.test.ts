import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/core/math/vec3.ts';
import { gapBetween, planeScale, printByLengths } from '../../../src/core/photograph/planeScale.ts';
import { printScale } from '../../../src/core/photograph/printScale.ts';
import { draws, photographed, standpointsRound, type TrueScene } from './photographed.ts';

/** One page printed 0.4 % too small across and 0.6 % along, and points at a height over it. */
const scene = (points: readonly Vec3[], noise: number, seed: number): TrueScene => ({
  lens: { focal: 3300, centre: [2010, 1485], k1: 0.02, k2: -0.01 },
  standpoints: standpointsRound(2, 600, draws(seed)).slice(1),
  pages: [{ paper: 'A4', page: 0, placement: { at: [0, 0], angle: 0 }, across: 0.996, along: 0.994, height: () => 0 }],
  points,
  hides: () => false,
  ...{ width: 4000, height: 3000, focal: 3200, uMark: noise, uPoint: noise },
});

const seenIn = (points: readonly Vec3[], noise: number, seed = 3) => {
  const [photograph] = photographed(scene(points, noise, seed), draws(seed));
  const { points: seen, ...rest } = photograph!;
  return { photograph: { ...rest, points: [] }, pixels: seen.map((point) => point.seen) };
};

test('a ruler across the page and one along it tell the size of the print in both directions', () => {
  const ruler: Vec3[] = [
    [-75, 40, 1],
    [75, 40, 1],
    [30, -125, 1],
    [30, 125, 1],
  ];
  const { photograph, pixels } = seenIn(ruler, 0.2);
  const print = printByLengths(
    photograph,
    [
      { from: pixels[0]!, to: pixels[1]!, length: { value: 150, u: 0.1 } },
      { from: pixels[2]!, to: pixels[3]!, length: { value: 250, u: 0.1 } },
    ],
    { value: 1, u: 0.2 },
  );
  if ('ok' in print) throw new Error(print.code);
  const { across, along } = print;
  for (const [found, truth] of [
    [across, 0.996],
    [along, 0.994],
  ] as const) {
    expect(found.u).toBeLessThan(0.0025);
    expect(Math.abs(found.value - truth)).toBeLessThan(2.5 * found.u);
  }
});

test('without a known length the print stays in doubt, and without marks nothing is told', () => {
  const { photograph } = seenIn([], 0.2);
  const print = printByLengths(photograph, [], { value: 0, u: 1 });
  if ('ok' in print) throw new Error(print.code);
  expect(print.along.u).toBeGreaterThan(0.04);
  expect(printByLengths({ ...photograph, marks: [] }, [], { value: 0, u: 1 })).toEqual({ ok: false, code: 'noMarks' });
});

test('the gap from a board to the seam line is found with its sign, at any edge and from any side', () => {
  const readings = printScale('A4', { across: 0.996 * 190, along: 0.994 * 280 }, 0.1);
  for (const [seed, gap] of [
    [3, 1.5],
    [4, -0.8],
    [5, 0],
  ] as const) {
    const height = 24;
    const points: Vec3[] = [
      [50, -60, height],
      [50, 60, height],
      [50 + gap, -55, height],
      [50 + gap, 50, height],
    ];
    const { photograph, pixels } = seenIn(points, 0.2, seed);
    const found = gapBetween(photograph, readings, {
      edge: [pixels[0]!, pixels[1]!],
      line: [pixels[3]!, pixels[2]!],
      height: { value: height, u: 0.3 },
    });
    if ('ok' in found) throw new Error(found.code);
    expect(found.u).toBeLessThan(0.3);
    expect(Math.abs(found.value - gap)).toBeLessThan(2.5 * found.u);
  }
});

test('lengths far from the page are less sure than those near it', () => {
  const near = seenIn(
    [
      [-90, 0, 0],
      [90, 0, 0],
    ],
    0.2,
  );
  const far = seenIn(
    [
      [150, 0, 0],
      [330, 0, 0],
    ],
    0.2,
  );
  const exact = { size: { value: 1, u: 1e-6 }, difference: 1e-6, across: null, along: null };
  const u = ({ photograph, pixels }: typeof near): number => {
    const found = planeScale(photograph, exact, pixels);
    if ('ok' in found) throw new Error(found.code);
    return found.u;
  };
  expect(u(far)).toBeGreaterThan(1.5 * u(near));
});
