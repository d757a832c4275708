import { describe, expect, test } from 'vitest';
import { excess, reverseCurve } from '../../../src/core/allowance/reverseCurve.ts';
import { balancedSeat, foreEdgeSeat } from '../../../src/core/allowance/seat.ts';
import { leatherModel } from '../../../src/core/leather/leatherModel.ts';
import { soundJob } from '../../jobArbitrary.ts';

const leather = (thickness: number, bendRatio = 0.2) =>
  leatherModel(
    soundJob({
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
      leather: { outside: { min_mm: thickness, max_mm: thickness, bendRatio } },
    }).leather.outside,
    'nominal',
  );

describe('a seat', () => {
  test('at the fore-edge is the run of the pocket alone over the whole board', () => {
    expect(foreEdgeSeat(3.175, leather(1.984375)).seat).toBeCloseTo(2 * 0.7 * 1.984375, 12);
    expect(foreEdgeSeat(0.4, leather(2)).seat).toBeCloseTo(reverseCurve(0.4, 1.4).run, 12);
  });

  test('at head and tail in equal leathers shares the board evenly', () => {
    expect(balancedSeat(3, leather(1.8), leather(1.8)).outsideOffset).toBe(1.5);
  });

  test('at head and tail in unequal leathers draws in both layers alike, and the lighter one takes more', () => {
    const seat = balancedSeat(3, leather(2.4), leather(1.2));
    expect(excess(seat.outside)).toBeCloseTo(excess(seat.pocket), 9);
    expect(seat.outsideOffset).toBeGreaterThan(1.5);
    expect(seat.seat).toBe(Math.max(seat.outside.run, seat.pocket.run));
    expect(seat.needed).toBeCloseTo(seat.seat + excess(seat.outside), 9);
  });

  test('grows with the board, the leather and the bend ratio', () => {
    const base = balancedSeat(2, leather(1.6), leather(1.6)).needed;
    expect(balancedSeat(2.5, leather(1.6), leather(1.6)).needed).toBeGreaterThan(base);
    expect(balancedSeat(2, leather(1.8), leather(1.8)).needed).toBeGreaterThan(base);
    expect(balancedSeat(2, leather(1.6, 0.5), leather(1.6, 0.5)).needed).toBeGreaterThan(base);
  });

  test('above two radii stands upright between two quarter circles', () => {
    expect(reverseCurve(3, 1)).toEqual({ run: 2, length: Math.PI + 1, angle: Math.PI / 2, straight: 1 });
  });

  test('vanishes with the board', () => {
    expect(balancedSeat(1e-9, leather(1.6), leather(1.6)).needed).toBeLessThan(1e-3);
    expect(reverseCurve(0, 2)).toMatchObject({ run: 0, length: 0, angle: 0 });
  });
});
