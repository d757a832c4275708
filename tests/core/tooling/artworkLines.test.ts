import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { expect, test } from 'vitest';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { ARTWORK_GRID, readArtworkLines, writeArtworkLines } from '../../../src/core/tooling/artworkLines.ts';
import { checkLaw } from '../../laws.ts';

const coordinate = fc.integer({ min: 0, max: ARTWORK_GRID });
const point = fc.tuple(coordinate, coordinate);
const open = fc.array(point, { minLength: 2, maxLength: 40 });
const closed = fc.array(point, { minLength: 3, maxLength: 40 }).map((points): Vec2[] => [...points, points[0]!]);

test('lines by hand: a triangle, and a line that starts from the origin again', () => {
  const triangle: Vec2[] = [
    [10, 20],
    [13, 16],
    [18, 22],
    [10, 20],
  ];
  const line: Vec2[] = [
    [0, 9],
    [1, 9],
  ];
  expect(writeArtworkLines([triangle, line])).toBe('m10,20 3,-4 5,6z m0,9 1,0');
  expect(readArtworkLines('m10,20 3,-4 5,6z m0,9 1,0')).toEqual({ polylines: [triangle, line] });
});

test('lines that are written are read back the same', () => {
  checkLaw(
    fc.property(fc.array(fc.oneof(open, closed), { minLength: 1, maxLength: 20 }), (polylines) => {
      expect(readArtworkLines(writeArtworkLines(polylines))).toEqual({ polylines });
    }),
  );
});

test('a single line is path data of SVG: an independent reader gives it the same length', () => {
  checkLaw(
    fc.property(closed, (points) => {
      const length = points
        .slice(1)
        .reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);
      expect(new svgPathProperties(writeArtworkLines([points])).getTotalLength()).toBeCloseTo(length, 6);
    }),
    { cost: 2 },
  );
});

test.each([
  ['', 0, 'the end'],
  ['10,20 3,4', 0, '"10,20 3,4"'],
  ['M10,20 3,4', 0, '"M10,20 3,4"'],
  ['m10,20 l3,4', 7, '"l3,4"'],
  ['m10,20  3,4', 7, '" 3,4"'],
  ['m10,20 3,4 ', 11, 'the end'],
  ['m10,20 3.5,4', 7, '"3.5,4"'],
  ['m10,20 3,', 7, '"3,"'],
  ['m10,20 3,-', 7, '"3,-"'],
  ['m10,20 1e3,4', 7, '"1e3,4"'],
  ['m10,20 NaN,4', 7, '"NaN,4"'],
  ['m10,20 3,4\n5,6', 10, '"\\n5,6"'],
  ['m10,20 3,4 <script>', 11, '"<script>"'],
  ['m10,20 999999999999999999999999,4', 7, '"999999999999"'],
  ['m10,20 3,4 5,6z 1,1', 16, '"1,1"'],
  ['m10,20 3,4 5,6zz', 15, '"z"'],
  ['m10,20 m3,4 5,6', 0, 'a line of 1 point'],
  ['m10,20', 0, 'a line of 1 point'],
  ['m1,1 1,1 m10,20 3,4z', 9, 'a line of 2 points, closed'],
  ['m10,20 -11,4', 7, 'a point at -1, 24'],
  ['m10,20 9991,4', 7, 'a point at 10001, 24'],
])('%j is refused at character %i for %s', (text, at, got) => {
  expect(readArtworkLines(text)).toMatchObject({ fault: { at, got } });
});
