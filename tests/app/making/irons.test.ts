import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepIrons, keptIrons } from '../../../src/app/making/irons/ironList.ts';
import { perInchOf, readPerInch, readTeeth, readTenStrides, strideOf } from '../../../src/app/making/irons/readIron.ts';
import type { Iron } from '../../../src/core/index.ts';
import { coverOf } from '../../core/pattern/coverOf.ts';

const read = <T>(
  reading: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string },
) => (reading.ok ? reading.value : reading.message);

describe('a stride', () => {
  // The inch is 25.4 mm by the international yard and pound agreement of 1959; the division by hand, to a ten-thousandth.
  test.each([
    [5, 5.08],
    [6, 4.2333],
    [7, 3.6286],
    [8, 3.175],
    [9, 2.8222],
    [10, 2.54],
    [12, 2.1167],
  ])('of %d stitches per inch is %d mm', (count, stride) => {
    expect(strideOf(count)).toBe(stride);
    expect(read(readPerInch(String(count)))).toBe(stride);
    expect(perInchOf(stride)).toBe(String(count));
  });

  test('is a tenth of ten strides measured, in the unit that is typed', () => {
    expect(read(readTenStrides('38.4', 'mm'))).toBe(3.84);
    expect(read(readTenStrides('1 1/4 in', 'mm'))).toBe(3.175);
    expect(read(readTenStrides('1.25', 'in'))).toBe(3.175);
  });

  test('that no iron has is refused with what to write', () => {
    expect(read(readPerInch('0'))).toBe('“0” is not stitches per inch. Write a number from 2 to 25.');
    expect(read(readPerInch('fine'))).toContain('“fine” is not stitches per inch.');
    expect(read(readTenStrides('3', 'mm'))).toContain('Write 10 mm to 250 mm.');
  });
});

test('teeth are whole numbers in a row, by comma, space or plus', () => {
  expect(read(readTeeth('10, 2'))).toEqual([10, 2]);
  expect(read(readTeeth('10+6 2'))).toEqual([10, 6, 2]);
  for (const text of ['', '2.5', '0', '-3', 'two', '25', '1 2 3 4 5 6 7 8 9'])
    expect(read(readTeeth(text))).toContain('Write whole numbers from 1 to 24, as 10, 2.');
});

describe('the list of irons', () => {
  const store = new Map<string, string>();
  beforeEach(() =>
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => store.get(key) ?? null,
      setItem: (key: string, value: string) => void store.set(key, value),
    }),
  );
  afterEach(() => {
    vi.unstubAllGlobals();
    store.clear();
  });

  test('is empty at first, and comes back as it was kept', () => {
    expect(keptIrons()).toEqual({ irons: [] });
    const seam = { iron: { kind: 'lacing chisel', pitch_mm: 4, teeth: [4, 1], tooth_mm: 2.4 } };
    const iron = coverOf({ seam }).job.seam.iron as Iron;
    expect(keepIrons({ irons: [iron] })).toBe(true);
    expect(keptIrons()).toEqual({ irons: [iron] });
  });

  test('is refused where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => null,
      setItem: () => {
        throw new Error('full');
      },
    });
    expect(keepIrons({ irons: [] })).toBe(false);
  });
});
