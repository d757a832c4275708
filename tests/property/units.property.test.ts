import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, type LengthFormat } from '../../src/core/units/formatLength.ts';
import { MM_PER_INCH, MM_PER_OUNCE, type Mm, mm } from '../../src/core/units/mm.ts';
import { parseLeatherWeight } from '../../src/core/units/parseLeatherWeight.ts';
import { parseLength } from '../../src/core/units/parseLength.ts';
import { printer } from '../../src/core/units/printer.ts';
import { ROUNDING_NOISE_MM } from '../../src/core/units/rounding.ts';
import { checkLaw } from '../laws.ts';

const length = fc.double({ min: 0, max: 2000, noNaN: true }).map(mm);
const format = fc.record({
  unit: fc.constantFrom('mm', 'in'),
  denominator: fc.constantFrom(16, 32, 64),
  decimals: fc.integer({ min: 0, max: 4 }),
  round: fc.constantFrom('up', 'nearest', 'down'),
}) satisfies fc.Arbitrary<LengthFormat>;

const stepOf = ({ unit, denominator, decimals }: LengthFormat): number =>
  unit === 'in' ? MM_PER_INCH / denominator : 10 ** -decimals;

function parsed(text: string): Mm {
  const reading = parseLength(text, { defaultUnit: 'mm' });
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

/** Text built from the pieces makers type, so that a good share of it comes close to being valid. */
const almostTyped = fc
  .array(fc.constantFrom(...'0123456789 -–/⁄.,"\'½¼²₂″'.split(''), ' to ', 'in', 'mm', 'cm', 'oz', '1/2'), {
    maxLength: 9,
  })
  .map((pieces) => pieces.join(''));

describe('units', () => {
  test('what is printed reads back within one step, half a step for nearest', () => {
    checkLaw(
      fc.property(length, format, (value, how) => {
        const error = Math.abs(parsed(formatLength(value, how)) - value);
        expect(error).toBeLessThanOrEqual(stepOf(how) * (how.round === 'nearest' ? 0.5 : 1) + ROUNDING_NOISE_MM);
      }),
    );
  });

  test('up never prints a smaller length, down never a larger one', () => {
    checkLaw(
      fc.property(length, format, (value, how) => {
        expect(parsed(formatLength(value, { ...how, round: 'up' }))).toBeGreaterThanOrEqual(value - ROUNDING_NOISE_MM);
        expect(parsed(formatLength(value, { ...how, round: 'down' }))).toBeLessThanOrEqual(value + ROUNDING_NOISE_MM);
      }),
    );
  });

  test('printing what was read from print changes nothing', () => {
    checkLaw(
      fc.property(length, format, (value, how) => {
        const once = formatLength(value, how);
        expect(formatLength(parsed(once), how)).toBe(once);
      }),
    );
  });

  test('a longer length never prints shorter', () => {
    checkLaw(
      fc.property(length, length, format, (a, b, how) => {
        const [short, long] = a < b ? [a, b] : [b, a];
        expect(parsed(formatLength(short, how))).toBeLessThanOrEqual(parsed(formatLength(long, how)));
      }),
    );
  });

  test('a printed fraction is reduced, its denominator a power of two up to the one asked for', () => {
    checkLaw(
      fc.property(length, format, (value, how) => {
        const text = formatLength(value, { ...how, unit: 'in' });
        const [, over, under] = /^(?:\d+ )?(\d+)\/(\d+) in$/.exec(text) ?? [];
        if (under === undefined) {
          expect(text).toMatch(/^\d+ in$/);
          return;
        }
        expect(Number(over) % 2).toBe(1);
        expect(Number(over)).toBeLessThan(Number(under));
        expect(how.denominator % Number(under)).toBe(0);
      }),
    );
  });

  test('point or comma, inch word or inch mark, dash or space: the spelling does not change the length', () => {
    checkLaw(
      fc.property(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 63 }), (whole, over) => {
        const value = parsed(`${whole} ${over}/64 in`);
        expect(parsed(`${whole}-${over}/64"`)).toBe(value);
        expect(parsed(`${whole} ${over}⁄64 inches`)).toBe(value);
        expect(parsed(`${whole},${over} cm`)).toBe(parsed(`${whole}.${over} cm`));
      }),
    );
  });

  test('a range of weights reads back in order, and a printed weight reads back within 0.005 mm', () => {
    checkLaw(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), (low, extra) => {
        const reading = parseLeatherWeight(`${low}-${low + extra} oz`);
        if (!reading.ok) throw new Error(reading.message);
        expect(reading.value).toEqual({ min: low * MM_PER_OUNCE, max: (low + extra) * MM_PER_OUNCE });
        expect(parseLeatherWeight(`${low + extra}-${low} oz`).ok).toBe(false);
      }),
    );
    checkLaw(
      fc.property(fc.double({ min: 0.5, max: 9, noNaN: true }).map(mm), (thickness) => {
        const reading = parseLeatherWeight(printer('mm').weight(thickness));
        if (!reading.ok) throw new Error(reading.message);
        expect(Math.abs(reading.value.min - thickness)).toBeLessThanOrEqual(0.005 + ROUNDING_NOISE_MM);
      }),
    );
  });

  test('no text throws: it gives a finite length in range or a message of three parts', () => {
    checkLaw(
      fc.property(
        fc.oneof(almostTyped, fc.string({ unit: 'binary' })),
        fc.constantFrom('mm', 'in'),
        (text, defaultUnit) => {
          for (const reading of [parseLength(text, { defaultUnit }), parseLeatherWeight(text)]) {
            if (!reading.ok) expect(reading.message).toMatch(/^(“.+” is not .+|Nothing is typed)\. .+\.$/s);
            else if (typeof reading.value === 'number') expect(reading.value).toSatisfy((v) => v >= 0 && v <= 10_000);
            else expect(reading.value).toSatisfy(({ min, max }) => min > 0 && min <= max && max <= 10);
          }
        },
      ),
    );
  });
});
