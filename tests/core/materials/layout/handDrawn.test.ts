import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handDrawn, onGrid } from '../../../../src/core/materials/layout/handDrawn.ts';
import { polygonArea } from '../../../../src/core/materials/pieceOutline.ts';
import { meetingSides } from '../../../../src/core/math/meetingSides.ts';
import { pointToSegment } from '../../../../src/core/math/polygonDistance.ts';
import { thinnedLine } from '../../../../src/core/math/thinnedLine.ts';
import type { Vec2 } from '../../../../src/core/math/vec2.ts';
import { checkLaw } from '../../../laws.ts';
import { nth } from '../../../nth.ts';

const offLine = (point: Vec2, line: readonly Vec2[]): number =>
  line.length === 1
    ? pointToSegment(point, nth(line, 0), nth(line, 0))
    : Math.min(...line.slice(1).map((to, i) => pointToSegment(point, nth(line, i), to)));

const stroke = fc.array(
  fc.tuple(fc.double({ min: -900, max: 900, noNaN: true }), fc.double({ min: -900, max: 900, noNaN: true })),
  {
    minLength: 2,
    maxLength: 60,
  },
);

describe('a line drawn by hand', () => {
  test('thinned, no point of it lies further than the tolerance from what is left, and its ends stay', () => {
    checkLaw(
      fc.property(stroke, fc.double({ min: 0, max: 400, noNaN: true }), (points, tolerance) => {
        const thin = thinnedLine(points, tolerance);
        expect(nth(thin, 0)).toEqual(nth(points, 0));
        expect(nth(thin, -1)).toEqual(nth(points, -1));
        for (const point of points) expect(offLine(point, thin)).toBeLessThanOrEqual(tolerance + 1e-9);
      }),
    );
  });

  // Against the line through both ends and not the part between them, the point at 300 would lie on it.
  test('that runs back on itself keeps its turn', () => {
    expect(
      thinnedLine(
        [
          [0, 0],
          [300, 0],
          [100, 0],
        ],
        1,
      ),
    ).toEqual([
      [0, 0],
      [300, 0],
      [100, 0],
    ]);
  });

  test('a straight one is its two ends', () => {
    const straight = Array.from({ length: 50 }, (_, i): Vec2 => [i, 2 * i]);
    expect(thinnedLine(straight, 0.001)).toEqual([
      [0, 0],
      [49, 98],
    ]);
  });

  test('its corners stand on whole steps, none twice in a row, within the tolerance and a step', () => {
    checkLaw(
      fc.property(stroke, fc.constantFrom(1, 25.4 / 32), (points, step) => {
        const { corners, tolerance } = handDrawn(points, { tolerance: 3, step });
        expect(tolerance).toBe(3);
        for (const [i, corner] of corners.entries()) {
          for (const value of corner) expect(Math.abs(value / step - Math.round(value / step))).toBeLessThan(1e-5);
          if (i > 0) expect(corner).not.toEqual(corners[i - 1]);
        }
        for (const point of points) expect(offLine(point, corners)).toBeLessThanOrEqual(3 + step / Math.SQRT2 + 1e-6);
      }),
    );
  });

  test('has no more corners than an outline may have, and says how much coarser it became', () => {
    const wild = Array.from({ length: 700 }, (_, i): Vec2 => [i, i % 2 === 0 ? 0 : 9]);
    const { corners, tolerance } = handDrawn(wild, { tolerance: 1, step: 1 });
    expect(corners.length).toBeLessThanOrEqual(300);
    expect(tolerance).toBe(16);
  });

  // Area between two closed lines no further apart than d: at most d times the length of the longer one, plus the ends.
  test.each([
    ['a circle of 600 mm', 1, 1],
    ['an ellipse of 900 by 400 mm', 1.5, 2 / 3],
  ])('%s traced within 4 mm has its area within the tolerance times its length', (_, wide, high) => {
    const radius = 600;
    const points = Array.from({ length: 1000 }, (_, i): Vec2 => {
      const angle = (2 * Math.PI * i) / 1000;
      // A hand shakes; seen at 2 mm a pixel.
      const shake = Math.sin(97 * angle);
      return [(radius * wide + shake) * Math.cos(angle), (radius * high + shake) * Math.sin(angle)];
    });
    const { corners } = handDrawn(points, { tolerance: 4, step: 1 });
    expect(corners.length).toBeLessThan(60);
    const exact = Math.PI * radius * wide * radius * high;
    const length = 2 * Math.PI * radius * Math.max(wide, high);
    expect(Math.abs(polygonArea(corners) - exact)).toBeLessThan((4 + 1 + 1) * length);
    expect(meetingSides(corners)).toEqual([]);
  });

  test('a corner beyond what the job allows is set at its edge', () => {
    expect(onGrid([-9000, 20_000], 1)).toEqual([-5000, 10_000]);
    expect(onGrid([-0.2, 10.6], 1)).toEqual([0, 11]);
  });
});

describe('the sides that meet', () => {
  test('are the two that cross in a bow tie, and none of a square', () => {
    expect(
      meetingSides([
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ]),
    ).toEqual([]);
    expect(
      meetingSides([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ).toEqual([0, 2]);
  });

  test('are the two of a spike that doubles back', () => {
    expect(
      meetingSides([
        [0, 0],
        [10, 0],
        [5, 0],
        [5, 8],
      ]),
    ).toContain(0);
  });
});
