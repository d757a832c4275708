/** Half-bandwidth of the stored matrix: two coordinates per point, each point coupled to two neighbours either side. */
export const HALF_BANDWIDTH = 5;

/** Numbers stored per row: the five entries left of the diagonal, then the diagonal. */
export const ROW_STRIDE = HALF_BANDWIDTH + 1;

/**
 * Factors a symmetric banded matrix in place.
 *
 * A = L D L^T with L unit lower triangular; row i, column j (i - 5 <= j <= i) is stored at 6 i + 5 + j - i. On return the
 * diagonal holds D and the rest holds L. Golub & Van Loan, Matrix Computations, banded LDL^T.
 *
 * @param band lower band of A, 6 numbers a row, overwritten
 * @param size rows, at least 0
 * @param minPivot smallest pivot taken as positive, more than 0, in the units of A
 * @returns -1 when every pivot is at least `minPivot`, else the row of the first that is not (or is not a number); the band
 *   is then half overwritten and must be filled again
 */
export function factorBandedLdl(band: Float64Array, size: number, minPivot: number): number {
  for (let i = 0; i < size; i++) {
    const row = i * ROW_STRIDE + HALF_BANDWIDTH - i;
    const first = i > HALF_BANDWIDTH ? i - HALF_BANDWIDTH : 0;
    let pivot = band[row + i]!;
    for (let j = first; j < i; j++) {
      const other = j * ROW_STRIDE + HALF_BANDWIDTH - j;
      let sum = band[row + j]!;
      // Entries left of the diagonal still hold L D here; they are divided by D once the whole row is known.
      for (let k = first; k < j; k++) sum -= band[row + k]! * band[other + k]!;
      band[row + j] = sum;
    }
    for (let j = first; j < i; j++) {
      const scaled = band[row + j]!;
      const factor = scaled / band[j * ROW_STRIDE + HALF_BANDWIDTH]!;
      band[row + j] = factor;
      pivot -= factor * scaled;
    }
    if (!(pivot >= minPivot)) return i;
    band[row + i] = pivot;
  }
  return -1;
}

/**
 * Solves A x = b in place from the factors that {@link factorBandedLdl} left in the band.
 *
 * @param band factors L and D, 6 numbers a row
 * @param size rows, at least 0
 * @param rhs b on entry, x on return
 */
export function solveBandedLdl(band: Float64Array, size: number, rhs: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = i * ROW_STRIDE + HALF_BANDWIDTH - i;
    let sum = rhs[i]!;
    for (let j = i > HALF_BANDWIDTH ? i - HALF_BANDWIDTH : 0; j < i; j++) sum -= band[row + j]! * rhs[j]!;
    rhs[i] = sum;
  }
  for (let i = 0; i < size; i++) rhs[i] = rhs[i]! / band[i * ROW_STRIDE + HALF_BANDWIDTH]!;
  for (let i = size - 1; i >= 0; i--) {
    const row = i * ROW_STRIDE + HALF_BANDWIDTH - i;
    const value = rhs[i]!;
    for (let j = i > HALF_BANDWIDTH ? i - HALF_BANDWIDTH : 0; j < i; j++) rhs[j] = rhs[j]! - band[row + j]! * value;
  }
}
