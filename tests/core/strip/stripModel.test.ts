import { describe, expect, it } from 'vitest';
import { addRod } from '../../../src/core/strip/stripModel.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';

/** Three nodes, edges 1 and 2 long at a right angle, each 0.5 at rest. */
function elbow() {
  const space = createStripWorkspace(1);
  space.spacing = 0.5;
  space.nodes.set([0, 0, 1, 0, 1, 2]);
  return space;
}
/** EA / 2h (l - h)^2 of both edges, EA = 10; EI / 2h turn^2 of the node between them, EI = 1. */
const STRETCHED = 10 * (0.5 ** 2 + 1.5 ** 2);
const bent = (turn: number): number => turn ** 2;

describe('the energy of a rod', () => {
  it('is that of its stretched edges and of its turns', () => {
    const space = elbow();
    expect(addRod(space, space.nodes, 10, 'energy')).toBeCloseTo(STRETCHED + bent(Math.PI / 2), 12);
  });

  it('counts turns from those at rest, and takes off the work of the loads', () => {
    const space = elbow();
    space.restTurn[1] = 0.5;
    space.load.set([7, 7, 0, 0, 2, 3]);
    expect(addRod(space, space.nodes, 10, 'energy')).toBeCloseTo(STRETCHED + bent(Math.PI / 2 - 0.5) - 2 - 6, 12);
  });

  it('leaves gradient and Hessian alone unless they are asked for, and then adds to them', () => {
    const space = elbow();
    space.load.set([0, 0, 0, 0, 2, 0]);
    addRod(space, space.nodes, 10, 'energy');
    expect([...space.gradient, ...space.band].every((v) => v === 0)).toBe(true);
    space.gradient.fill(1);
    addRod(space, space.nodes, 10, 'hessian');
    // The second edge pulls its end down by EA / h (l - h) = 30; turning about (1, 0), 2 long, it is bent by (pi/2) / h.
    expect(space.gradient[5]).toBeCloseTo(1 + 30, 12);
    expect(space.gradient[4]).toBeCloseTo(1 - 2 - Math.PI / 2, 12);
  });
});
