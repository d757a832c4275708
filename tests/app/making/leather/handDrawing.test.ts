import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CLOSING_PX, drawnOn, type HideDraft, shapeFault } from '../../../../src/app/making/leather/hideDraft.ts';
import { sideWords, under } from '../../../../src/app/making/leather/hideShape.ts';
import { carried, fittedView, gridStep, onPlane, onScreen } from '../../../../src/app/making/leather/surfaceView.ts';
import { isSimplePolygon, MM_PER_INCH, polygonArea, type Vec2 } from '../../../../src/core/index.ts';
import { checkLaw } from '../../../laws.ts';
import { nth } from '../../../nth.ts';

const SIZE = { width: 600, height: 400 };
const SQUARE: readonly Vec2[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];
const NOTHING: HideDraft = { name: 'outline', corners: [], isClosed: false };
const at = { scale: 0.5, step: 1 };
/** Presses in turn. */
const pressed = (places: readonly Vec2[]): HideDraft =>
  places.reduce((draft, place) => drawnOn(draft, [place], at), NOTHING);

describe('the view of a drawing surface', () => {
  test('a point stays where it is shown, and under the fingers that move and enlarge it', () => {
    const coordinate = fc.double({ min: -4000, max: 9000, noNaN: true });
    const px = fc.double({ min: 0, max: 400, noNaN: true });
    checkLaw(
      fc.property(coordinate, coordinate, px, px, fc.double({ min: 0.2, max: 5, noNaN: true }), (x, y, u, v, times) => {
        const view = { left: x / 2, low: y / 3, scale: 0.4 };
        const [backX, backY] = onPlane(view, SIZE, onScreen(view, SIZE, [x, y]));
        expect(backX).toBeCloseTo(x, 6);
        expect(backY).toBeCloseTo(y, 6);
        const next = carried(view, SIZE, [u, v], [v, u], times);
        const [screenX, screenY] = onScreen(next, SIZE, onPlane(view, SIZE, [u, v]));
        expect(screenX).toBeCloseTo(v, 6);
        expect(screenY).toBeCloseTo(u, 6);
      }),
    );
  });

  test('fitted, all is within the surface and something reaches to near its edge', () => {
    const view = fittedView(
      [
        [-200, 50],
        [1800, 900],
      ],
      SIZE,
    );
    const [left, low] = onScreen(view, SIZE, [-200, 50]);
    const [right, high] = onScreen(view, SIZE, [1800, 900]);
    expect(left).toBeCloseTo(28, 6);
    expect(right).toBeCloseTo(572, 6);
    expect(high).toBeGreaterThan(28);
    expect(low).toBeLessThan(372);
  });

  test.each([
    ['mm', 0.2, 100],
    ['mm', 0.8, 20],
    ['mm', 16, 1],
    ['in', 0.2, 6 * MM_PER_INCH],
    ['in', 3, MM_PER_INCH / 4],
  ] as const)('in %s at %d px a millimetre a square of the grid is %d mm', (units, scale, side) => {
    expect(gridStep(scale, units)).toBeCloseTo(side, 9);
  });
});

describe('what lies under a pointer', () => {
  const chosen = { corners: SQUARE, isClosed: true };
  const shapes = [
    { name: 'outline' as const, corners: SQUARE },
    { name: 0, corners: SQUARE.map(([x, y]): Vec2 => [40 + x / 10, 40 + y / 10]) },
  ];
  test.each([
    ['a corner before a side', [98, 3], { kind: 'corner', index: 1 }],
    ['a side between corners', [50, -4], { kind: 'side', index: 0 }],
    ['the last side, back to the first corner', [3, 50], { kind: 'side', index: 3 }],
    ['a defect before the outline that it lies in', [45, 45], { kind: 'shape', name: 0 }],
    ['the outline where nothing lies over it', [70, 70], { kind: 'shape', name: 'outline' }],
    ['nothing', [150, 50], null],
  ] as const)('is %s', (_, place, what) => {
    expect(under(place, chosen, shapes, 5)).toEqual(what);
  });

  test('a line that is not closed has no sides to add a corner to', () => {
    expect(under([50, 0], { corners: SQUARE, isClosed: false }, [], 5)).toBeNull();
  });
});

describe('a shape drawn by hand', () => {
  test('grows by a corner a press, and is closed by a press on the first', () => {
    const open = pressed([
      [0, 0],
      [400, 0],
      [400, 300],
    ]);
    expect(open).toEqual({
      ...NOTHING,
      corners: [
        [0, 0],
        [400, 0],
        [400, 300],
      ],
    });
    expect(drawnOn(open, [[CLOSING_PX / at.scale - 1, 0]], at)).toEqual({ ...open, isClosed: true });
    expect(drawnOn(open, [[CLOSING_PX / at.scale + 1, 0]], at).isClosed).toBe(false);
  });

  test('of two corners is not closed by a press on the first', () => {
    const two = pressed([
      [0, 0],
      [400, 0],
    ]);
    expect(drawnOn(two, [[3, 2]], at)).toEqual(two);
  });

  test('along one line round is closed where the line comes back, within the tolerance of it', () => {
    const round = Array.from({ length: 400 }, (_, i): Vec2 => {
      const angle = (2 * Math.PI * i) / 399;
      return [500 + 400 * Math.cos(angle), 400 + 300 * Math.sin(angle)];
    });
    const { corners, isClosed } = drawnOn(NOTHING, round, at);
    expect(isClosed).toBe(true);
    expect(isSimplePolygon(corners)).toBe(true);
    // 2 px at 0.5 px a millimetre are 4 mm, beside the step; area of an ellipse, its length under 2 pi times its longer half.
    expect(Math.abs(polygonArea(corners) - Math.PI * 400 * 300)).toBeLessThan(5 * 2 * Math.PI * 400);
    expect(corners.length).toBeLessThan(40);
  });

  test('of a dot is no closed shape', () => {
    const dot = Array.from({ length: 20 }, (_, i): Vec2 => [10 * Math.cos(i), 10 * Math.sin(i)]);
    expect(drawnOn(NOTHING, dot, at).isClosed).toBe(false);
  });

  test('keeps to 300 corners, whatever is added', () => {
    const comb = Array.from({ length: 290 }, (_, i): Vec2 => [20 * i, i % 2 === 0 ? 900 : 1000]);
    const more = pressed([[-900, 0]]);
    const full = drawnOn({ ...more, corners: [...comb, ...comb.map(([x, y]): Vec2 => [-x - 9, y])] }, [[8000, 0]], at);
    expect(full.corners.length).toBeLessThanOrEqual(300);
  });

  test('cannot go into the job while its sides meet, with the sides named, or while it encloses nothing', () => {
    expect(shapeFault(SQUARE)).toBeNull();
    expect(shapeFault(SQUARE.slice(0, 2))).toEqual({ kind: 'few' });
    const bow: Vec2[] = [
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ];
    const fault = shapeFault(bow);
    expect(fault).toEqual({ kind: 'meet', sides: [0, 2] });
    expect(sideWords([0, 2])).toBe('1 and 3');
    expect(sideWords([4])).toBe('5');
    expect(sideWords([0, 1, 2, 3, 4, 5])).toBe('1, 2, 3, 4 and 2 more');
    expect(nth(bow, 0)).toEqual([0, 0]);
  });
});
