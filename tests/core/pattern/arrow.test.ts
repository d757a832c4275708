import { describe, expect, test } from 'vitest';
import { directionMark } from '../../../src/core/pattern/arrow.ts';
import { nearly, placesOf, plainSource } from './plainSource.ts';

const source = plainSource();
const BARB = Math.sqrt(3) / 2;

describe('the arrow along the backbone of the hide', () => {
  test('has two ends with barbs of 5 mm at 30 degrees', () => {
    const { marks } = directionMark(source, [50, 10], 40, 0);
    expect(placesOf(marks)).toEqual(
      nearly([
        [30, 10, 70, 10],
        [30, 10, 30 + 5 * BARB, 7.5],
        [30, 10, 30 + 5 * BARB, 12.5],
        [70, 10, 70 - 5 * BARB, 12.5],
        [70, 10, 70 - 5 * BARB, 7.5],
      ]),
    );
  });

  test('has barbs of a quarter where it is short', () => {
    expect(placesOf(directionMark(source, [50, 10], 8, 0).marks)[1]).toEqual(nearly([46, 10, 46 + 2 * BARB, 9]));
  });

  test('has its words on its left, 3 mm high or a tenth of its length', () => {
    const words = (length: number, angle: number) => directionMark(source, [50, 10], length, angle).words;
    const text = "this way along the hide's backbone";
    expect(words(40, Math.PI / 2)).toEqual(nearly([[text, [47, 10], 3, Math.PI / 2, 'direction']]));
    expect(words(20, 0)).toEqual(nearly([[text, [50, 12], 2, 0, 'direction']]));
  });

  test('is left out on card', () => {
    expect(directionMark({ ...source, isCard: true }, [50, 10], 40, 0)).toEqual({ marks: [], words: [] });
  });
});
