import { describe, expect, it } from 'vitest';
import { nth } from '../nth.ts';
import { blockWrap, cantilever, clampedClamped, solverWith, tautOverCorner, uBend } from './elasticaCases.ts';
import reference from './reference-values.json' with { type: 'json' };

// Sources stand beside the rows in reference-values.json; tolerances are read from there.
const solver = solverWith(200);

const within = (value: number, expected: number, rel: number): void => {
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(rel);
};

describe('the strip agrees with the elastica at 200 segments', () => {
  it.each(reference.cantilever.rows)('cantilever, end load %f', (load, deflection, approach) => {
    const tip = cantilever(solver, 0, load);
    within(tip.y, deflection, reference.cantilever.rel);
    within(1 - tip.x, approach, reference.cantilever.rel);
  });

  it.each(reference.clampedClamped.rows)('both ends clamped, shortened by %f', (shortening, height, force) => {
    const buckled = clampedClamped(solver, shortening);
    within(buckled.height, height, reference.clampedClamped.rel);
    within(buckled.force, force, reference.clampedClamped.rel);
  });

  it.each(reference.uBend.rows)('U of length %f', (length, force, protrusion, energy) => {
    const bend = uBend(solver, length);
    within(bend.force, force, reference.uBend.rel);
    within(bend.protrusion, protrusion, reference.uBend.rel);
    within(bend.energy, energy, reference.uBend.rel);
  });

  it.each(reference.blockWrap.rows)('block wrap, clamps %f behind the spine, slack %f', (a, slack, ...expected) => {
    const wrap = blockWrap(solver, a, slack);
    within(wrap.bow, nth(expected, 0), reference.blockWrap.rel.bow);
    within(wrap.bulge, nth(expected, 1), reference.blockWrap.rel.bulge);
    within(wrap.cornerForce, nth(expected, 2), reference.blockWrap.rel.cornerForce);
    within(wrap.energy, nth(expected, 3), reference.blockWrap.rel.energy);
  });

  it.each(reference.tautOverCorner.rows)('drawn taut round a corner of $angle_deg degrees', (row) => {
    const curvature = tautOverCorner(solver, (row.angle_deg * Math.PI) / 180);
    within(curvature, row['corner curvature * lambda'], reference.tautOverCorner.rel);
  });
});

describe('a block wrap clamped one thickness behind the spine', () => {
  it('presses on the corner at slack 0.3 and has left it at 0.4', () => {
    expect(blockWrap(solver, 1, 0.3).cornerForce).toBeGreaterThan(0);
    expect(blockWrap(solver, 1, 0.4).cornerForce).toBe(0);
  });
});

describe('the error falls with the square of the segment length, or faster', () => {
  const sizes = [50, 100, 200, 400];
  const solvers = sizes.map(solverWith);
  const lastU = nth(reference.uBend.rows, 0);
  const wrapRow = nth(reference.blockWrap.rows, 1);
  it.each([
    ['cantilever deflection, load 5', () => solvers.map((s) => cantilever(s, 0, 5).y)],
    ['buckling force, shortening 0.1', () => solvers.map((s) => clampedClamped(s, 0.1).force)],
    ['U force, length 1.6', () => solvers.map((s) => uBend(s, nth(lastU, 0)).force)],
    ['block wrap energy, slack 0.2', () => solvers.map((s) => blockWrap(s, nth(wrapRow, 0), nth(wrapRow, 1)).energy)],
    ['corner curvature, 90 degrees', () => solvers.map((s) => tautOverCorner(s, Math.PI / 2))],
  ] as const)('%s', (name, measure) => {
    const values = measure();
    const orders = [0, 1].map((i) => {
      const [coarse, middle, fine] = [nth(values, i), nth(values, i + 1), nth(values, i + 2)];
      return Math.log2(Math.abs((coarse - middle) / (middle - fine)));
    });
    console.log(`${name}: N ${sizes.join(', ')} order ${orders.map((o) => o.toFixed(2)).join(', ')}`);
    expect((nth(orders, 0) + nth(orders, 1)) / 2).toBeGreaterThan(1.7);
  });
});
