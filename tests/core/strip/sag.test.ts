import { describe, expect, it } from 'vitest';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { measureSag } from '../../../src/core/strip/sag.ts';
import type { StripEnd, StripProblem } from '../../../src/core/strip/stripProblem.ts';
import { createStripWorkspace } from '../../../src/core/strip/stripWorkspace.ts';
import { nth } from '../../nth.ts';

const H = 0.1;
const clamp: StripEnd = { kind: 'clamp', x: 0, y: 0, angle: 0 };

/** A strip whose node k is where the turns so far take it, edges H long; turn[k] is that at node k. */
function turning(turns: readonly number[]) {
  const space = createStripWorkspace(turns.length - 2);
  space.spacing = H;
  let [x, y, angle] = [0, 0, 0];
  turns.forEach((turn, k) => {
    angle += turn;
    space.nodes.set([x, y], 2 * k);
    [x, y] = [x + H * Math.cos(angle), y + H * Math.sin(angle)];
  });
  return space;
}

const problem: StripProblem = { length: 1, stretchStiffness: 1, start: clamp, end: clamp };

describe('how far the polygon cuts inside the strip', () => {
  it('is turn h / 12 at a clamp, the turn drawn on from the two nodes beside it', () => {
    const space = turning([0, 0.2, 0.1, 0, 0, 0, 0.3, 0.4, 0]);
    // 1.5 x 0.2 - 0.5 x 0.1 at the start, 1.5 x 0.4 - 0.5 x 0.3 at the end.
    expect(measureSag(space, problem)).toBeCloseTo((0.45 * H) / 12, 12);
    expect([...space.endSag]).toEqual([expect.closeTo((0.25 * H) / 12, 12), expect.closeTo((0.45 * H) / 12, 12)]);
    // Measured once more nothing has changed.
    expect(measureSag(space, problem)).toBe(0);
  });

  it('is none at a free end', () => {
    const space = turning([0, 0.2, 0.1, 0, 0, 0, 0.3, 0.4, 0]);
    expect(measureSag(space, { ...problem, start: { kind: 'free' }, end: { kind: 'free' } })).toBe(0);
    expect([...space.endSag]).toEqual([0, 0]);
    measureSag(space, { ...problem, start: { kind: 'free' } });
    expect([...space.endSag]).toEqual([0, expect.closeTo((0.45 * H) / 12, 12)]);
  });

  it('is that of one radian where a node turns by more, either way', () => {
    const space = turning([0, 2, 0, 0, 0, 0, 0, -2, 0]);
    measureSag(space, problem);
    expect([...space.endSag]).toEqual([expect.closeTo(H / 12, 12), expect.closeTo(-H / 12, 12)]);
  });

  it('is the turn at the foot of a vertex, shared with the neighbour that the foot is nearer to', () => {
    const turns = [0, 0.1, 0.2, 0.3, 0.12, 0.1, 0, 0];
    const space = turning(turns);
    const [x, y] = [nth(space.nodes, 6), nth(space.nodes, 7)];
    // Just inside of node 3, square to its bisector: the foot is node 3's own, u = 0.
    const along = 0.1 + 0.2 + 0.15;
    const at = (back: number): number[] => [
      x - 0.02 * Math.sin(along) + back * Math.cos(along),
      y + 0.02 * Math.cos(along) + back * Math.sin(along),
    ];
    const measured = (back: number, force: number) => {
      const strip = turning(turns);
      strip.vertexSag = new Float64Array(2);
      strip.vertexForce = Float64Array.of(force, 0);
      strip.vertexNode = Int32Array.of(3, 3);
      const obstacle = growOutline([...at(back), 9, 9], false, 0, 1);
      const free = { ...problem, start: { kind: 'free' }, end: { kind: 'free' }, obstacle } as const;
      const change = measureSag(strip, free);
      // Measured once more nothing has changed.
      expect(measureSag(strip, free)).toBe(0);
      return { sag: nth(strip.vertexSag, 0), other: strip.vertexSag[1], change };
    };
    expect(measured(0, 1)).toEqual({ sag: expect.closeTo((0.3 * H) / 12, 4), other: 0, change: measured(0, 1).sag });
    // What does not push changes nothing that is waited for.
    expect(measured(0, 0).change).toBe(0);
    // A quarter of an edge on or back, a quarter of the turn is the neighbour's, 0.12 or 0.2.
    for (const [back, turn] of [
      [0.25 * H, 0.255],
      [-0.25 * H, 0.275],
    ] as const)
      expect(Math.abs(measured(back, 1).sag / ((turn * H) / 12) - 1)).toBeLessThan(0.02);
  });

  it('is the turn of the last inner node in the half piece beyond it', () => {
    const strip = turning([0, 0, 0, 0, 0, 0, 0.4, 0]);
    strip.vertexSag = new Float64Array(2);
    strip.vertexForce = new Float64Array(2);
    strip.vertexNode = Int32Array.of(6, 6);
    const [x, y] = [nth(strip.nodes, 12), nth(strip.nodes, 13)];
    const obstacle = growOutline([x + 0.3 * H, y + 0.05, 9, 9], false, 0, 1);
    measureSag(strip, { ...problem, start: { kind: 'free' }, end: { kind: 'free' }, obstacle });
    expect(strip.vertexSag[0]).toBeCloseTo((0.4 * H) / 12, 12);
  });
});
