import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { borderLines } from '../../../src/core/tooling/border.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

const CLEAR = { x: [10, 110], y: [20, 220] } as const;

const border = (change: Partial<Parameters<typeof borderLines>[0]> = {}) =>
  borderLines(
    {
      kind: 'border',
      area: 'front',
      lines: 2,
      corners: 'square',
      inset_mm: 1 as never,
      gap_mm: 3 as never,
      corner_mm: 8 as never,
      ...change,
    },
    CLEAR,
  );

const reach = (line: readonly Vec2[], axis: 0 | 1) => {
  const along = line.map((point) => point[axis]);
  return [Math.min(...along), Math.max(...along)];
};

/** Least distance of a point from a closed line. */
function away([x, y]: Vec2, line: readonly Vec2[]): number {
  const distances = line.slice(1).map((to, i) => {
    const from = nth(line, i);
    const step = [to[0] - from[0], to[1] - from[1]] as const;
    const share = ((x - from[0]) * step[0] + (y - from[1]) * step[1]) / (step[0] ** 2 + step[1] ** 2 || 1);
    const t = Math.max(0, Math.min(1, share));
    return Math.hypot(x - from[0] - t * step[0], y - from[1] - t * step[1]);
  });
  return Math.min(...distances);
}

describe('a border', () => {
  test('stands at its inset from the clear part, its second line a gap within', () => {
    const [outer, inner] = border();
    expect([reach(defined(outer), 0), reach(defined(outer), 1)]).toEqual([
      [11, 109],
      [21, 219],
    ]);
    expect([reach(defined(inner), 0), reach(defined(inner), 1)]).toEqual([
      [14, 106],
      [24, 216],
    ]);
  });

  test.each(['square', 'rounded', 'notched'] as const)(
    'with %s corners has its lines the gap apart everywhere',
    (corners) => {
      const [outer, inner] = border({ corners });
      for (const point of defined(inner)) {
        const nearest = away(point, defined(outer));
        // The outer corner of a notch stands off the other line by the diagonal at most.
        expect(nearest).toBeGreaterThan(3 - 0.011);
        if (corners !== 'notched') expect(nearest).toBeLessThan(corners === 'square' ? 3.0001 : 3.011);
      }
    },
  );

  test('is closed, and has as many corners as its kind', () => {
    const [square] = border({ corners: 'square' });
    const [notched] = border({ corners: 'notched' });
    expect([defined(square).length, defined(notched).length]).toEqual([5, 13]);
    for (const line of border({ corners: 'rounded' })) expect(line.at(-1)).toEqual(line[0]);
  });

  test('leaves out a line that has no room', () => {
    expect(border({ inset_mm: 48 as never })).toHaveLength(1);
    expect(border({ inset_mm: 60 as never })).toHaveLength(0);
    expect(border({ corners: 'rounded', corner_mm: 60 as never })).toHaveLength(0);
  });
});
