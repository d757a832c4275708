import { describe, expect, it } from 'vitest';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { blockWrap, cantilever, clampedClamped, solverWith, uBend } from './elasticaCases.ts';
import { blockWrapOracle, cantileverOracle, clampedClampedOracle, uBendOracle } from './elasticaOracle.ts';
import reference from './reference-values.json' with { type: 'json' };

const seed = 20240611;
console.log(`seed ${seed}`);

/** Mulberry32 (public domain): a small generator, so that the cases are the same everywhere. */
function generator(state: number): () => number {
  let s = state;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const random = generator(seed);
const between = (low: number, high: number) => low + (high - low) * random();
const cases = <T>(count: number, make: () => T): T[] => Array.from({ length: count }, make);
const solver = solverWith(200);

describe('the strip agrees with shooting and elliptic integrals on random cases', () => {
  const { rel } = reference.cantilever;
  it.each(cases(7, () => [between(-4, 3), between(0.3, 10)] as const))('cantilever, end load (%f, %f)', (fx, fy) => {
    const tip = cantilever(solver, fx, fy);
    const exact = cantileverOracle(fx, fy);
    expect(Math.hypot(tip.x - exact.x, tip.y - exact.y)).toBeLessThan(rel * Math.hypot(1 - exact.x, exact.y));
  });

  it.each(cases(7, () => between(0.01, 0.35)))('both ends clamped, shortened by %f', (shortening) => {
    const buckled = clampedClamped(solver, shortening);
    const exact = clampedClampedOracle(shortening);
    expect(Math.abs(buckled.height / exact.height - 1)).toBeLessThan(reference.clampedClamped.rel);
    expect(Math.abs(buckled.force / exact.force - 1)).toBeLessThan(reference.clampedClamped.rel);
  });

  it.each(cases(6, () => between(1.6, 3.2)))('U of length %f', (length) => {
    const bend = uBend(solver, length);
    const exact = uBendOracle(length);
    expect(Math.abs(bend.force / exact.force - 1)).toBeLessThan(reference.uBend.rel);
    expect(Math.abs(bend.protrusion / exact.protrusion - 1)).toBeLessThan(reference.uBend.rel);
  });

  it.each(cases(6, () => [between(0.35, 0.7), between(0.1, 0.25)] as const))(
    'block wrap, clamps %f behind the spine, slack %f',
    (a, slack) => {
      const wrap = blockWrap(solver, a, slack);
      const { start, contacts, spacing, nodes } = wrap.solution;
      const corner = defined(contacts.find((c) => c.kind === 'vertex' && c.y > 0));
      const turn = Math.PI - Math.atan2(nth(nodes, 5) - nth(nodes, 3), nth(nodes, 4) - nth(nodes, 2));
      const began = [-Math.abs(turn) / spacing, -start.fx, -start.fy, (corner.place - 0.5) * spacing, wrap.cornerForce];
      const exact = blockWrapOracle(a, slack, began);
      expect(Math.abs(wrap.bow / exact.bow - 1)).toBeLessThan(reference.blockWrap.rel.bow);
      expect(Math.abs(wrap.cornerForce / exact.cornerForce - 1)).toBeLessThan(reference.blockWrap.rel.cornerForce);
    },
  );
});
