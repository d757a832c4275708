import { createRequire } from 'node:module';
import ellipe from '@stdlib/math-base-special-ellipe';
import ellipk from '@stdlib/math-base-special-ellipk';
import { nth } from '../nth.ts';

/** x, y, tangent angle, curvature. */
type State = [number, number, number, number];

interface OdeSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(f: (s: number, y: State) => State, from: number, start: State, to: number): { y: State };
}

// odex carries its source where declarations belong, and this project's stricter compiler settings reject it.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => OdeSolver };

/** Root of a system by Newton with a finite-difference Jacobian and backtracking; throws if it does not settle. */
function shoot(residual: (p: number[]) => number[], start: readonly number[]): number[] {
  let p = start.slice();
  let r = residual(p);
  const size = (v: number[]) => Math.hypot(...v);
  for (let iteration = 0; iteration < 60; iteration++) {
    if (size(r) < 1e-10) return p;
    const columns = p.map((value, j) => {
      const d = 1e-6 * Math.max(1, Math.abs(value));
      const at = (shift: number) => residual(p.map((v, k) => (k === j ? v + shift : v)));
      const down = at(-d);
      return at(d).map((v, k) => (v - nth(down, k)) / (2 * d));
    });
    const step = gauss(r.map((v, row) => [...columns.map((c) => nth(c, row)), -v]));
    let share = 1;
    for (;;) {
      const next = p.map((v, k) => v + share * nth(step, k));
      const trial = residual(next);
      if (size(trial) < size(r)) {
        p = next;
        r = trial;
        break;
      }
      share /= 2;
      if (share < 1e-6) {
        if (size(r) < 1e-8) return p;
        throw new Error(`shooting stalled at ${size(r)}`);
      }
    }
  }
  throw new Error(`shooting ran out at ${size(r)}`);
}

/** Gaussian elimination with row exchange on an augmented matrix. */
function gauss(rows: number[][]): number[] {
  const n = rows.length;
  const at = (row: number, column: number) => nth(nth(rows, row), column);
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i; k < n; k++) if (Math.abs(at(k, i)) > Math.abs(at(best, i))) best = k;
    [rows[i], rows[best]] = [nth(rows, best), nth(rows, i)];
    const pivot = nth(rows, i);
    rows.forEach((row, k) => {
      if (k === i) return;
      const f = nth(row, i) / nth(pivot, i);
      rows[k] = row.map((v, c) => v - f * nth(pivot, c));
    });
  }
  return rows.map((row, i) => nth(row, n) / nth(row, i));
}

interface RodState {
  x: number;
  y: number;
  theta: number;
  curvature: number;
}

/**
 * Integrates the elastica theta'' = fx sin(theta) - fy cos(theta), EI = 1, where (fx, fy) is the force the strip beyond
 * puts on the strip before.
 */
function integrate(from: RodState, fx: number, fy: number, length: number): RodState {
  const solver = new Solver(4);
  solver.absoluteTolerance = 1e-12;
  solver.relativeTolerance = 1e-12;
  const { y: end } = solver.solve(
    (_s, [, , theta, curvature]) => [
      Math.cos(theta),
      Math.sin(theta),
      curvature,
      fx * Math.sin(theta) - fy * Math.cos(theta),
    ],
    0,
    [from.x, from.y, from.theta, from.curvature],
    length,
  );
  const [x, y, theta, curvature] = end;
  return { x, y, theta, curvature };
}

/** Free end of a cantilever of length 1 along +x under a dead end load. */
export function cantileverOracle(fx: number, fy: number): RodState {
  const tip = (curvature: number, load: number) =>
    integrate({ x: 0, y: 0, theta: 0, curvature }, load * fx, load * fy, 1);
  let curvature = 0;
  // Grow the load in steps, so that the root followed is the one that begins straight.
  for (let k = 1; k <= 10; k++)
    curvature = nth(
      shoot((p) => [tip(nth(p, 0), k / 10).curvature], [curvature]),
      0,
    );
  return tip(curvature, 1);
}

/** Buckled strip with both ends clamped: 2E/K - 1 = 1 - shortening, height = sqrt(m)/K, P = 16 K^2 (Love, Elasticity, 263). */
export function clampedClampedOracle(shortening: number): { height: number; force: number } {
  let low = 0;
  let high = 0.9;
  for (let k = 0; k < 100; k++) {
    const m = (low + high) / 2;
    if ((2 * ellipe(m)) / ellipk(m) - 1 > 1 - shortening) low = m;
    else high = m;
  }
  return { height: Math.sqrt(low) / ellipk(low), force: 16 * ellipk(low) ** 2 };
}

/** Half of a U: from (0, 1/2) heading -x to the middle heading -y on the axis; by symmetry the force runs along y. */
export function uBendOracle(length: number): { force: number; protrusion: number } {
  const half = (force: number, curvature: number, l: number) =>
    integrate({ x: 0, y: 0.5, theta: Math.PI, curvature }, 0, force, l / 2);
  let root: [force: number, curvature: number] = [0, 2];
  const steps = Math.ceil(Math.abs(length - Math.PI / 2) / 0.1);
  for (let k = 1; k <= steps; k++) {
    const l = Math.PI / 2 + ((length - Math.PI / 2) * k) / steps;
    const found = shoot((p) => {
      const middle = half(nth(p, 0), nth(p, 1), l);
      return [middle.theta - 1.5 * Math.PI, middle.y];
    }, root);
    root = [nth(found, 0), nth(found, 1)];
  }
  return { force: Math.abs(root[0]), protrusion: -half(...root, length).x };
}

/**
 * Half of a block wrap: from (a, 1/2) heading -x, past the corner (0, 1/2) at arc length c where a force R along the normal
 * joins, to the middle heading -y on the axis with the force there along y.
 *
 * @param guess curvature at the clamp, force (x, y) there, c, R: only where the search begins
 */
export function blockWrapOracle(a: number, slack: number, guess: number[]): { bow: number; cornerForce: number } {
  const half = a + (1 + slack) / 2;
  const run = (p: readonly number[]) => {
    const [curvature, fx, fy, c, push] = [nth(p, 0), nth(p, 1), nth(p, 2), nth(p, 3), nth(p, 4)];
    const corner = integrate({ x: a, y: 0.5, theta: Math.PI, curvature }, fx, fy, c);
    // The corner pushes the strip to its right; the force carried beyond it is less by that.
    const gx = fx - push * Math.sin(corner.theta);
    const gy = fy + push * Math.cos(corner.theta);
    return { corner, gx, middle: integrate(corner, gx, gy, half - c) };
  };
  const root = shoot((p) => {
    const { corner, gx, middle } = run(p);
    return [corner.x, corner.y - 0.5, middle.theta - 1.5 * Math.PI, middle.y, gx];
  }, guess);
  return { bow: -run(root).middle.x, cornerForce: nth(root, 4) };
}
