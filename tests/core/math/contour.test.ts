import { describe, expect, test } from 'vitest';
import {
  bulgedLine,
  circle,
  contourArea,
  contourLength,
  corneredContour,
  flattened,
  mirroredContour,
  placeAlong,
  segmentEnd,
  segmentStart,
} from '../../../src/core/math/contour.ts';
import { nth } from '../../nth.ts';

const box = (style: 'rounded' | 'clipped', size: number) =>
  corneredContour(
    (
      [
        [0, 0],
        [40, 0],
        [40, 30],
        [0, 30],
      ] as const
    ).map((at) => ({ at, corner: { style, size } })),
  );

describe('a rectangle of 40 by 30', () => {
  test.each([
    ['rounded', 0, 1200, 140],
    ['rounded', 5, 1200 - (4 - Math.PI) * 25, 140 - (8 - 2 * Math.PI) * 5],
    ['clipped', 5, 1200 - 50, 140 - 8 * 5 + 4 * 5 * Math.SQRT2],
  ] as const)('with corners %s %d has its area and length', (style, size, area, length) => {
    expect(contourArea(box(style, size))).toBeCloseTo(area, 9);
    expect(contourLength(box(style, size))).toBeCloseTo(length, 9);
  });

  test('is closed, each segment starting where the last one ended', () => {
    const contour = box('rounded', 6);
    contour.forEach((segment, i) => {
      const next = segmentStart(nth(contour, (i + 1) % contour.length));
      expect(Math.hypot(segmentEnd(segment)[0] - next[0], segmentEnd(segment)[1] - next[1])).toBeLessThan(1e-12);
    });
  });

  test('with rounded corners as large as half its side has no straight edge left there', () => {
    expect(box('rounded', 15).filter(({ kind }) => kind === 'line').length).toBe(2);
  });

  test('mirrored keeps its area and its way round', () => {
    expect(contourArea(mirroredContour(box('clipped', 4), 40))).toBeCloseTo(contourArea(box('clipped', 4)), 9);
  });
});

describe('an arc', () => {
  test('over a chord of 40 with a sagitta of 8 reaches 8 to the right of the way, and to the left when negative', () => {
    const right = placeAlong([bulgedLine([0, 0], [40, 0], 8)], contourLength([bulgedLine([0, 0], [40, 0], 8)]) / 2);
    expect(right.point[0]).toBeCloseTo(20, 9);
    expect(right.point[1]).toBeCloseTo(-8, 9);
    expect(right.heading).toBeCloseTo(0, 9);
    const arc = bulgedLine([0, 0], [40, 0], -8);
    expect(placeAlong([arc], contourLength([arc]) / 2).point[1]).toBeCloseTo(8, 9);
    expect(segmentEnd(arc)[0]).toBeCloseTo(40, 9);
  });

  test('of no sagitta is a line', () => {
    expect(bulgedLine([0, 0], [1, 0], 0).kind).toBe('line');
  });

  test('flattened strays from its circle by at most the tolerance', () => {
    const points = flattened([circle([0, 0], 10)], 0.01);
    for (let i = 1; i < points.length; i++) {
      const middle = [
        (nth(points, i)[0] + nth(points, i - 1)[0]) / 2,
        (nth(points, i)[1] + nth(points, i - 1)[1]) / 2,
      ] as const;
      expect(10 - Math.hypot(...middle)).toBeLessThan(0.01 + 1e-9);
    }
  });
});
