/**
 * `normal`, or `even`: a rectangular distribution of half width sqrt(3) u (JCGM 100:2008 4.3.7), so that u is the standard
 * deviation of both.
 */
type Distribution = 'normal' | 'even';

/** An input with its standard uncertainty (JCGM 100:2008 2.3.1). */
export interface Uncertain {
  readonly value: number;
  /** Standard uncertainty in the unit of the value, 0 or more. */
  readonly u: number;
  readonly distribution: Distribution;
}

/** Correlation of the inputs with indices a and b, which differ; r from -1 to 1. Pairs not listed are independent. */
export interface Correlation {
  readonly a: number;
  readonly b: number;
  readonly r: number;
}

/** Covariance of the inputs: r_ij u_i u_j, with r_ii = 1 (JCGM 100:2008 5.2.2, equation 14). */
export function covarianceOf(inputs: readonly Uncertain[], correlations: readonly Correlation[] = []): number[][] {
  const matrix = correlationMatrix(inputs.length, correlations);
  for (const [i, row] of matrix.entries())
    for (let k = 0; k < row.length; k++) row[k] = row[k]! * inputs[i]!.u * inputs[k]!.u;
  return matrix;
}

/**
 * The correlations of `count` inputs as a matrix.
 * @throws RangeError if a correlation names no pair of inputs or is beyond 1
 */
export function correlationMatrix(count: number, correlations: readonly Correlation[]): number[][] {
  const matrix = Array.from({ length: count }, (_, i) => {
    const row = new Array<number>(count).fill(0);
    row[i] = 1;
    return row;
  });
  for (const { a, b, r } of correlations) {
    const [rowA, rowB] = [matrix[a], matrix[b]];
    if (!rowA || !rowB || a === b)
      throw new RangeError(`A correlation names the inputs ${a} and ${b}: two different ones of ${count} are allowed.`);
    if (!(Math.abs(r) <= 1))
      throw new RangeError(`The correlation of inputs ${a} and ${b} is ${r}: −1 to 1 is allowed.`);
    rowA[b] = r;
    rowB[a] = r;
  }
  return matrix;
}
