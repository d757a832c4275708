import { describe, expect, test } from 'vitest';
import { MOVE_STEP, snapped, snappedTurn } from '../../../../src/app/making/tooling/snapping.ts';
import { MM_PER_INCH } from '../../../../src/core/index.ts';

/** A clear part of 100 x 160 mm, its centre lines not in its middle: 5 mm right of it and 10 mm above it. */
const AREA = { clear: { x: [10, 110], y: [20, 180] }, centre: [65, 110] } as const;
/** A design of 20 x 8 mm that reaches farther down than up, as letters with descenders do. */
const REACH = { x: [-10, 10], y: [-5, 3] } as const;
const OPTIONS = { within: 2, step: MOVE_STEP.mm, range: { min: -2000, max: 2000 } };

const at = (x: number, y: number, options = OPTIONS) => snapped([x, y], REACH, AREA, options);

describe('a design is drawn', () => {
  test('to a centre line within the distance, each way by itself', () => {
    expect(at(1.9, -30.2)).toEqual({ place: [0, -30], lines: ['centre', null] });
    expect(at(20.4, -1.4)).toEqual({ place: [20, 0], lines: [null, 'centre'] });
    expect(at(2.1, 2.1)).toEqual({ place: [2, 2], lines: [null, null] });
  });

  test('with its edges to those of the clear part', () => {
    // The left edge of the design is 10 mm from its place, the clear part begins 55 mm left of the centre line.
    expect(at(-44.2, 0)).toEqual({ place: [-45, 0], lines: ['low', 'centre'] });
    expect(at(33.7, 68.1)).toEqual({ place: [35, 67], lines: ['high', 'high'] });
    expect(at(30, -86.9)).toEqual({ place: [30, -85], lines: [null, 'low'] });
  });

  test('to the nearest of two lines, the centre line before an edge as near', () => {
    const narrow = { clear: { x: [55, 75], y: [20, 180] }, centre: [65.5, 110] } as const;
    expect(snapped([0.2, 50], REACH, narrow, OPTIONS).lines[0]).toBe('centre');
    expect(snapped([-0.4, 50], REACH, narrow, OPTIONS)).toMatchObject({ place: [-0.5, 50], lines: ['low', null] });
    expect(snapped([-0.25, 50], REACH, narrow, OPTIONS).lines[0]).toBe('centre');
  });

  test('to no edge where the margins leave no clear part', () => {
    expect(snapped([-44.2, 0.5], REACH, { ...AREA, clear: null }, OPTIONS)).toEqual({
      place: [-44, 0],
      lines: [null, 'centre'],
    });
  });

  test('by steps of a ruler in between: whole millimetres, or 1/32 in, within what the field allows', () => {
    const inches = { ...OPTIONS, step: MOVE_STEP.in };
    const [x] = at(20.3, 0, inches).place;
    expect((x * 32) / MM_PER_INCH).toBeCloseTo(26, 4);
    expect(at(5000, 0).place).toEqual([2000, 0]);
    expect(at(-5000, 0).place).toEqual([-2000, 0]);
  });
});

test('a turn is a whole degree from -180 to 180, or an eighth of a circle where it is near one', () => {
  expect([3, -3, 4, 43.1, 88, 177.4, 181, 359, -89.6, 540.2].map(snappedTurn)).toEqual([
    0, 0, 4, 45, 90, 180, 180, 0, -90, 180,
  ]);
  expect(snappedTurn(-179)).toBe(180);
  expect(snappedTurn(-170.4)).toBe(-170);
});
