import { describe, expect, it } from 'vitest';
import { pairContacts } from '../../../src/core/strip/contact.ts';
import { balance, type NewtonState } from '../../../src/core/strip/newton.ts';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { loadProblem } from '../../../src/core/strip/stripEnds.ts';
import type { StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { type StripSettings, stripSettings } from '../../../src/core/strip/stripSettings.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';

const PENALTY = 1e4;
const STIFFNESS = 1000;
const free = { kind: 'free' } as const;
const clamp = { kind: 'clamp', x: 0, y: 0, angle: 0 } as const;
/** Four segments between the clamp and the free end: edges of 1, nodes at -0.5, 0.5, 1.5 up to 4.5. */
const pulled = (force: number, more: Partial<StripProblem> = {}): StripProblem => ({
  length: 4.5,
  stretchStiffness: STIFFNESS,
  start: clamp,
  end: free,
  loads: [{ at: 1, fx: force, fy: 0 }],
  ...more,
});

/** A strip laid straight at rest from a clamp in `direction`, `along` the first node. */
function laid(problem: StripProblem, direction = 0, along = -0.5) {
  const space = createStripWorkspace(4);
  loadProblem(space, problem);
  for (let k = 0; k < space.count; k++) {
    space.nodes[2 * k] = (along + k * space.spacing) * Math.cos(direction);
    space.nodes[2 * k + 1] = (along + k * space.spacing) * Math.sin(direction);
  }
  return space;
}

function balanced(
  problem: StripProblem,
  settings: Partial<StripSettings> = {},
  tolerance = 1e-9,
  space = laid(problem),
  iterations = 0,
) {
  const state: NewtonState = { iterations, residual: Number.NaN, energy: Number.NaN };
  const outcome = balance(space, problem, { ...stripSettings, ...settings }, PENALTY, tolerance, state);
  return { outcome, ...state, nodes: [...space.nodes], x: [...space.nodes.filter((_, i) => i % 2 === 0)], space };
}

const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

describe('a straight strip pulled along itself', () => {
  it('draws every edge by F h / EA, in one step, since its energy is quadratic', () => {
    const { outcome, iterations, x, energy, residual } = balanced(pulled(50));
    expect([outcome, iterations]).toEqual(['balanced', 1]);
    // The edge in the clamp is held at rest, the other four are 0.05 longer.
    expect(x).toEqual(closeTo([-0.5, 0.5, 1.55, 2.6, 3.65, 4.7]));
    // 4 edges of EA 0.05^2 / 2 h, less the work of 50 over the place 4.7.
    expect(energy).toBeCloseTo(5 - 235, 9);
    expect(residual).toBeLessThan(1e-9);
  });

  it('needs no step where its largest force is within the tolerance', () => {
    const at = balanced(pulled(-50), { maxIterations: 0 }, 50);
    expect(at).toMatchObject({ outcome: 'balanced', iterations: 0, residual: 50, energy: 225 });
    expect(balanced(pulled(-50), { maxIterations: 0 }, 49.9)).toMatchObject({ outcome: 'iterationCap', iterations: 0 });
  });

  it('is balanced where its force is below the rounding of its places, 4 eps EA L / h', () => {
    const noise = 4 * Number.EPSILON * STIFFNESS * 4.5;
    expect(balanced(pulled(0.99 * noise), { maxIterations: 0 }, 0).outcome).toBe('balanced');
    expect(balanced(pulled(1.01 * noise), { maxIterations: 0 }, 0).outcome).toBe('iterationCap');
    // Half as long, with edges half as long: the same number of edges share the length.
    expect(balanced(pulled(0.99 * noise, { length: 2.25 }), { maxIterations: 0 }, 0).outcome).toBe('balanced');
  });

  it('counts its iterations on from those spent, and stops at the cap', () => {
    expect(balanced(pulled(50), { maxIterations: 9 }, 1e-9, undefined, 9)).toMatchObject({
      outcome: 'iterationCap',
      iterations: 9,
    });
    expect(balanced(pulled(50), { maxIterations: 9 }, 1e-9, undefined, 8)).toMatchObject({
      outcome: 'balanced',
      iterations: 9,
    });
  });

  it('moves no node farther in a step than the cap allows, all in proportion', () => {
    // The whole step moves the end node by 0.2, edges are 1 long.
    const { outcome, x } = balanced(pulled(50), { stepCap: 0.05, maxIterations: 1 });
    expect(outcome).toBe('iterationCap');
    expect(x).toEqual(closeTo([-0.5, 0.5, 1.5125, 2.525, 3.5375, 4.55]));
    expect(balanced(pulled(50), { stepCap: 0.05 })).toMatchObject({ outcome: 'balanced', iterations: 4 });
    // A strip twice as long has edges of 2.
    const long = pulled(50, { length: 9 });
    expect(balanced(long, { stepCap: 0.05, maxIterations: 1 }, 1e-9, laid(long, 0, -1)).x[5]).toBeCloseTo(9.1, 12);
  });

  it('halves a step until the energy falls by its share of the predicted drop', () => {
    // A share s of the step delivers 1 - s/2 of what the slope predicts: 0.9 of it from 1/8 on, 0.6 from 1/2 on, 0.5 at once.
    const moved = (armijo: number, maxBacktracks: number) => {
      const { outcome, x } = balanced(pulled(50), { armijo, maxBacktracks, maxIterations: 1 });
      return [outcome, expect.closeTo((x[5]! - 4.5) / 0.2, 9)];
    };
    expect(moved(0.499, 0)).toEqual(['balanced', 1]);
    expect(moved(0.6, 1)).toEqual(['iterationCap', 0.5]);
    expect(moved(0.9, 3)).toEqual(['iterationCap', 0.125]);
    expect(moved(0.9, 2)).toEqual(['stalled', 0]);
  });
});

describe('a matrix that is not positive definite', () => {
  /** Every pivot must pass 5e8: shifts 0, 1e6, 1e7 and 1e8 do not, 1e9 does. */
  const shifts = { minPivot: 5e8, firstShift: 1e6, shiftGrowth: 10, maxIterations: 1 };

  it('is shifted ever more until it is, and the step is the force over the shift', () => {
    const { outcome, x } = balanced(pulled(1e5), { ...shifts, maxShifts: 4 });
    expect(outcome).toBe('iterationCap');
    // The stiffness of some 1e3 is a millionth of the shift.
    expect(((x[5]! - 4.5) * 1e9) / 1e5).toBeCloseTo(1, 5);
    expect(balanced(pulled(1e5), { ...shifts, maxShifts: 3 }).outcome).toBe('stalled');
  });

  it('of a strip that nothing holds needs one shift', () => {
    const loose = pulled(0, {
      start: free,
      length: 5,
      loads: [
        { at: 0, fx: -50, fy: 0 },
        { at: 1, fx: 50, fy: 0 },
      ],
    });
    expect(balanced(loose, { maxShifts: 0 }, 1e-6, laid(loose)).outcome).toBe('stalled');
    const { outcome, x } = balanced(loose, { maxShifts: 1 }, 1e-6, laid(loose));
    expect(outcome).toBe('balanced');
    expect(x[5]! - x[0]!).toBeCloseTo(5.25, 9);
  });
});

describe('a strip whose steps are too small for its energy to show', () => {
  it.each([5, 20])('takes %i of them where so many are allowed, then counts as stalled', (maxBlind) => {
    // The first step gains 0.01, more than 1e-13 of the 1e8 of work that the load has done; the rest gain next to nothing.
    // 1e8 from the origin places are rounded to 1.5e-8 and forces to 1.5e-5, above the tolerance.
    const far = pulled(1, { start: { ...clamp, x: 1e8 } });
    const space = laid(far, 0, 1e8 - 0.5);
    expect(balanced(far, { maxBlind }, 1e-12, space)).toMatchObject({ outcome: 'stalled', iterations: maxBlind + 2 });
    // F h / EA a strained edge.
    expect(space.nodes[10]! - 1e8 - 4.5).toBeCloseTo(0.004, 6);
  });
});

describe('a strip that has degenerated', () => {
  it.each([
    ['two nodes in one place', [1.5, 0, 1.5, 0]],
    ['a node that is not finite', [1.5, 0, Number.NaN, 0]],
    ['a node so far off that its energy overflows', [1.5, 0, 1e200, 0]],
  ])('with %s is not finite, and stays where it is', (_, places) => {
    const space = laid(pulled(1));
    space.nodes.set(places, 4);
    const before = [...space.nodes];
    expect(balanced(pulled(1), {}, 1e-9, space)).toMatchObject({ outcome: 'notFinite', iterations: 0, nodes: before });
  });
});

describe('an end that slides', () => {
  const angle = Math.atan2(3, 4);
  const sliding = (more: object = {}): StripProblem => ({
    length: 4,
    stretchStiffness: STIFFNESS,
    start: { kind: 'clamp', x: 0, y: 0, angle },
    end: { kind: 'slide', x: 3.2, y: 2.4, angle, force: 50, ...more },
  });

  it('moves along its line until the strip carries its load', () => {
    const { outcome, iterations, nodes } = balanced(sliding(), {}, 1e-9, laid(sliding(), angle));
    expect([outcome, iterations]).toEqual(['balanced', 1]);
    // Edges of 1, four of them 0.05 longer: the last node at 4.5 + 0.2 along (4, 3) / 5.
    expect(nodes.slice(-2)).toEqual(closeTo([0.8 * 4.7, 0.6 * 4.7]));
  });

  it('presses on its stop with what the strip does not carry', () => {
    // EA u / 4 h + penalty (u - 0.1) = 50 with EA = 1000, penalty 1e4
    const stopped = sliding({ max: 0.1 });
    const { outcome, nodes } = balanced(stopped, {}, 1e-9, laid(stopped, angle));
    expect(outcome).toBe('balanced');
    expect(nodes[10]! / 0.8 - 4.5).toBeCloseTo(1050 / 10250, 12);
  });
});

describe('a strip pressed on a wall', () => {
  it('sinks into it by the force on a node over the penalty', () => {
    const problem: StripProblem = {
      length: 5,
      stretchStiffness: STIFFNESS,
      start: free,
      end: free,
      // The solid is to the left of the strip, above the x axis.
      obstacle: growOutline([-9, 0, 9, 0], false, 0, 1),
    };
    const space = laid(problem);
    pairContacts(space, problem.obstacle!, space.nodes);
    for (let k = 0; k < space.count; k++) space.load[2 * k + 1] = 20;
    // Clear of the wall the contacts do not show: begin a little inside.
    for (let k = 0; k < space.count; k++) space.nodes[2 * k + 1] = 1e-3;
    const { outcome, nodes, energy } = balanced(problem, {}, 1e-9, space);
    expect(outcome).toBe('balanced');
    // Of each of six nodes p^2 / 2 rho, less the work of its load of 20 over 20 / rho.
    expect(energy).toBeCloseTo((-6 * 20 ** 2) / (2 * PENALTY), 12);
    expect(nodes.filter((_, i) => i % 2 === 1)).toEqual(closeTo(Array(6).fill(20 / PENALTY)));
  });
});
