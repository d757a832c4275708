type Vector = readonly number[];

/** a . b; b is at least as long as a. */
export function inner(a: Vector, b: Vector): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** a' M b. */
export function bilinear(a: Vector, matrix: readonly Vector[], b: Vector): number {
  let sum = 0;
  // Most slopes are 0.
  for (let i = 0; i < a.length; i++) if (a[i] !== 0) sum += a[i]! * inner(matrix[i]!, b);
  return sum;
}
