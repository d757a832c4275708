import { describe, expect, it } from 'vitest';
import { HALF_BANDWIDTH, ROW_STRIDE } from '../../../src/core/strip/bandedLdl.ts';
import { addContact, pairContacts } from '../../../src/core/strip/contact.ts';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { addRod, type Order } from '../../../src/core/strip/stripModel.ts';
import { createStripWorkspace, type StripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';
import { nth } from '../../nth.ts';

type Term = (space: StripWorkspace, nodes: Float64Array, order: Order) => number;

/** An arc of a wavy circle round the origin, with the origin on the left. */
function wavyArc(segments: number): StripWorkspace {
  const space = createStripWorkspace(segments);
  for (let k = 0; k < space.count; k++) {
    const angle = 0.3 + (2.2 * k) / space.count;
    const radius = 1 + 0.03 * Math.sin(7 * angle) + 0.01 * Math.cos(23 * angle);
    space.nodes[2 * k] = radius * Math.cos(angle);
    space.nodes[2 * k + 1] = radius * Math.sin(angle);
  }
  space.spacing = 2.2 / space.count;
  return space;
}

/** Largest error of gradient and Hessian against central differences, relative to the largest entry. */
function errors(space: StripWorkspace, term: Term): { gradient: number; hessian: number } {
  const size = 2 * space.count;
  const d = 1e-6;
  const gradientAt = (nodes: Float64Array): Float64Array => {
    space.gradient.fill(0);
    space.band.fill(0);
    term(space, nodes, 'hessian');
    return space.gradient.slice();
  };
  const moved = (i: number, by: number): Float64Array => {
    const nodes = space.nodes.slice();
    nodes[i]! += by;
    return nodes;
  };
  const gradient = gradientAt(space.nodes);
  const band = space.band.slice();
  const scale = Math.max(...gradient.map(Math.abs));
  const stiff = Math.max(...band.map(Math.abs));
  let worstGradient = 0;
  let worstHessian = 0;
  for (let i = 0; i < size; i++) {
    const slope = (term(space, moved(i, d), 'energy') - term(space, moved(i, -d), 'energy')) / (2 * d);
    worstGradient = Math.max(worstGradient, Math.abs(slope - nth(gradient, i)) / scale);
    const up = gradientAt(moved(i, d));
    const down = gradientAt(moved(i, -d));
    for (let j = 0; j < size; j++) {
      const difference = (nth(up, j) - nth(down, j)) / (2 * d);
      const [r, c] = i >= j ? [i, j] : [j, i];
      const stored = r - c > HALF_BANDWIDTH ? 0 : nth(band, r * ROW_STRIDE + HALF_BANDWIDTH + c - r);
      worstHessian = Math.max(worstHessian, Math.abs(difference - stored) / stiff);
    }
  }
  return { gradient: worstGradient, hessian: worstHessian };
}

describe('gradient and Hessian are the derivatives of the energy', () => {
  it('of the rod, with rest turns and loads', () => {
    const space = wavyArc(20);
    for (let k = 0; k < space.count; k++) space.restTurn[k] = 0.05 * Math.sin(k);
    space.load.forEach((_, i) => {
      space.load[i] = Math.cos(i);
    });
    const { gradient, hessian } = errors(space, (s, nodes, order) => addRod(s, nodes, 300, order));
    expect(gradient).toBeLessThan(1e-7);
    expect(hessian).toBeLessThan(1e-7);
  });

  it('of contact, vertices poking through the strip and nodes sunk into edges', () => {
    const space = wavyArc(20);
    // Four edges, some of whose corners lie outside the strip and some of whose middles do.
    const obstacle = growOutline([0.98, -0.5, 1.01, 0.42, 0.43, 0.95, -0.4, 0.95, -1.1, 0.7], false, 0, 0.3);
    pairContacts(space, obstacle, space.nodes);
    space.vertexForce.fill(2);
    space.vertexSag.fill(0.001);
    // Stay clear of the places where a contact switches on, since no difference quotient is valid across them.
    const { gradient, hessian } = errors(space, (s, nodes, order) => addContact(s, obstacle, nodes, 100, order));
    space.gradient.fill(0);
    space.band.fill(0);
    expect(addContact(space, obstacle, space.nodes, 100, 'hessian')).not.toBe(0);
    expect(space.gradient.filter((g) => g !== 0).length).toBeGreaterThan(10);
    expect(gradient).toBeLessThan(1e-6);
    expect(hessian).toBeLessThan(1e-6);
  });
});
