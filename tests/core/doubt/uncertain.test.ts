import { expect, test } from 'vitest';
import { correlationMatrix, covarianceOf, type Uncertain } from '../../../src/core/doubt/uncertain.ts';

const inputs: Uncertain[] = [
  { value: 10, u: 2, distribution: 'normal' },
  { value: 20, u: 0.5, distribution: 'even' },
  { value: 30, u: 0, distribution: 'normal' },
];

test('the covariance of inputs is r u u, with the variances on the diagonal', () => {
  expect(covarianceOf(inputs, [{ a: 1, b: 0, r: -0.4 }])).toEqual([
    [4, -0.4, 0],
    [-0.4, 0.25, 0],
    [0, 0, 0],
  ]);
});

test('inputs without a correlation are independent', () => {
  expect(covarianceOf(inputs)).toEqual([
    [4, 0, 0],
    [0, 0.25, 0],
    [0, 0, 0],
  ]);
});

test.each([
  [{ a: 0, b: 3, r: 0.5 }, /inputs 0 and 3: two different ones of 3/],
  [{ a: -1, b: 1, r: 0.5 }, /inputs -1 and 1/],
  [{ a: 1, b: 1, r: 0.5 }, /inputs 1 and 1/],
  [{ a: 0, b: 1, r: 1.01 }, /inputs 0 and 1 is 1.01: −1 to 1 is allowed/],
  [{ a: 0, b: 1, r: Number.NaN }, /is NaN/],
])('a correlation of no pair or beyond 1 is refused: %j', (correlation, message) => {
  expect(() => correlationMatrix(3, [correlation])).toThrow(message);
  expect(() => correlationMatrix(3, [correlation])).toThrow(RangeError);
});

test('correlations of 1 and -1 are allowed', () => {
  expect(
    correlationMatrix(3, [
      { a: 0, b: 1, r: 1 },
      { a: 2, b: 1, r: -1 },
    ]),
  ).toEqual([
    [1, 1, 0],
    [1, 1, -1],
    [0, -1, 1],
  ]);
});
