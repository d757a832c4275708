import { describe, expect, it } from 'vitest';
import { HALF_BANDWIDTH, ROW_STRIDE } from '../../../src/core/strip/bandedLdl.ts';
import { addStops, slideOf, updateStops } from '../../../src/core/strip/slideStops.ts';
import type { SlideEnd, StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { createStripWorkspace, type StripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';
import { nth } from '../../nth.ts';

/** The start's line runs along (3, 4) / 5, the end's along (4, 3) / 5. */
const ANGLES = [Math.atan2(4, 3), Math.atan2(3, 4)] as const;
const LAST = 2 * 5;
const PENALTY = 100;

/** A strip of six nodes whose start has slid by `start` past (1, 2) and whose end by `end` past (7, 10). */
function slid(start: number, end: number, stops: Partial<SlideEnd>[] = [{}, {}]) {
  const space = createStripWorkspace(4);
  space.spacing = 0.4;
  // A slide lies in the middle of the outermost edge, so its outer node stands half an edge, 0.2, beyond it.
  space.nodes.set([1 + 0.6 * (start - 0.2), 2 + 0.8 * (start - 0.2)], 0);
  space.nodes.set([7 + 0.8 * (end + 0.2), 10 + 0.6 * (end + 0.2)], LAST);
  const problem: StripProblem = {
    length: 10,
    stretchStiffness: 1000,
    start: { kind: 'slide', x: 1, y: 2, angle: ANGLES[0], ...stops[0] },
    end: { kind: 'slide', x: 7, y: 10, angle: ANGLES[1], ...stops[1] },
  };
  return { space, problem };
}

/** The energy that the stops add to an empty workspace, with gradient and Hessian at the two outer nodes. */
function stopsOf({ space, problem }: { space: StripWorkspace; problem: StripProblem }) {
  space.gradient.fill(0);
  space.band.fill(0);
  const energy = addStops(space, problem, space.nodes, PENALTY, 'hessian');
  const entry = (r: number, c: number) => nth(space.band, r * ROW_STRIDE + HALF_BANDWIDTH + c - r);
  const at = (r: number) => ({
    gradient: [nth(space.gradient, r), nth(space.gradient, r + 1)],
    hessian: [entry(r, r), entry(r + 1, r), entry(r + 1, r + 1)],
  });
  return { energy, start: at(0), end: at(LAST) };
}

const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

describe('how far an end has slid', () => {
  it('is measured along its line, from its point to the middle of the outermost edge', () => {
    const { space, problem } = slid(0.3, -0.5);
    expect(slideOf(space, problem.start, 0, space.nodes)).toBeCloseTo(0.3, 12);
    expect(slideOf(space, problem.end, 1, space.nodes)).toBeCloseTo(-0.5, 12);
    // Across the line nothing slides.
    space.nodes[0]! += 0.8;
    space.nodes[1]! -= 0.6;
    expect(slideOf(space, problem.start, 0, space.nodes)).toBeCloseTo(0.3, 12);
    expect(slideOf(space, { ...problem.start, kind: 'clamp' } as never, 0, space.nodes)).toBe(0);
  });
});

describe('a stop', () => {
  // 0.05 too far: energy 100 x 0.05^2 / 2, force 100 x 0.05 = 5 back along the line, stiffness 100 along it.
  const none = { gradient: [0, 0], hessian: [0, 0, 0] };
  it.each([
    ['start', 'its least slide', slid(-0.25, 0, [{ min: -0.2 }, {}]), [-3, -4], [36, 48, 64]],
    ['start', 'its most', slid(0.25, 0, [{ max: 0.2 }, {}]), [3, 4], [36, 48, 64]],
    ['end', 'its least slide', slid(0, -0.25, [{}, { min: -0.2 }]), [-4, -3], [64, 48, 36]],
    ['end', 'its most', slid(0, 0.25, [{}, { max: 0.2 }]), [4, 3], [64, 48, 36]],
  ] as const)('pushes the %s that is past %s back, and nothing else', (side, _, strip, gradient, hessian) => {
    const { energy, ...ends } = stopsOf(strip);
    expect(energy).toBeCloseTo(0.125, 12);
    expect(ends[side]).toEqual({ gradient: closeTo(gradient), hessian: closeTo(hessian) });
    expect(ends[side === 'start' ? 'end' : 'start']).toEqual(none);
  });

  it('that is not reached does nothing', () => {
    const strip = slid(0, 0, [
      { min: -0.2, max: 0.2 },
      { min: -0.2, max: 0.2 },
    ]);
    expect(stopsOf(strip)).toEqual({ energy: 0, start: none, end: none });
    expect(updateStops(strip.space, strip.problem, strip.space.nodes, PENALTY)).toBe(0);
  });

  it('adds to what is there, and only the energy where only that is asked for', () => {
    const { space, problem } = slid(0.25, 0, [{ max: 0.2 }, {}]);
    const there = (_: number, i: number): number => i;
    space.gradient.set(space.gradient.map(there));
    space.band.set(space.band.map(there));
    expect(addStops(space, problem, space.nodes, PENALTY, 'energy')).toBeCloseTo(0.125, 12);
    for (const values of [space.gradient, space.band]) expect(values).toEqual(values.map(there));
    addStops(space, problem, space.nodes, PENALTY, 'hessian');
    expect([...space.gradient.slice(0, 3)]).toEqual(closeTo([0 + 3, 1 + 4, 2]));
    const [first, second] = [HALF_BANDWIDTH, ROW_STRIDE + HALF_BANDWIDTH];
    expect([first, second - 1, second].map((i) => nth(space.band, i) - i)).toEqual(closeTo([36, 48, 64]));
  });

  it('keeps its force as a multiplier: it then pushes by 5 with no gap left, and lets go as the end leaves it', () => {
    const { space, problem } = slid(0.25, 0, [{ max: 0.2 }, {}]);
    expect(updateStops(space, problem, space.nodes, PENALTY)).toBeCloseTo(0.05, 12);
    expect([...space.stopForce]).toEqual(closeTo([0, 5, 0, 0]));
    const seated = slid(0.2, 0, [{ max: 0.2 }, {}]);
    seated.space.stopForce[1] = 5;
    const { energy, start } = stopsOf(seated);
    expect(energy).toBeCloseTo(0, 12);
    expect(start.gradient).toEqual(closeTo([3, 4]));
    expect(updateStops(seated.space, seated.problem, seated.space.nodes, PENALTY)).toBeCloseTo(0, 12);
    // 0.15 clear of the stop the spring would pull by 15, more than the 5 that are kept: the stop lets go.
    const away = slid(0.05, 0, [{ max: 0.2 }, {}]);
    away.space.stopForce[1] = 5;
    expect(stopsOf(away)).toMatchObject({ energy: expect.closeTo(-0.125, 12), start: none });
    expect(updateStops(away.space, away.problem, away.space.nodes, PENALTY)).toBeCloseTo(0.05, 12);
    expect(away.space.stopForce[1]).toBe(0);
  });

  it('holds no end that does not slide, whatever force is left there by an earlier problem', () => {
    const { space, problem } = slid(0.25, 0.25, [{ max: 0.2 }, { max: 0.2 }]);
    space.stopForce.fill(5);
    const clamped = { ...problem, start: { ...problem.start, kind: 'clamp' }, end: { kind: 'free' } } as StripProblem;
    expect(stopsOf({ space, problem: clamped })).toEqual({ energy: 0, start: none, end: none });
  });
});
