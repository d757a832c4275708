import { describe, expect, test } from 'vitest';
import { readingsOf } from '../../../src/app/photograph/readings.ts';

const NONE = { across: '', along: '', ruler: '', thickness: '' };
const shotWith = (page: string) =>
  ({ picture: { marks: [{ page, mark: '0', corners: [], seen: [], u: 0.1 }] } }) as unknown as Parameters<
    typeof readingsOf
  >[0]['shots'][number];

describe('what a ruler says of the sheet', () => {
  test('an unread print is doubted by 1 %, and no ruler is named', () => {
    const { print, ruler, meant } = readingsOf({ shots: [], paper: null, typed: NONE }, 'mm');
    expect(print.size).toEqual({ value: 1, u: 0.01 });
    expect([print.across, print.along, ruler]).toEqual([null, null, '']);
    expect(meant).toEqual({ across: 190, along: 280 });
  });

  test('both bars give a scale each, by the ruler that is named or the usual one', () => {
    const typed = { ...NONE, across: '189.5', along: '279 mm' };
    const { print, ruler } = readingsOf({ shots: [], paper: null, typed }, 'mm');
    expect(print.across?.value).toBeCloseTo(189.5 / 190, 9);
    expect(print.along?.value).toBeCloseTo(279 / 280, 9);
    expect(ruler).toBe('ruler A');
    expect(readingsOf({ shots: [], paper: null, typed: { ...typed, ruler: ' hers ' } }, 'mm').ruler).toBe('hers');
  });

  test('a reading that cannot be is told at its field, and the other stands', () => {
    const typed = { ...NONE, across: '150', along: 'long', thickness: '1 1/8' };
    const { print, issues, thickness, ruler } = readingsOf({ shots: [], paper: null, typed }, 'mm');
    expect(issues.across).toContain('too far off: it was meant to be 190 mm');
    expect(issues.along).toContain('“long” is not a length');
    expect([print.across, print.along, ruler]).toEqual([null, null, '']);
    const inches = readingsOf({ shots: [], paper: null, typed: { ...NONE, along: '9' } }, 'in');
    expect(inches.issues.along).toContain('meant to be 10 1/4 in');
    // A fraction is inches.
    expect(thickness).toBeCloseTo(28.575, 6);
  });

  test('the bars are those of the paper that the photographs show, or the sides of a plain one', () => {
    expect(readingsOf({ shots: [shotWith('Letter 2')], paper: null, typed: NONE }, 'mm').meant.along).toBe(260);
    const plain = readingsOf({ shots: [], paper: 'A3', typed: { ...NONE, across: '297.5' } }, 'mm');
    expect(plain.meant).toEqual({ across: 297, along: 420 });
    expect(plain.print.across?.value).toBeCloseTo(297.5 / 297, 9);
  });
});
