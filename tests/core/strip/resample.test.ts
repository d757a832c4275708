import { describe, expect, it } from 'vitest';
import { layAlong, refine } from '../../../src/core/strip/resample.ts';
import type { StripEnd, StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';
import { nth } from '../../nth.ts';

const free: StripEnd = { kind: 'free' };
const problem: StripProblem = { length: 5, stretchStiffness: 1, start: free, end: free };
const closeTo = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 12));

/** A strip of `segments` + 1 edges of this length. */
function strip(segments: number, spacing: number) {
  const space = createStripWorkspace(segments);
  space.spacing = spacing;
  return space;
}

describe('nodes laid along a path', () => {
  it('stand evenly along its own length, round a corner and over repeated points', () => {
    // 3 along x and 7 up: six nodes every 2 of its 10, although the strip is only 5 long.
    const space = strip(4, 1);
    layAlong(space, problem, [0, 5, 3, 5, 3, 5, 3, 12]);
    expect([...space.nodes]).toEqual(closeTo([0, 5, 2, 5, 3, 6, 3, 8, 3, 10, 3, 12]));
  });

  it('begin half an edge before a clamp and end half an edge behind one, on the line of each', () => {
    const space = strip(4, 1.25);
    const clamp: StripEnd = { kind: 'clamp', x: 0, y: 0, angle: 0 };
    const end: StripEnd = { kind: 'clamp', x: 5, y: 0, angle: Math.PI / 2 };
    layAlong(space, { ...problem, start: clamp, end }, [0, 0, 5, 0]);
    expect([...space.nodes]).toEqual(closeTo([-0.625, 0, 0.625, 0, 1.875, 0, 3.125, 0, 5, -0.625, 5, 0.625]));
  });

  it('go on along the last stretch where a slide takes its end beyond the path', () => {
    const space = strip(4, 1.25);
    const slide: StripEnd = { kind: 'slide', x: 5, y: 0, angle: 0 };
    layAlong(space, { ...problem, start: { ...slide, x: 0 }, end: slide }, [0, 0, 2, 0, 5, 0]);
    expect([...space.nodes]).toEqual(closeTo([-0.625, 0, 0.625, 0, 1.875, 0, 3.125, 0, 4.375, 0, 5.625, 0]));
  });

  it('all stand in one point where the path has no length', () => {
    const space = strip(4, 1);
    layAlong(space, problem, [2, 1, 2, 1]);
    expect(space.nodes.every((v, i) => v === (i % 2 === 0 ? 2 : 1))).toBe(true);
  });
});

describe('a shape carried to a finer strip', () => {
  /** x is the place on the strip, y a parabola of it: what a cubic through four points keeps. */
  const parabola = (place: number): number => 0.3 * place * place - place;

  it('keeps a parabola at every place between its inner nodes', () => {
    const coarse = strip(6, 1);
    const fine = strip(13, 0.5);
    coarse.nodes.set(Array.from({ length: coarse.count }, (_, k) => [k, parabola(k)]).flat());
    refine(coarse, fine, { ...problem, length: 7 });
    for (let k = 2; k <= 12; k++) {
      expect(fine.nodes[2 * k]).toBeCloseTo(k / 2, 12);
      expect(fine.nodes[2 * k + 1]).toBeCloseTo(parabola(k / 2), 12);
    }
    // Next to an end the strip is drawn on straight: half way the error of a parabola is a h^2 / 8, here 0.3 / 8.
    expect(nth(fine.nodes, 3) - parabola(0.5)).toBeCloseTo(0.3 / 8, 12);
    expect(nth(fine.nodes, 2 * 13 + 1) - parabola(6.5)).toBeCloseTo(0.3 / 8, 12);
  });

  it('keeps both free ends where they are', () => {
    const coarse = strip(3, 1);
    const fine = strip(7, 0.5);
    coarse.nodes.set(Array.from({ length: coarse.count }, (_, k) => [k, parabola(k)]).flat());
    refine(coarse, fine, { ...problem, length: 4 });
    expect([...fine.nodes.slice(0, 2), ...fine.nodes.slice(-2)]).toEqual(closeTo([0, 0, 4, parabola(4)]));
  });

  it('finds the places of a clamped strip, whose clamp is half an edge from its first node', () => {
    const coarse = strip(4, 2);
    const fine = strip(8, 1);
    const clamp: StripEnd = { kind: 'slide', x: 0, y: 0, angle: 0 };
    coarse.nodes.set(Array.from({ length: coarse.count }, (_, k) => [2 * k - 1, 0]).flat());
    refine(coarse, fine, { ...problem, length: 8, start: clamp });
    for (let k = 0; k < fine.count; k++) expect(fine.nodes[2 * k]).toBeCloseTo(k - 0.5, 12);
  });
});
