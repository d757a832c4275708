import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorBandedLdl, HALF_BANDWIDTH, ROW_STRIDE, solveBandedLdl } from '../../../src/core/strip/bandedLdl.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

function toBand(matrix: readonly (readonly number[])[]): Float64Array {
  const band = new Float64Array(matrix.length * ROW_STRIDE);
  matrix.forEach((row, i) => {
    for (let j = Math.max(0, i - HALF_BANDWIDTH); j <= i; j++)
      band[i * ROW_STRIDE + HALF_BANDWIDTH + j - i] = nth(row, j);
  });
  return band;
}

describe('banded LDL^T', () => {
  it('factors a matrix worked by hand: [[4, 2], [2, 3]] gives D = 4, 2 and L = 1/2', () => {
    const band = toBand([
      [4, 2],
      [2, 3],
    ]);
    expect(factorBandedLdl(band, 2, 1e-12)).toBe(-1);
    expect([band[5], band[10], band[11]]).toEqual([4, 0.5, 2]);
    const x = Float64Array.of(8, 7);
    solveBandedLdl(band, 2, x);
    expect(Array.from(x)).toEqual([1.25, 1.5]);
  });

  it('solves any positive definite banded system', () => {
    const anySystem = fc.integer({ min: 1, max: 24 }).chain((n) =>
      fc.record({
        lower: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n * 6, maxLength: n * 6 }),
        x: fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: n, maxLength: n }),
      }),
    );
    checkLaw(
      fc.property(anySystem, ({ lower, x }) => {
        const n = x.length;
        const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
        for (let i = 0; i < n; i++) {
          nth(matrix, i)[i] = 11; // more than the ten neighbours can sum to, so positive definite
          for (let j = Math.max(0, i - HALF_BANDWIDTH); j < i; j++) {
            nth(matrix, i)[j] = nth(lower, i * 6 + i - j);
            nth(matrix, j)[i] = nth(nth(matrix, i), j);
          }
        }
        const rhs = Float64Array.from(matrix, (row) => row.reduce((sum, a, j) => sum + a * nth(x, j), 0));
        const band = toBand(matrix);
        expect(factorBandedLdl(band, n, 1e-12)).toBe(-1);
        solveBandedLdl(band, n, rhs);
        for (let i = 0; i < n; i++) expect(rhs[i]).toBeCloseTo(nth(x, i), 9);
      }),
    );
  });

  it('names the row of the first pivot that is not positive, and does not throw', () => {
    const saddle = [
      [1, 0, 0],
      [0, 1, 2],
      [0, 2, 1],
    ];
    expect(factorBandedLdl(toBand(saddle), 3, 1e-12)).toBe(2);
    expect(factorBandedLdl(toBand([[Number.NaN]]), 1, 1e-12)).toBe(0);
    expect(factorBandedLdl(toBand([[0]]), 1, 1e-12)).toBe(0);
  });

  it('takes a pivot as small as the least one, and no smaller', () => {
    expect(factorBandedLdl(toBand([[0.5]]), 1, 0.5)).toBe(-1);
    expect(factorBandedLdl(toBand([[0.4999]]), 1, 0.5)).toBe(0);
  });

  it('leaves alone what lies beyond its size', () => {
    const band = toBand([
      [4, 2, 0],
      [2, 3, 1],
      [0, 1, 5],
    ]);
    const last = band.slice(2 * ROW_STRIDE);
    factorBandedLdl(band, 2, 1e-12);
    const x = Float64Array.of(8, 7, 3);
    solveBandedLdl(band, 2, x);
    expect(x).toEqual(Float64Array.of(1.25, 1.5, 3));
    expect(band.slice(2 * ROW_STRIDE)).toEqual(last);
  });

  it('takes an empty system', () => {
    expect(factorBandedLdl(new Float64Array(0), 0, 1)).toBe(-1);
  });
});
