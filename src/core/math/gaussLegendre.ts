/** A point of a rule of integration over 0 to 1, and its weight. */
export interface QuadraturePoint {
  readonly x: number;
  readonly weight: number;
}

/**
 * Gauss-Legendre rule over 0 to 1, exact for polynomials up to degree 2 n - 1, its points from 1 down to 0: the roots of the
 * Legendre polynomial by Newton's method from cos(pi (k - 1/4) / (n + 1/2)), weights 2 / ((1 - z^2) P_n'(z)^2) over -1 to 1
 * (Abramowitz and Stegun 25.4.29 and 22.16.6).
 * @param n number of points, 1 or more
 */
export function gaussLegendre(n: number): QuadraturePoint[] {
  return Array.from({ length: n }, (_, k) => {
    let z = Math.cos((Math.PI * (k + 0.75)) / (n + 0.5));
    for (let step = 0; step < NEWTON_STEPS; step++) {
      const { value, slope } = legendre(n, z);
      z -= value / slope;
    }
    return { x: (1 + z) / 2, weight: 1 / ((1 - z * z) * legendre(n, z).slope ** 2) };
  });
}

/** The start is right to 1 / n^2 or better; four steps that square the error reach the last digit. */
const NEWTON_STEPS = 5;

/** P_n and its derivative, by the recurrence j P_j = (2 j - 1) z P_(j-1) - (j - 1) P_(j-2). */
function legendre(n: number, z: number): { value: number; slope: number } {
  let [value, before] = [1, 0];
  for (let j = 1; j <= n; j++) [value, before] = [((2 * j - 1) * z * value - (j - 1) * before) / j, value];
  return { value, slope: (n * (z * value - before)) / (z * z - 1) };
}
