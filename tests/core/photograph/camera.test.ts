import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/core/math/vec3.ts';
import {
  type Lens,
  pixelOf,
  pointAtHeight,
  rotationBy,
  seenFrom,
  sightOf,
  turnOf,
} from '../../../src/core/photograph/camera.ts';
import { checkLaw } from '../../laws.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lens = fc.record({
  focal: between(500, 5000),
  centre: fc.tuple(between(800, 2200), between(800, 2200)),
  k1: between(-0.15, 0.15),
  k2: between(-0.03, 0.03),
});
const slant = fc.tuple(between(-0.9, 0.9), between(-0.9, 0.9), between(-3, 3));

test('a pixel looks back along the ray that is seen in it', () => {
  checkLaw(
    fc.property(lens, between(-0.6, 0.6), between(-0.6, 0.6), (camera: Lens, x, y) => {
      const [u, v] = sightOf(camera, pixelOf(camera, [x, y, 1]));
      expect(Math.hypot(u - x, v - y)).toBeLessThan(1e-9);
    }),
  );
});

test('a turn is found again from its rotation, also near a half turn', () => {
  checkLaw(
    fc.property(fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1)), between(0, Math.PI), (axis, angle) => {
      const length = Math.hypot(...axis);
      fc.pre(length > 1e-3);
      const rotation = rotationBy(axis.map((each) => (each * angle) / length) as unknown as Vec3);
      const again = rotationBy(turnOf(rotation));
      expect(Math.max(...again.flat().map((value, i) => Math.abs(value - rotation.flat()[i]!)))).toBeLessThan(1e-9);
    }),
  );
});

test('a point of a plane is found again from where it is seen', () => {
  checkLaw(
    fc.property(slant, between(-150, 150), between(-150, 150), between(0, 80), (turn, x, y, height) => {
      const shift: Vec3 = [10, -20, 900];
      const at = seenFrom(rotationBy(turn), shift, [x, y, height]);
      fc.pre(at[2] > 100);
      const found = pointAtHeight({ turn, shift }, [at[0] / at[2], at[1] / at[2]], height);
      expect(found).not.toBeNull();
      expect(Math.hypot(found![0] - x, found![1] - y)).toBeLessThan(1e-6);
    }),
  );
});

test('a camera that looks straight down sees the head of the sheet above and what lies nearer larger', () => {
  const camera: Lens = { focal: 1000, centre: [500, 400], k1: 0, k2: 0 };
  const see = (point: Vec3) => pixelOf(camera, seenFrom(rotationBy([0, 0, 0]), [0, 0, 1000], point));
  expect(see([0, 100, 0])).toEqual([500, 300]);
  expect(see([100, 0, 0])).toEqual([600, 400]);
  expect(see([100, 0, 500])).toEqual([700, 400]);
});
