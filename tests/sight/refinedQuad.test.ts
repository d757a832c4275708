import { describe, expect, it } from 'vitest';
import { distance, type Vec2 } from '../../src/core/index.ts';
import { refinedQuad } from '../../src/sight/refinedQuad.ts';
import { nth } from '../nth.ts';
import { drawnPicture } from './drawnPicture.ts';

const SIZE = { width: 480, height: 400 };
const CENTRE: Vec2 = [240, 200];
/** Barrel distortion: a point of the plane is seen nearer to the middle, by 2.5 % at its corners. */
const BEND = 2.5e-7;
const place = ([x, y]: Vec2): Vec2 => {
  const [u, v] = [x - CENTRE[0], y - CENTRE[1]];
  const by = 1 + BEND * (u * u + v * v);
  return [u * by, v * by];
};
/** The pixel that shows a place, by repeated substitution. */
const pixel = ([x, y]: Vec2): Vec2 => {
  let [u, v] = [x, y];
  for (let i = 0; i < 50; i++) {
    const by = 1 + BEND * (u * u + v * v);
    [u, v] = [x / by, y / by];
  }
  return [CENTRE[0] + u, CENTRE[1] + v];
};
const HALF: Vec2 = [190, 150];
const CORNERS: Vec2[] = [
  [-HALF[0], -HALF[1]],
  [HALF[0], -HALF[1]],
  [HALF[0], HALF[1]],
  [-HALF[0], HALF[1]],
];
const isBox = ([x, y]: Vec2): boolean => Math.abs(x) < HALF[0] && Math.abs(y) < HALF[1];
const box = (inside: (at: Vec2) => number, outside: (at: Vec2) => number) =>
  drawnPicture({
    ...SIZE,
    place,
    blur: 0.8,
    noise: 3,
    samples: 3,
    shade: (at) => (isBox(at) ? inside(at) : outside(at)),
  });

/** Corners a few pixels off the true ones. */
const GUESS = CORNERS.map((corner, i): Vec2 => {
  const [x, y] = pixel(corner);
  return [x + [4, -3, 2, -4][i]!, y + [-3, 4, 3, -2][i]!];
});
const farthest = (corners: readonly Vec2[]): number =>
  Math.max(...corners.map((corner, i) => distance(corner, pixel(nth(CORNERS, i)))));

describe('a quadrilateral in a picture', () => {
  const dark = box(
    () => 0.1,
    () => 0.7,
  );

  it('is found to a part of a pixel though the lens bends its sides, told what lies outside or not', () => {
    // Straight sides between these corners would leave the true ones by over a pixel in their middle.
    const [a, b] = [pixel([-HALF[0], -HALF[1]]), pixel([HALF[0], -HALF[1]])];
    expect(Math.abs(pixel([0, -HALF[1]])[1] - (a[1] + b[1]) / 2)).toBeGreaterThan(1);
    for (const search of [{}, { outside: 'lighter' }] as const) {
      const { corners, u, found } = refinedQuad(dark, GUESS, 8, search);
      expect(found).toBe(true);
      expect(farthest(corners)).toBeLessThan(4 * Math.max(...u));
      expect(Math.max(...u)).toBeLessThan(0.15);
    }
  });

  it('keeps the order of its corners, either way round', () => {
    const back = refinedQuad(dark, [...GUESS].reverse(), 8);
    expect(back.found).toBe(true);
    expect(farthest([...back.corners].reverse())).toBeLessThan(0.3);
  });

  it('is found where a third of a side is hidden', () => {
    const hidden = box(
      ([x, y]) => (x > 90 && y < -100 ? 0.7 : 0.1),
      ([x, y]) => (x < -120 && y > 100 && y < 170 ? 0.1 : 0.7),
    );
    const { corners, found } = refinedQuad(hidden, GUESS, 8, { outside: 'lighter' });
    expect(found).toBe(true);
    expect(farthest(corners)).toBeLessThan(0.4);
  });

  it('is not found where nothing is, where the outside is not as told, or for corners that cross', () => {
    const given = { corners: GUESS, found: false };
    const plain = box(
      () => 0.4,
      () => 0.4,
    );
    expect(refinedQuad(plain, GUESS, 8)).toMatchObject(given);
    expect(refinedQuad(dark, GUESS, 8, { outside: 'darker' })).toMatchObject(given);
    const [a, b, c, d] = GUESS as [Vec2, Vec2, Vec2, Vec2];
    expect(refinedQuad(dark, [a, c, b, d], 8).found).toBe(false);
    expect(refinedQuad(dark, [a, a, a, a], 8).found).toBe(false);
    expect(refinedQuad(dark, [[Number.NaN, 0], b, c, d], 8).found).toBe(false);
  });
});
