import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { segmentToBox } from '../../../src/core/math/box2.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { designWarnings } from '../../../src/core/tooling/designWarnings.ts';
import type { PlacedDesign } from '../../../src/core/tooling/placedDesign.ts';
import { toolingAreas } from '../../../src/core/tooling/toolingAreas.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';
import { nearly } from '../pattern/plainSource.ts';
import { plainCover } from './plainCover.ts';

const design = plainCover({ construction: { strap: { width_mm: 25, anchor_mm: 30, reach_mm: 35, end_mm: 15 } } });
const area = defined(toolingAreas(design).find(({ face }) => face === 'front'));
const drawn = (...line: Vec2[]): PlacedDesign => ({ design: {} as never, lines: [line], pictures: [], lacking: [] });

describe('the warnings of a design', () => {
  test('are none for one that keeps its margins', () => {
    expect(designWarnings(drawn([210, 20], [300, 20]), area)).toEqual([]);
  });

  test('name the fold and the board edge that it comes too near to, and how near', () => {
    expect(designWarnings(drawn([200, 20], [300, 20]), area)).toEqual([
      { side: 'left', bound: 'spine fold', distance: 3, margin: 5 },
    ]);
    expect(designWarnings(drawn([210, 20], [210, 226]), area)).toEqual(
      nearly([
        { side: 'top', bound: 'board edge', distance: -2, margin: 5 },
        { side: null, bound: 'seam', distance: expect.any(Number), margin: 5 },
      ]),
    );
  });

  test('name the strap where it crosses it, and not where it passes it by', () => {
    expect(designWarnings(drawn([330, 20], [330, 200]), area)).toEqual(
      nearly([{ side: null, bound: 'strap', distance: 0, margin: 5 }]),
    );
    expect(designWarnings(drawn([330, 20], [330, 80]), area)).toEqual([]);
  });
});

test('the distance of a segment from a rectangle is the least of the distances of its points', () => {
  const number = fc.double({ min: -10, max: 10, noNaN: true });
  const point = fc.tuple(number, number);
  checkLaw(
    fc.property(point, point, (a, b) => {
      const box = { x: [-2, 3], y: [-1, 1] } as const;
      const steps = 2000;
      const sampled = Math.min(
        ...Array.from({ length: steps + 1 }, (_, i) => {
          const [x, y] = [a[0] + ((b[0] - a[0]) * i) / steps, a[1] + ((b[1] - a[1]) * i) / steps];
          return Math.hypot(Math.max(-2 - x, 0, x - 3), Math.max(-1 - y, 0, y - 1));
        }),
      );
      const found = segmentToBox(a, b, box);
      expect(found).toBeLessThanOrEqual(sampled + 1e-9);
      expect(found).toBeGreaterThanOrEqual(sampled - Math.hypot(b[0] - a[0], b[1] - a[1]) / steps);
    }),
  );
});
