import { describe, expect, test } from 'vitest';
import { edgeRows, roomWords } from '../../../src/app/loupe/edgeRows.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { coverOf } from '../../core/pattern/coverOf.ts';

describe('the room left', () => {
  test('both fore-edges are one row where they are alike, and two where the boards sit to one side', () => {
    const names = (seating: string): string[] => edgeRows(coverOf({ seating })).map(({ name }) => name);
    expect(names('centred')).toEqual(['fore-edges', 'head', 'tail']);
    expect(names('front')).toEqual(['front fore-edge', 'back fore-edge', 'head', 'tail']);
  });

  test('a row spans the gaps of thin, middle and thick leather', () => {
    const design = coverOf({});
    const { thin, thick } = design.fits;
    const [foreEdges] = edgeRows(design);
    expect([foreEdges?.least, foreEdges?.most]).toEqual([thick.foreEdge.front, thin.foreEdge.front]);
  });

  test('room is said as a range, an overrun by its word, and both by their signs', () => {
    const mm = printer('mm');
    expect(roomWords(1.14, 2.06, mm)).toBe('1.1 to 2.0 mm');
    expect(roomWords(1.14, 1.14, mm)).toBe('1.1 mm');
    expect(roomWords(-1.25, -0.31, mm)).toBe('overrun up to 1.3 mm');
    expect(roomWords(-0.31, -0.31, mm)).toBe('overrun 0.4 mm');
    expect(roomWords(-0.31, 0.58, mm)).toBe('−0.4 mm to 0.5 mm');
  });
});
