/** What rounding alone leaves of an element, as a share of the variances of its row and column. */
const ROUNDING = 1e-12;

/**
 * Factor L of a covariance, L L' = the matrix, by Cholesky's method with pivoting (Higham 1990, Analysis of the Cholesky
 * decomposition of a semi-definite matrix): next comes always the variable that keeps the largest share of its variance, which
 * tells a semidefinite matrix from an indefinite one. Column j holds the own part of variable j, so that independent
 * variables have a diagonal factor; without the pivoting L would be triangular. A variable that follows from the others has
 * a column of zeros.
 * @param matrix symmetric
 * @returns null where the matrix is not positive semidefinite within rounding, or holds a number that is not finite
 */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  if (!matrix.flat().every(Number.isFinite)) return null;
  const factor = matrix.map((row) => row.map(() => 0));
  const rest = matrix.map((row) => [...row]);
  const open = new Set(matrix.keys());
  const share = (i: number): number => (rest[i]![i]! === 0 ? 0 : rest[i]![i]! / Math.abs(matrix[i]![i]!));
  while (open.size > 0) {
    const j = [...open].reduce((best, i) => (share(i) > share(best) ? i : best));
    if (share(j) <= ROUNDING) return isRounding([...open], rest, matrix) ? factor : null;
    open.delete(j);
    const root = Math.sqrt(rest[j]![j]!);
    factor[j]![j] = root;
    for (const i of open) factor[i]![j] = rest[i]![j]! / root;
    for (const i of open) for (const k of open) rest[i]![k]! -= factor[i]![j]! * factor[k]![j]!;
  }
  return factor;
}

/** True if nothing is left between these variables: what their variances allow, where they are none. */
const isRounding = (
  open: readonly number[],
  rest: readonly (readonly number[])[],
  matrix: readonly (readonly number[])[],
): boolean =>
  open.every((i) => open.every((k) => Math.abs(rest[i]![k]!) <= ROUNDING * Math.sqrt(matrix[i]![i]! * matrix[k]![k]!)));
