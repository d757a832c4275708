import { describe, expect, test } from 'vitest';
import { liningDifference, wrapPlaces } from '../../../src/core/pattern/foldZones.ts';
import { LINED, nearly, plainSource } from './plainSource.ts';

describe('the closed book under the outside', () => {
  test('has boards of 150, folds of 2 and a back of 30 mm, 13 mm from either end', () => {
    expect(wrapPlaces(plainSource())).toEqual(
      nearly({
        frontBoard: 13,
        backBoard: 347,
        folds: [
          { from: 163, to: 165 },
          { from: 195, to: 197 },
        ],
        spine: { from: 163, to: 197 },
      }),
    );
  });

  test('has longer folds over a lining: pi/2 (1 + 4/pi)', () => {
    const fold = 2 + Math.PI / 2;
    const front = (360 - 330 - 2 * fold) / 2;
    expect(wrapPlaces(plainSource({ leather: LINED }))).toEqual(
      nearly({
        frontBoard: front,
        backBoard: 360 - front,
        folds: [
          { from: front + 150, to: front + 150 + fold },
          { from: 210 - front - fold, to: 210 - front },
        ],
        spine: { from: front + 150, to: 210 - front },
      }),
    );
  });

  test('has no folds at a back of half a circle, which is all bend: pi (15 + 4/pi)', () => {
    const round = plainSource({ book: { spine: { shape: 'rounded', rise_mm: 15 } } });
    const bend = 15 * Math.PI + 4;
    const { folds, spine, frontBoard } = wrapPlaces(round);
    expect(folds).toEqual([]);
    expect(frontBoard).toBeCloseTo((60 - bend) / 2, 3);
    expect(spine).toEqual({ from: expect.closeTo((360 - bend) / 2, 3), to: expect.closeTo((360 + bend) / 2, 3) });
  });

  test('asks a lining to be shorter than the outside: pi (1 + 4/pi - 2/pi)', () => {
    expect(liningDifference(plainSource({ leather: LINED }))).toBeCloseTo(Math.PI + 2, 9);
    expect(liningDifference(plainSource())).toBe(0);
  });
});
