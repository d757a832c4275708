import { describe, expect, it } from 'vitest';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import type { StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { readSolution } from '../../../src/core/strip/stripSolution.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';

const STIFFNESS = 30;
const free = { kind: 'free' } as const;
const still = { fx: 0, fy: 0, moment: 0, slide: 0, stop: 0 };
const unheld: StripProblem = { length: 2.5, stretchStiffness: STIFFNESS, start: free, end: free };
const closeTo = (value: number) => expect.closeTo(value, 12);

/** Six nodes 0.6 apart on the x axis, edges 0.5 at rest. */
function laid() {
  const space = createStripWorkspace(4);
  space.spacing = 0.5;
  space.nodes.set([0, 1, 2, 3, 4, 5].flatMap((k) => [0.6 * k, 0]));
  return space;
}

const read = (space = laid(), problem = unheld, counts = { iterations: 7, residual: 0.25 }, gap = 0.125) =>
  readSolution(space, problem, 'stalled', counts, gap, 'why');

describe('a solution', () => {
  it('carries status, message, counts and spacing on, and a copy of the nodes', () => {
    const space = laid();
    const solution = read(space);
    expect(solution).toMatchObject({
      status: 'stalled',
      message: 'why',
      iterations: 7,
      residual: 0.25,
      contactGap: 0.125,
    });
    expect(solution).toMatchObject({ spacing: 0.5, contacts: [], start: still, end: still });
    expect(solution.nodes).toEqual(space.nodes);
    space.nodes.fill(0);
    expect(solution.nodes[2]).toBe(0.6);
  });

  it('stores EA/(2h) 0.1^2 in each of five edges drawn 0.1 longer, less the work of the loads', () => {
    const space = laid();
    expect(read(space).energy).toBeCloseTo((5 * 30 * 0.01) / (2 * 0.5), 12);
    // A force of 2 along x at node 5, which stands at 3.
    space.load[10] = 2;
    expect(read(space).energy).toBeCloseTo(1.5 - 6, 12);
  });

  const nothing = { residual: 0, contactGap: 0, nodes: new Float64Array(0), spacing: 0, energy: 0, contacts: [] };
  const held: StripProblem = {
    ...unheld,
    start: { kind: 'clamp', x: 0, y: 0, angle: 0 },
    end: { kind: 'clamp', x: 3, y: 0, angle: 0 },
    obstacle: growOutline([-1, 0, 4, 0], false, 0, 1),
  };
  const pushed = () => {
    const space = laid();
    space.force.fill(1);
    space.nodeForce.fill(1);
    return space;
  };

  it.each([
    ['a node is not finite', (space: ReturnType<typeof laid>) => space.nodes.fill(Number.NaN, 11), 0.25],
    ['the energy overflows', (space: ReturnType<typeof laid>) => space.nodes.fill(1e200, 11), 0.25],
    ['the residual is not a number', () => {}, Number.NaN],
  ])('is empty and not finite where %s', (_, spoil, residual) => {
    const space = pushed();
    spoil(space);
    const solution = readSolution(space, held, 'converged', { iterations: 7, residual }, 0.125, '');
    expect(solution).toEqual({ ...nothing, status: 'notFinite', message: '', iterations: 7, start: still, end: still });
  });

  it('of bad input is empty and says so, whatever the workspace holds', () => {
    for (const residual of [0.25, Number.NaN]) {
      const solution = readSolution(pushed(), held, 'badInput', { iterations: 0, residual }, 0.125, 'length: got 0');
      const message = 'length: got 0';
      expect(solution).toEqual({ ...nothing, status: 'badInput', message, iterations: 0, start: still, end: still });
    }
  });

  it('shows no depth where that is not finite', () => {
    expect(read(laid(), unheld, { iterations: 0, residual: 0 }, Number.POSITIVE_INFINITY).contactGap).toBe(0);
  });
});

describe('the reaction of a held end', () => {
  const reactions = () => {
    const space = laid();
    space.force.set([1, 2, 3, 4, 0, 0, 0, 0, 5, -6, -7, 9]);
    space.nodes.set([0.1, 0.2], 0);
    space.stopForce.set([8, 3, 1, 6]);
    return read(space, {
      ...unheld,
      start: { kind: 'clamp', x: 0.3, y: 0.1, angle: 0 },
      end: { kind: 'slide', x: 2.5, y: -0.5, angle: 0 },
    });
  };

  it('is the sum of the forces on its two nodes, and their moment about its point', () => {
    const { start, end } = reactions();
    // At the start levers (-0.2, 0.1) and (0.3, -0.1); at the end, about (2.5, -0.5), (-0.1, 0.5) and (0.5, 0.5).
    expect(start).toMatchObject({ fx: 4, fy: 6, moment: closeTo(-0.2 * 2 - 0.1 * 1 + 0.3 * 4 + 0.1 * 3) });
    expect(end).toMatchObject({ fx: -2, fy: 3, moment: closeTo(-0.1 * -6 - 0.5 * 5 + 0.5 * 9 - 0.5 * -7) });
  });

  it('tells the slide of an end, and the force of its least stop less that of its most', () => {
    const { start, end } = reactions();
    // The middle of the last edge at rest, half of 0.5 before node 5 at x = 3, has slid past 2.5.
    expect(end).toMatchObject({ slide: closeTo(0.25), stop: -5 });
    expect(start).toMatchObject({ slide: 0, stop: 5 });
  });
});

describe('the contacts', () => {
  /** Turns x and y so that the x axis, and the strip with it, runs along (4, 3) / 5. */
  const tilted = (points: ArrayLike<number>): number[] =>
    Array.from(points, (v, i) => (i % 2 === 0 ? 0.8 * v - 0.6 * points[i + 1]! : 0.6 * points[i - 1]! + 0.8 * v));
  const laidTilted = () => {
    const space = laid();
    space.nodes.set(tilted(space.nodes));
    return space;
  };
  /** Lower side of a solid to the left of the strip, 0.1 off it, from 0.3 to 2.5 along it. */
  const obstacle = growOutline(tilted([0.3, 5, 0.3, 0.1, 2.5, 0.1, 2.5, 5]), false, 0, 1);

  it('are the nodes that push, along the normal of their edge, then the vertices, along that of the strip', () => {
    const space = laidTilted();
    space.nodeForce.set([0, 0, 2, Number.NaN, 3, 0]);
    space.nodeEdge.fill(1);
    space.vertexForce = Float64Array.of(0, 4, 5, 0);
    space.vertexNode = Int32Array.of(1, 1, 4, 4);
    const { contacts } = read(space, { ...unheld, obstacle });
    const at = (x: number, y: number, push: number) => {
      const place = tilted([x, y]).map(closeTo);
      // To the right of the strip, away from the solid.
      return { x: place[0], y: place[1], fx: closeTo(0.6 * push), fy: closeTo(-0.8 * push) };
    };
    // The strip's piece round node 1 runs from 0.3 to 0.9, the one round node 4 from 2.1 to 2.7.
    expect(contacts).toEqual([
      { kind: 'edge', index: 1, place: 2, ...at(1.2, 0, 2) },
      { kind: 'edge', index: 1, place: 4, ...at(2.4, 0, 3) },
      { kind: 'vertex', index: 1, place: closeTo(0.5), ...at(0.3, 0.1, 4) },
      { kind: 'vertex', index: 2, place: closeTo(4 + 1 / 6), ...at(2.5, 0.1, 5) },
    ]);
  });

  it('count the first node and the first vertex, and no vertex beyond the strip', () => {
    const space = laid();
    space.nodeForce[0] = 1;
    space.vertexForce = Float64Array.of(2, 3);
    space.vertexNode = Int32Array.of(1, 4);
    const { contacts } = read(space, { ...unheld, obstacle: growOutline([1.2, 0.1, 9, 0.1], false, 0, 1) });
    expect(contacts.map(({ kind, index }) => [kind, index])).toEqual([
      ['edge', 0],
      ['vertex', 0],
    ]);
  });

  it('are none without an obstacle, whatever force is left there by an earlier problem', () => {
    const space = laid();
    space.nodeForce.fill(1);
    space.vertexForce = Float64Array.of(2);
    expect(read(space).contacts).toEqual([]);
  });
});
