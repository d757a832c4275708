/**
 * Inverse of a symmetric positive definite matrix by Cholesky's method, L L' = M: M^-1 = L^-T L^-1.
 * @throws RangeError where the matrix is not positive definite
 */
export function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  // Rows of L^-1 below the diagonal, built beside those of L.
  const factor: number[][] = [];
  const inverted: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    let rest = matrix[i]![i]!;
    for (let k = 0; k < i; k++) {
      const other = factor[k]!;
      let sum = matrix[i]![k]!;
      for (let j = 0; j < k; j++) sum -= row[j]! * other[j]!;
      const one = sum / other[k]!;
      row.push(one);
      rest -= one * one;
    }
    if (!(rest > 0)) throw new RangeError(`The matrix is not positive definite: ${rest} is left in row ${i}.`);
    const root = Math.sqrt(rest);
    const below: number[] = [];
    for (let k = 0; k < i; k++) {
      let sum = 0;
      for (let j = k; j < i; j++) sum -= row[j]! * inverted[j]![k]!;
      below.push(sum / root);
    }
    row.push(root);
    below.push(1 / root);
    factor.push(row);
    inverted.push(below);
  }
  return matrix.map((_, i) =>
    matrix.map((__, k) => {
      let sum = 0;
      for (let j = Math.max(i, k); j < n; j++) sum += inverted[j]![i]! * inverted[j]![k]!;
      return sum;
    }),
  );
}
