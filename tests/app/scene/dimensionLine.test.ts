import { expect, test } from 'vitest';
import { dimensionLine } from '../../../src/app/scene/marks/dimensionLine.ts';

const numbers = (path: string): number[] => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

test('a dimension line lies between its feet, with a tick along the edge through each', () => {
  const { dimension, extension, middle } = dimensionLine([100, 50], [160, 50], [0, 3]);
  expect(numbers(dimension)).toEqual([100, 50, 160, 50]);
  expect(middle).toEqual([130, 50]);
  expect(numbers(extension)).toEqual([100, 44, 100, 56, 160, 44, 160, 56]);
});

test('a short one has its arrows outside, pointing in, on the same line', () => {
  const { dimension, arrows, middle } = dimensionLine([100, 50], [104, 50], [0, 3]);
  const [left, y, right, y2] = numbers(dimension);
  expect([left! < 95, right! > 109, y, y2]).toEqual([true, true, 50, 50]);
  expect(numbers(arrows).slice(0, 2)).toEqual([100, 50]);
  expect(middle).toEqual([102, 50]);
});

test('two feet at one point still make a mark, square to the edge', () => {
  expect(numbers(dimensionLine([100, 50], [100, 50], [0, 3]).dimension)).toEqual([116, 50, 84, 50]);
});
