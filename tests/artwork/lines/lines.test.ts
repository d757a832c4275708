import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clipped } from '../../../src/artwork/lines/clipped.ts';
import { gridLines } from '../../../src/artwork/lines/gridLines.ts';
import { simplified } from '../../../src/artwork/lines/simplified.ts';
import { readArtworkLines, type Vec2 } from '../../../src/core/index.ts';
import { checkLaw } from '../../laws.ts';

const point = fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: -30, max: 30 }));
const line = fc.array(point, { minLength: 2, maxLength: 60 });

function distanceTo([px, py]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const share = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(px - ax - share * dx, py - ay - share * dy);
}

const distanceToLine = (at: Vec2, points: readonly Vec2[]): number =>
  Math.min(...points.slice(1).map((end, i) => distanceTo(at, points[i]!, end)));

const lengthOf = (points: readonly Vec2[]): number =>
  points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);

describe('simplified', () => {
  test('no point is farther from the thinned line than the tolerance, and all its points are points of the line', () => {
    checkLaw(
      fc.property(line, fc.constantFrom(0, 0.5, 3, 20), (points, tolerance) => {
        const thin = simplified(points, tolerance);
        expect([thin[0], thin.at(-1)]).toEqual([points[0], points.at(-1)]);
        for (const at of thin) expect(points).toContain(at);
        for (const at of points)
          expect(distanceToLine(at, thin.length > 1 ? thin : [...thin, ...thin])).toBeLessThanOrEqual(tolerance);
      }),
    );
  });

  test('a spike along a line is kept', () => {
    expect(
      simplified(
        [
          [0, 0],
          [10, 0],
          [5, 0],
        ],
        0.1,
      ),
    ).toEqual([
      [0, 0],
      [10, 0],
      [5, 0],
    ]);
  });

  test('a straight line of many points becomes one of a few, a closed one stays closed', () => {
    const straight = Array.from({ length: 5001 }, (_, i): Vec2 => [i, 2 * i]);
    expect(simplified(straight, 0.01).length).toBeLessThanOrEqual(7);
    const round = Array.from(
      { length: 3001 },
      (_, i): Vec2 => [Math.cos((i / 3000) * 2 * Math.PI), Math.sin((i / 3000) * 2 * Math.PI)],
    );
    round[3000] = round[0]!;
    const thin = simplified(round, 0.01);
    expect(thin.at(-1)).toBe(thin[0]);
    expect(thin.length).toBeLessThan(40);
  });
});

describe('clipped', () => {
  const bounds = { x: [-10, 12], y: [-5, 9] } as const;
  const isWithin = ([x, y]: Vec2) => x >= -10 - 1e-9 && x <= 12 + 1e-9 && y >= -5 - 1e-9 && y <= 9 + 1e-9;

  test('what is kept lies within, on the line, and is as long as what samples find within', () => {
    checkLaw(
      fc.property(line, (points) => {
        const parts = clipped(points, bounds);
        for (const part of parts)
          for (const at of part) {
            expect(isWithin(at)).toBe(true);
            expect(distanceToLine(at, points)).toBeLessThan(1e-9);
          }
        const SAMPLES = 400;
        const sampled = points.slice(1).reduce((sum, [bx, by], i) => {
          const [ax, ay] = points[i]!;
          const inside = Array.from({ length: SAMPLES }, (_, k) => (k + 0.5) / SAMPLES).filter((t) =>
            isWithin([ax + t * (bx - ax), ay + t * (by - ay)]),
          );
          return sum + (Math.hypot(bx - ax, by - ay) * inside.length) / SAMPLES;
        }, 0);
        const kept = parts.reduce((sum, part) => sum + lengthOf(part), 0);
        expect(Math.abs(kept - sampled)).toBeLessThanOrEqual(points.length * (170 / SAMPLES));
      }),
      { cost: 4 },
    );
  });

  test('a line within stays one line, one along the edge too; one that misses is gone', () => {
    const inside: Vec2[] = [
      [0, 0],
      [5, 5],
      [12, 9],
    ];
    expect(clipped(inside, bounds)).toEqual([inside]);
    const edge: Vec2[] = [
      [-10, -5],
      [12, -5],
      [12, 9],
    ];
    expect(clipped(edge, bounds)).toEqual([edge]);
    expect(
      clipped(
        [
          [20, 0],
          [20, 9],
        ],
        bounds,
      ),
    ).toEqual([]);
    expect(
      clipped(
        [
          [0, 30],
          [30, 0],
        ],
        bounds,
      ),
    ).toEqual([]);
  });

  test('a line that leaves and comes back is in two parts', () => {
    expect(
      clipped(
        [
          [0, 0],
          [22, 0],
          [22, 8],
          [0, 8],
        ],
        bounds,
      ),
    ).toEqual([
      [
        [0, 0],
        [12, 0],
      ],
      [
        [12, 8],
        [0, 8],
      ],
    ]);
  });
});

describe('on the grid', () => {
  test('the larger side is 10,000 and every point of a line is within its tolerance of the lines', () => {
    checkLaw(
      fc.property(fc.array(line, { minLength: 1, maxLength: 5 }), (lines) => {
        const xs = lines.flat().map(([x]) => x);
        const ys = lines.flat().map(([, y]) => y);
        const side = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
        fc.pre(side > 0);
        const { lines: text, width, height, finest } = gridLines(lines);
        expect(Math.max(width, height)).toBe(10_000);
        const read = readArtworkLines(text);
        if ('fault' in read) throw new Error(read.fault.got);
        const scale = 10_000 / side;
        for (const points of lines) {
          // A line that is a single point on the grid draws nothing.
          if (new Set(points.map((at) => at.join())).size === 1) continue;
          for (const [x, y] of points) {
            const at: Vec2 = [(x - Math.min(...xs)) * scale, (y - Math.min(...ys)) * scale];
            const off = Math.min(...read.polylines.map((drawn) => distanceToLine(at, drawn)));
            expect(off).toBeLessThanOrEqual(finest * 10_000 + Math.SQRT1_2 + 1e-9);
          }
        }
      }),
    );
  });

  test('a straight line has a box of one unit at least, as its picture needs one', () => {
    expect(
      gridLines([
        [
          [0, 3],
          [9, 3],
        ],
      ]),
    ).toMatchObject({ width: 10_000, height: 1 });
  });

  test('a single point is no line', () => {
    expect(() =>
      gridLines([
        [
          [3, 3],
          [3, 3],
        ],
      ]),
    ).toThrow('no line');
    expect(() => gridLines([])).toThrow('no line');
  });
});
