import { expect, test } from 'vitest';
import { likelihood } from '../../../src/core/mockup/likelihood.ts';
import { printer } from '../../../src/core/units/printer.ts';

test('a chance is said in a word and in percent, and never as certain unless it is', () => {
  const said = [1, 0.995, 0.99, 0.95, 0.949, 0.8, 0.5, 0.2, 0.05, 0.049, 0.01, 0.004, 0];
  expect(said.map((chance) => likelihood(chance, printer('mm')))).toEqual([
    'almost certain, 100 %',
    'almost certain, over 99 %',
    'almost certain, 99 %',
    'almost certain, 95 %',
    'very likely, 95 %',
    'very likely, 80 %',
    'likely, 50 %',
    'possible, 20 %',
    'unlikely, 5 %',
    'very unlikely, 5 %',
    'very unlikely, 1 %',
    'very unlikely, under 1 %',
    'very unlikely, under 1 %',
  ]);
});
