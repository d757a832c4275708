import { describe, expect, it } from 'vitest';
import { HALF_BANDWIDTH, ROW_STRIDE } from '../../../src/core/strip/bandedLdl.ts';
import { holdEnds, loadProblem, placeEnds, releaseStep } from '../../../src/core/strip/stripEnds.ts';
import type { StripEnd, StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';
import { nth } from '../../nth.ts';

const free: StripEnd = { kind: 'free' };
const clamp: StripEnd = { kind: 'clamp', x: 1, y: 2, angle: Math.atan2(4, 3) };
const slide: StripEnd = { kind: 'slide', x: 7, y: 10, angle: Math.atan2(3, 4) };
const problemOf = (start: StripEnd, end: StripEnd, more: Partial<StripProblem> = {}): StripProblem => ({
  length: 6,
  stretchStiffness: 1,
  start,
  end,
  ...more,
});
const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

/** Four segments, six nodes. */
const loaded = (problem: StripProblem) => {
  const space = createStripWorkspace(4);
  for (const values of [space.load, space.restTurn, space.held]) values.fill(9);
  loadProblem(space, problem);
  return space;
};

describe('a problem written into the workspace', () => {
  it.each([
    [free, free, 1.2],
    [clamp, free, 6 / 4.5],
    [free, slide, 6 / 4.5],
    [clamp, slide, 1.5],
  ] as const)('has edges of the length less half an edge beyond each held end (%#)', (start, end, spacing) => {
    expect(loaded(problemOf(start, end)).spacing).toBeCloseTo(spacing, 12);
  });

  it('holds both coordinates of a clamp, and of a slide the one across', () => {
    expect([...loaded(problemOf(clamp, slide)).held]).toEqual([1, 1, 1, 1, 0, 0, 0, 0, 0, 1, 0, 1]);
    expect([...loaded(problemOf(slide, clamp)).held]).toEqual([0, 1, 0, 1, 0, 0, 0, 0, 1, 1, 1, 1]);
    expect(loaded(problemOf(free, free)).held.every((held) => held === 0)).toBe(true);
  });

  it('shares a load between the two nodes beside it, by nearness', () => {
    // Nodes every 1.2; 0.25 of 6 is 1.5, a quarter of the way from node 1 to node 2.
    const { load } = loaded(problemOf(free, free, { loads: [{ at: 0.25, fx: 4, fy: -8 }] }));
    expect([...load]).toEqual(closeTo([0, 0, 3, -6, 1, -2, 0, 0, 0, 0, 0, 0]));
  });

  it('puts loads at the very ends on the end nodes, and adds up those at one place', () => {
    const loads = [
      { at: 1, fx: 1, fy: 2 },
      { at: 1, fx: 3, fy: 4 },
      { at: 0, fx: 5, fy: 6 },
    ];
    expect([...loaded(problemOf(free, free, { loads })).load]).toEqual(closeTo([5, 6, 0, 0, 0, 0, 0, 0, 0, 0, 4, 6]));
    expect(loaded(problemOf(free, free)).load.every((force) => force === 0)).toBe(true);
    // Between clamps half an edge apart from the nodes: in the middle of the first edge.
    const { load } = loaded(problemOf(clamp, clamp, { loads: [{ at: 0, fx: 2, fy: 4 }] }));
    expect([...load.slice(0, 6)]).toEqual(closeTo([1, 2, 1, 2, 0, 0]));
  });

  it('pulls a slide along its line', () => {
    const pulled = { ...slide, force: 5 } as StripEnd;
    expect([...loaded(problemOf(free, pulled)).load.slice(8)]).toEqual(closeTo([0, 0, 4, 3]));
    expect([...loaded(problemOf(pulled, free)).load.slice(0, 4)]).toEqual(closeTo([4, 3, 0, 0]));
    expect(loaded(problemOf(slide, slide)).load.every((force) => force === 0)).toBe(true);
  });

  it('rests at the turn of its rest angles from one edge to the next', () => {
    // Angles rise by 0.6 over the first half and by 1.2 over the second, 3 of length each, edges of 1.5.
    const { restTurn } = loaded(problemOf(clamp, clamp, { restAngle: [0.1, 0.7, 1.9] }));
    // Node 1 is at 0.75, its edges have their middles at 0 and 1.5; node 3 at 3.75 between 3 and 4.5.
    expect([...restTurn]).toEqual(closeTo([0, 0.3, 0.3, 0.6, 0.6, 0]));
    expect(loaded(problemOf(clamp, clamp)).restTurn.every((turn) => turn === 0)).toBe(true);
  });
});

describe('held end nodes', () => {
  it('stand half an edge before and behind a clamp on its line, and sag to its left', () => {
    const space = loaded(problemOf(clamp, clamp));
    space.endSag.set([0.1, 0.2]);
    placeEnds(space, problemOf(clamp, clamp), space.nodes);
    // Along (3, 4) / 5, left of it (-4, 3) / 5; 0.75 is half an edge.
    expect([...space.nodes.slice(0, 4)]).toEqual(closeTo([1 - 0.45 - 0.08, 2 - 0.6 + 0.06, 1.45 - 0.08, 2.6 + 0.06]));
    expect([...space.nodes.slice(8)]).toEqual(closeTo([0.55 - 0.16, 1.4 + 0.12, 1.45 - 0.16, 2.6 + 0.12]));
    expect([...space.nodes.slice(4, 8)]).toEqual([0, 0, 0, 0]);
  });

  it('of a slide keep their place along its line, and free ones altogether', () => {
    const space = loaded(problemOf(free, slide));
    space.nodes.set([5, 6, 7, 8], 0);
    // 2 and 3 along (4, 3) / 5 from (7, 10), and some way off the line.
    space.nodes.set([7 + 1.6 - 0.6, 10 + 1.2 + 0.8, 7 + 2.4 + 0.3, 10 + 1.8 - 0.4], 8);
    placeEnds(space, problemOf(free, slide), space.nodes);
    expect([...space.nodes.slice(0, 4)]).toEqual([5, 6, 7, 8]);
    expect([...space.nodes.slice(8)]).toEqual(closeTo([8.6, 11.2, 9.4, 11.8]));
  });
});

describe('the linear system of a strip with held ends', () => {
  const size = 12;
  const filled = (problem: StripProblem) => {
    const space = loaded(problem);
    const matrix = Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (_, j) =>
        Math.abs(Math.floor(i / 2) - Math.floor(j / 2)) > 2
          ? 0
          : Math.sin(1 + Math.min(i, j) * 3.1 + Math.max(i, j) * 1.7),
      ),
    );
    const gradient = Array.from({ length: size }, (_, i) => Math.cos(2 * i));
    for (let i = 0; i < size; i++)
      for (let j = Math.max(0, i - HALF_BANDWIDTH); j <= i; j++)
        space.band[i * ROW_STRIDE + HALF_BANDWIDTH + j - i] = nth(nth(matrix, i), j);
    space.gradient.set(gradient);
    return { space, matrix, gradient };
  };
  const entry = (band: Float64Array, i: number, j: number): number =>
    Math.abs(i - j) > HALF_BANDWIDTH ? 0 : nth(band, Math.max(i, j) * ROW_STRIDE + HALF_BANDWIDTH - Math.abs(i - j));

  /** The turn of the x and y of the slide's two nodes into along and across its line, as a matrix. */
  const turnOf = (nodes: readonly number[], angle: number): number[][] => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const turn = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => Number(i === j)));
    for (const node of nodes) {
      const r = 2 * node;
      [nth(turn, r)[r], nth(turn, r)[r + 1], nth(turn, r + 1)[r], nth(turn, r + 1)[r + 1]] = [c, s, -s, c];
    }
    return turn;
  };
  const times = (a: readonly number[][], b: readonly number[][]): number[][] =>
    a.map((row) => nth(b, 0).map((_, j) => row.reduce((sum, v, k) => sum + v * nth(nth(b, k), j), 0)));
  const transposed = (a: readonly number[][]): number[][] => nth(a, 0).map((_, j) => a.map((row) => nth(row, j)));

  it.each([
    ['start', slide, clamp, [0, 1], [1, 3, 8, 9, 10, 11]],
    ['end', clamp, slide, [4, 5], [0, 1, 2, 3, 9, 11]],
    ['end, and the start is free', free, slide, [4, 5], [9, 11]],
    ['start, and the end is free', slide, free, [0, 1], [1, 3]],
  ] as const)('is turned at the slide, here the %s, and the identity where held', (_, start, end, nodes, held) => {
    const problem = problemOf(start, end);
    const { space, matrix, gradient } = filled(problem);
    holdEnds(space, problem);
    const turn = turnOf(nodes, (slide as { angle: number }).angle);
    const turned = times(times(turn, matrix), transposed(turn));
    const force = times(
      turn,
      gradient.map((g) => [g]),
    );
    for (let i = 0; i < size; i++) {
      const isHeld = (held as readonly number[]).includes(i);
      expect(space.gradient[i]).toBeCloseTo(isHeld ? 0 : nth(nth(force, i), 0), 12);
      for (let j = Math.max(0, i - HALF_BANDWIDTH); j <= i; j++) {
        const isOff = isHeld || (held as readonly number[]).includes(j);
        expect(entry(space.band, i, j), `${i} ${j}`).toBeCloseTo(
          isOff ? (i === j ? 1 : 0) : nth(nth(turned, i), j),
          12,
        );
      }
    }
  });

  it('gives a step that is turned back into x and y at the slide alone', () => {
    for (const [start, end, nodes] of [
      [slide, clamp, [0, 1]],
      [clamp, slide, [4, 5]],
      [free, free, []],
    ] as const) {
      const problem = problemOf(start, end);
      const space = loaded(problem);
      const step = Array.from({ length: size }, (_, i) => Math.sin(3 * i));
      space.step.set(step);
      releaseStep(space, problem);
      const turn = transposed(turnOf(nodes, (slide as { angle: number }).angle));
      expect([...space.step]).toEqual(
        closeTo(
          times(
            turn,
            step.map((v) => [v]),
          ).map(([v]) => v!),
        ),
      );
    }
  });
});
