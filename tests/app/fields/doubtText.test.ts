import { expect, test } from 'vitest';
import { giveOrTake } from '../../../src/app/fields/doubtText.ts';
import { printer } from '../../../src/core/units/printer.ts';

const [mm, inches] = [printer('mm'), printer('in')];

test('a doubt is shown as two standard uncertainties, in the unit of its input', () => {
  expect(giveOrTake('book.width_mm', 0.25, mm)).toBe('0.5 mm');
  expect(giveOrTake('book.width_mm', 0.25, inches)).toBe('0.020 in');
  expect(giveOrTake('making.changeAlong', 0.007, mm)).toBe('1.4 %');
  expect(giveOrTake('leather.outside.neutral', 0.08, mm)).toBe('0.16');
  expect(giveOrTake('scale of ruler A', 0.001, mm)).toBe('0.2 %');
});
