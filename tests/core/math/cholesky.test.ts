import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cholesky } from '../../../src/core/math/cholesky.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';

const timesTransposed = (rows: readonly (readonly number[])[]): number[][] =>
  rows.map((a) => rows.map((b) => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0)));

const entry = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => Math.round(x * 1000) / 1000);
/** Rows of any rank up to their number. */
const rows = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .chain(([count, rank]) =>
    fc.array(fc.array(entry, { minLength: rank, maxLength: rank }), { minLength: count, maxLength: count }),
  );

describe('the Cholesky factor', () => {
  test('of a case worked by hand, the variable with the least left coming last', () => {
    // Each keeps all of its variance first; after the first the second keeps 9 / 10 and the third 5 / 6.
    expect(
      cholesky([
        [4, 2, -2],
        [2, 10, 2],
        [-2, 2, 6],
      ]),
    ).toEqual([
      [2, 0, 0],
      [1, 3, 0],
      [-1, 1, 2],
    ]);
    // After the first the second keeps 3 / 4 and the third all: its column comes before.
    expect(
      cholesky([
        [1, 1, 0],
        [1, 4, 4],
        [0, 4, 16],
      ]),
    ).toEqual([
      [1, 0, 0],
      [1, Math.SQRT2, 1],
      [0, 0, 4],
    ]);
  });

  test('times its transpose is the matrix, of full rank or less', () => {
    checkLaw(
      fc.property(rows, (some) => {
        const matrix = timesTransposed(some);
        const factor = defined(cholesky(matrix));
        const most = Math.max(...matrix.map((row, i) => row[i] ?? 0));
        for (const [i, row] of timesTransposed(factor).entries()) {
          for (const [k, value] of row.entries()) {
            expect(Math.abs(value - (matrix[i]?.[k] ?? Number.NaN))).toBeLessThanOrEqual(1e-11 * most);
          }
        }
      }),
    );
  });

  test('gives a variable that follows from another no column of its own', () => {
    expect(
      cholesky([
        [1, -1, 0],
        [-1, 1, 0],
        [0, 0, 0],
      ]),
    ).toEqual([
      [1, 0, 0],
      [-1, 0, 0],
      [0, 0, 0],
    ]);
  });

  test.each([
    [
      'correlations that contradict each other',
      [
        [1, 0.9, -0.9],
        [0.9, 1, 0.9],
        [-0.9, 0.9, 1],
      ],
    ],
    [
      'a correlation beyond 1',
      [
        [1, 1.001],
        [1.001, 1],
      ],
    ],
    ['a negative variance', [[-1]]],
    [
      'a negative variance beside none',
      [
        [0, 0, 0],
        [0, -1, 0],
        [0, 0, 1],
      ],
    ],
    [
      'a covariance with something of no variance',
      [
        [0, 1],
        [1, 4],
      ],
    ],
    [
      'equals that differ from a third',
      [
        [1, 1, 0.5],
        [1, 1, 0.6],
        [0.5, 0.6, 1],
      ],
    ],
    ['NaN', [[Number.NaN]]],
    [
      'NaN beside a zero pivot',
      [
        [0, 0],
        [Number.NaN, 1],
      ],
    ],
    [
      'an infinite variance',
      [
        [Infinity, 0],
        [0, 1],
      ],
    ],
  ])('is refused for %s', (_, matrix) => {
    expect(cholesky(matrix)).toBeNull();
  });
});
