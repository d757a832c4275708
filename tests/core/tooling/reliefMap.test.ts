import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { reliefMap } from '../../../src/core/tooling/reliefMap.ts';
import type { TooledFace } from '../../../src/core/tooling/toolingMarks.ts';
import { defined } from '../../defined.ts';
import { checkLaw } from '../../laws.ts';

const WIDTH = 1;

/** A face with these lines on it. */
const faceOf = (lines: readonly (readonly Vec2[])[]): TooledFace => ({
  area: {} as never,
  designs: [{ design: {} as never, lines, pictures: [], lacking: [] }],
});

/** Distance of a point from a line by its points, sampled. */
function away([x, y]: Vec2, [a, b]: readonly [Vec2, Vec2]): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const share = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.max(0, Math.min(1, share));
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

const number = fc.double({ min: 0, max: 25, noNaN: true });
const point = fc.tuple(number, number);

describe('the relief of lines', () => {
  test('is none without designs', () => {
    expect(reliefMap([faceOf([])], WIDTH)).toBeNull();
  });

  test('is as deep at every pixel as the round tool presses at its distance from the nearest line', () => {
    checkLaw(
      fc.property(fc.array(fc.tuple(point, point), { minLength: 1, maxLength: 3 }), (lines) => {
        const map = defined(reliefMap([faceOf(lines)], WIDTH));
        const pixel = defined(map.size[0]) / map.columns;
        for (let j = 0; j < map.rows; j += 3)
          for (let i = 0; i < map.columns; i += 3) {
            const at: Vec2 = [map.origin[0] + (i + 0.5) * pixel, map.origin[1] + (j + 0.5) * pixel];
            const r = Math.min(...lines.map((line) => away(at, line)));
            const depth = r < WIDTH / 2 ? 127.5 * (1 + Math.cos((2 * Math.PI * r) / WIDTH)) : 0;
            expect(Math.abs(defined(map.depths[j * map.columns + i]) - depth)).toBeLessThan(0.51);
          }
      }),
      { cost: 5 },
    );
  });

  test('holds every line whole, with the width of the tool round it', () => {
    checkLaw(
      fc.property(point, point, (a, b) => {
        const { origin, size } = defined(reliefMap([faceOf([[a, b]])], WIDTH));
        for (const [x, y] of [a, b]) {
          expect(x - origin[0]).toBeGreaterThanOrEqual(WIDTH / 2);
          expect(y - origin[1]).toBeGreaterThanOrEqual(WIDTH / 2);
          expect(origin[0] + size[0] - x).toBeGreaterThanOrEqual(WIDTH / 2);
          expect(origin[1] + size[1] - y).toBeGreaterThanOrEqual(WIDTH / 2);
        }
      }),
    );
  });
});
