import { describe, expect, it } from 'vitest';
import { HALF_BANDWIDTH, ROW_STRIDE } from '../../../src/core/strip/bandedLdl.ts';
import { addContact, largestPenetration, pairContacts, updateMultipliers } from '../../../src/core/strip/contact.ts';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';

const RHO = 10;
/** Lower side of a box from x = 0.9 to 2.6 whose solid begins at this height; the box is 5 high. */
const box = (height: number) => growOutline([0.9, height, 2.6, height, 2.6, 5, 0.9, 5], true, 0, 1);

/** Nodes 0 to 7 at x = 0 to 3.5 on the x axis, paired with an obstacle on their left. */
function laid(obstacle: ReturnType<typeof box>) {
  const space = createStripWorkspace(6);
  space.spacing = 0.5;
  space.nodes.set(Array.from({ length: 8 }, (_, k) => [k / 2, 0]).flat());
  pairContacts(space, obstacle, space.nodes);
  return space;
}
const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

describe('nodes and vertices', () => {
  it('are paired with the nearest edge and the nearest inner node', () => {
    const space = laid(box(0.2));
    expect([...space.nodeEdge.slice(2, 6)]).toEqual([0, 0, 0, 0]);
    // Vertices at x = 0.9, 2.6, 2.6, 0.9: nodes 2 and 5; the first and last node never count.
    expect([...space.vertexNode]).toEqual([2, 5, 5, 2]);
    pairContacts(space, growOutline([-4, 1, -3, 1, 9, 1], false, 0, 1), space.nodes);
    expect([...space.vertexNode]).toEqual([1, 1, 6]);
  });

  it('keep their forces when they are paired again, unless the outline has another number of vertices', () => {
    const space = laid(box(0.2));
    space.vertexForce.fill(3);
    pairContacts(space, box(0.3), space.nodes);
    expect([...space.vertexForce]).toEqual([3, 3, 3, 3]);
    pairContacts(space, growOutline([0, 1, 1, 1, 1, 2], true, 0, 1), space.nodes);
    expect([space.vertexForce, space.vertexSag].map((values) => [...values])).toEqual([
      [0, 0, 0],
      [0, 0, 0],
    ]);
  });
});

/** Points turned by 0.6 rad about the origin and moved, so that no two share a coordinate. */
const tilted = (points: ArrayLike<number>): number[] =>
  Array.from(points, (v, i) =>
    i % 2 === 0
      ? 7 + v * Math.cos(0.6) - points[i + 1]! * Math.sin(0.6)
      : 3 + points[i - 1]! * Math.sin(0.6) + v * Math.cos(0.6),
  );

describe('a strip and a box that lie aslant', () => {
  const obstacle = growOutline(tilted([0.9, -0.1, 2.6, -0.1, 2.6, 5, 0.9, 5]), true, 0, 1);
  const aslant = () => {
    const space = laid(obstacle);
    space.nodes.set(tilted(space.nodes));
    pairContacts(space, obstacle, space.nodes);
    return space;
  };

  it('are paired as they are when level', () => {
    const space = aslant();
    expect([...space.nodeEdge.slice(2, 6)]).toEqual([0, 0, 0, 0]);
    expect([...space.vertexNode]).toEqual([2, 5, 5, 2]);
    // Up the right side of the box, away from its corners.
    space.nodes.set(tilted(Array.from({ length: 8 }, (_, k) => [2.7, 1 + k / 2]).flat()));
    pairContacts(space, obstacle, space.nodes);
    expect([...space.nodeEdge]).toEqual(Array(8).fill(1));
    expect([...space.vertexNode]).toEqual([1, 1, 6, 6]);
  });

  it('have the forces, energy and depth that they have when level', () => {
    const space = aslant();
    expect(addContact(space, obstacle, space.nodes, RHO, 'energy')).toBeCloseTo(6 * 0.05, 12);
    expect(largestPenetration(space, obstacle, space.nodes)).toBeCloseTo(0.1, 12);
    expect(updateMultipliers(space, obstacle, space.nodes, RHO)).toBeCloseTo(0.1, 12);
    expect([...space.nodeForce]).toEqual(closeTo([0, 0, 1, 1, 1, 1, 0, 0]));
    expect([...space.vertexForce]).toEqual(closeTo([1, 1, 0, 0]));
  });
});

describe('a wall whose ends lie beyond those of the strip', () => {
  const wall = growOutline([-9, -0.1, 9, -0.1], false, 0, 1);

  it('pushes on every node, more at every pass, and its ends on nothing', () => {
    const space = laid(wall);
    // The last vertex that was measured, a corner of a box, was entered by 0.1.
    const last = growOutline([2.6, 5, 0.9, 5, 0.9, -0.1, 2.6, -0.1], true, 0, 1);
    const measureCorner = () => largestPenetration(laid(last), last, space.nodes);
    for (const pushes of [1, 2]) {
      measureCorner();
      expect(updateMultipliers(space, wall, space.nodes, RHO)).toBeCloseTo(0.1, 12);
      expect([...space.nodeForce]).toEqual(closeTo(Array(8).fill(pushes)));
      expect([...space.vertexForce]).toEqual([0, 0]);
    }
    space.nodeForce.fill(0);
    measureCorner();
    expect(addContact(space, wall, space.nodes, RHO, 'energy')).toBeCloseTo(8 * 0.05, 12);
    expect([...space.vertexNode]).toEqual([1, 6]);
    space.held.fill(1);
    measureCorner();
    expect(largestPenetration(space, wall, space.nodes)).toBe(0);
  });
});

describe('a strip 0.1 inside the lower side of a box', () => {
  const obstacle = box(-0.1);
  const inside = [0, 0, 1, 1, 1, 1, 0, 0];

  it('is pushed by the corners alone where its nodes are held, by rho 0.1 more at every pass', () => {
    const space = laid(obstacle);
    space.held.fill(1);
    for (const pushes of [1, 2]) {
      expect(updateMultipliers(space, obstacle, space.nodes, RHO)).toBeCloseTo(0.1, 12);
      expect([...space.vertexForce]).toEqual(closeTo([pushes, pushes, 0, 0]));
    }
    // From 2 to 3 each: (3^2 - 2^2) / 2 rho.
    expect(addContact(space, obstacle, space.nodes, RHO, 'energy')).toBeCloseTo((2 * (9 - 4)) / (2 * RHO), 12);
  });

  it('has its corners followed along the strip as it slides', () => {
    const space = laid(obstacle);
    const slid = space.nodes.map((v, i) => (i % 2 === 0 ? v - 0.5 : v));
    addContact(space, obstacle, slid, RHO, 'energy');
    expect([...space.vertexNode.slice(0, 2)]).toEqual([3, 6]);
  });

  it('takes a force of rho 0.1 at every node over the side and at both corners, and more at every pass', () => {
    const space = laid(obstacle);
    expect(updateMultipliers(space, obstacle, space.nodes, RHO)).toBeCloseTo(0.1, 12);
    expect([...space.nodeForce]).toEqual(closeTo(inside));
    expect([...space.vertexForce]).toEqual(closeTo([1, 1, 0, 0]));
    updateMultipliers(space, obstacle, space.nodes, RHO);
    expect([...space.nodeForce]).toEqual(closeTo(inside.map((force) => 2 * force)));
  });

  it('lets go where it has moved away, and says by how much the forces jumped', () => {
    const space = laid(obstacle);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    const away = space.nodes.map((v, i) => (i % 2 === 1 ? v - 0.5 : v));
    // The gap of 0.4 would pull by 4, more than the 2 that push.
    expect(updateMultipliers(space, obstacle, away, RHO)).toBeCloseTo(0.2, 12);
    expect(space.nodeForce.every((force) => force === 0)).toBe(true);
    expect(space.vertexForce.every((force) => force === 0)).toBe(true);
    expect(largestPenetration(space, obstacle, away)).toBe(0);
  });

  it('counts how far the smooth strip stands inside of its polygon at the corners', () => {
    const space = laid(obstacle);
    space.vertexSag.fill(0.05);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    expect([...space.vertexForce]).toEqual(closeTo([0.5, 0.5, 0, 0]));
    expect(largestPenetration(space, obstacle, space.nodes)).toBeCloseTo(0.1, 12);
    space.vertexSag.fill(-0.05);
    expect(largestPenetration(space, obstacle, space.nodes)).toBeCloseTo(0.15, 12);
  });

  it('has no force at held nodes', () => {
    const space = laid(obstacle);
    // Only across: a node of a slide.
    space.held[2 * 3 + 1] = 1;
    expect(addContact(space, obstacle, space.nodes, RHO, 'hessian')).toBeCloseTo(5 * 0.05, 12);
    // The share of the corner at x = 0.9, as below.
    expect(space.gradient[2 * 3 + 1]).toBeCloseTo(0.045, 12);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    expect([...space.nodeForce]).toEqual(closeTo([0, 0, 1, 0, 1, 1, 0, 0]));
    space.nodeForce.fill(0);
    space.vertexForce.fill(0);
    space.held.fill(1);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    expect(space.nodeForce.every((force) => force === 0)).toBe(true);
    space.vertexSag.fill(1);
    expect(largestPenetration(space, obstacle, space.nodes)).toBe(0);
    space.vertexForce.fill(0);
    expect(addContact(space, obstacle, space.nodes, RHO, 'energy')).toBe(0);
  });

  it('adds an energy of rho 0.1^2 / 2 a contact, and force and stiffness only where they are asked for', () => {
    const space = laid(obstacle);
    // Four nodes and two corners.
    expect(addContact(space, obstacle, space.nodes, RHO, 'energy')).toBeCloseTo(6 * 0.05, 12);
    expect(space.gradient.every((value) => value === 0)).toBe(true);
    addContact(space, obstacle, space.nodes, RHO, 'hessian');
    const y = 2 * 3 + 1;
    expect(space.gradient[2 * 3]).toBeCloseTo(0, 12);
    // Pushed down, out of the solid, by the side and by w = (1/2 - 0.2)^2 / 2 = 0.045 of the corner's force at x = 0.9.
    expect(space.gradient[y]).toBeCloseTo(1.045, 12);
    // rho (1 + w^2) and g w'^2 / l^2 of the corner, g = -0.1, w' = 0.3, l = 0.5.
    expect(space.band[y * ROW_STRIDE + HALF_BANDWIDTH]).toBeCloseTo(RHO * (1 + 0.045 ** 2) - 0.1 * 0.6 ** 2, 12);
  });

  it('gets back the energy of a force whose contact has opened: less m^2 / 2 rho', () => {
    const space = laid(obstacle);
    space.nodeForce.fill(2);
    const away = space.nodes.map((v, i) => (i % 2 === 1 ? v - 9 : v));
    expect(addContact(space, obstacle, away, RHO, 'energy')).toBeCloseTo(8 * -0.2, 12);
  });
});

describe('a node past a corner', () => {
  it('takes no force: the corner itself makes the contact', () => {
    const obstacle = box(0.01);
    const space = laid(obstacle);
    space.nodeForce.fill(9);
    updateMultipliers(space, obstacle, space.nodes, RHO);
    // Over the side the gap of 0.01 takes 0.1 of the 9; nodes 0 and 1 are past the first corner, 6 and 7 past the second.
    expect([...space.nodeForce]).toEqual(closeTo([0, 0, 8.9, 8.9, 8.9, 8.9, 0, 0]));
  });
});
