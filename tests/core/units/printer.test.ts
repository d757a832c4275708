import { describe, expect, test } from 'vitest';
import { type Printer, printer } from '../../../src/core/units/printer.ts';

const INCH = 25.4;
const [metric, imperial] = [printer('mm'), printer('in')];

describe('a size has one text, true to 0.005 mm', () => {
  test.each([
    [380, '380 mm'],
    [382.5, '382.5 mm'],
    [1.5875, '1.59 mm'],
    [3.175, '3.18 mm'],
    [28.575, '28.58 mm'],
    [4.76, '4.76 mm'],
    [0, '0 mm'],
    [-2.5, '−2.5 mm'],
  ])('%f mm in millimetres: %s', (value, text) => expect(metric.size(value)).toBe(text));

  test.each([
    [8.5 * INCH, '8 1/2 in'],
    [14.9375 * INCH, '14 15/16 in'],
    [INCH / 64, '1/64 in'],
    [4.76, '3/16 in'],
    [380, '380 mm'],
    [14.96 * INCH, '379.98 mm'],
    [0, '0 in'],
  ])('%f mm in inches: %s', (value, text) => expect(imperial.size(value)).toBe(text));
});

test('a measure that is worked out is printed as a size, and in inches to 0.001 in between two fractions', () => {
  expect([133.42, 3.175].map(metric.exact)).toEqual(['133.42 mm', '3.18 mm']);
  expect([133.42, 3.175].map(imperial.exact)).toEqual(['5.253 in', '1/8 in']);
});

test('a small length keeps its decimals, so that a column of them can be compared', () => {
  expect([metric.small(1), metric.small(2.97, 1), imperial.small(INCH), imperial.small(INCH, 1)]).toEqual([
    '1.00 mm',
    '3.0 mm',
    '1.000 in',
    '1.00 in',
  ]);
});

test('a length that is wished is printed as a size, and in inches always as a fraction', () => {
  expect([4, 3.175].map(metric.wish)).toEqual(['4 mm', '3.18 mm']);
  expect([4, 3.175, 40].map(imperial.wish)).toEqual(['5/32 in', '1/8 in', '1 9/16 in']);
});

describe('what is only computed', () => {
  test('is rounded to a step that a ruler shows, gaps downward', () => {
    expect([metric.length(9.96), imperial.length(0.3 * INCH), imperial.length(1.58 * INCH)]).toEqual([
      '10.0 mm',
      '19/64 in',
      '1 19/32 in',
    ]);
    expect([metric.gap(1.29), metric.gap(-3.81), metric.signedGap(-3.81)]).toEqual(['1.2 mm', '3.9 mm', '−3.9 mm']);
    expect([imperial.gap(1), imperial.gap(-1), imperial.range([1, 2])]).toEqual([
      '1/32 in',
      '3/64 in',
      '1/32 to 5/64 in',
    ]);
    expect([metric.range([1, 1.44]), metric.range([1.01, 1.04])]).toEqual(['1.0 to 1.4 mm', '1.0 mm']);
    expect([metric.fine(1.2375), metric.fine(1.2), imperial.fine(1.2375)]).toEqual(['1.24 mm', '1.2 mm', '3/64 in']);
  });

  test('an angle is in whole degrees, up unless less is safe', () => {
    const degrees = (value: number) => (value * Math.PI) / 180;
    expect(metric.angle(degrees(59.6))).toBe('60 degrees');
    expect(metric.angle(degrees(90))).toBe('90 degrees');
    expect(metric.angle(degrees(0.2))).toBe('1 degree');
    expect(metric.angle(degrees(179.7), 'down')).toBe('179 degrees');
  });
});

test('lace and thread are rounded up, by the centimetre or by the inch', () => {
  expect([metric.reel(1196), metric.reel(1200), metric.reel(1200.00005)]).toEqual(['1.20 m', '1.20 m', '1.21 m']);
  expect([imperial.reel(1196), imperial.reel(44.3125 * INCH), imperial.reel(3 * INCH), imperial.reel(0)]).toEqual([
    '4 ft',
    '3 ft 9 in',
    '3 in',
    '0 in',
  ]);
});

test('leather is in ounces where it is sold so, in either unit, else in mm', () => {
  for (const print of [metric, imperial]) {
    expect(print.weight(1.5875)).toBe('4 oz');
    expect(print.weight(0.75 * (INCH / 64))).toBe('3/4 oz');
    expect(print.weight(1.58751)).toBe('1.59 mm');
    expect(print.weights(1.5875, 1.984375)).toBe('4-5 oz');
    expect(print.weights(1.5875, 1.5875)).toBe('4 oz');
    expect(print.weights(1.6, 2)).toBe('1.6-2 mm');
    expect(print.weights(1.5875, 2)).toBe('4 oz-2 mm');
  }
});

test('an area stands in both units, the job’s own first', () => {
  expect(metric.area(178_000)).toBe('17.8 dm² (1.92 sq ft)');
  expect(imperial.area(178_000)).toBe('1.92 sq ft (17.8 dm²)');
});

test('shares, forces, money and numbers have one look and a true minus sign', () => {
  const sign = { currency: 'Kr', decimals: 2 };
  expect([metric.share(0.436), metric.share(0.957, 1), metric.share(-0.02)]).toEqual(['44 %', '95.7 %', '−2 %']);
  expect([metric.force(3.24), metric.force(9.95), metric.force(12.4)]).toEqual(['3.2 N', '10 N', '12 N']);
  expect([metric.count(0, 'lace', 'laces'), metric.count(1, 'lace', 'laces')]).toEqual(['0 laces', '1 lace']);
  expect([metric.money(12.5, sign), metric.money(-12.5, sign), metric.money(3, { currency: '', decimals: 0 })]).toEqual(
    ['Kr 12.50', 'Kr −12.50', '3'],
  );
  expect([metric.number(-0.004, 2), metric.number(-0.5, 2)]).toEqual(['0.00', '−0.50']);
});

describe('a column', () => {
  const added = (print: Printer, total: number, parts: readonly number[]) => {
    const { steps, text, unit } = print.column(total);
    return { unit, total: text(steps(total)), parts: parts.map((part) => text(steps(part))) };
  };

  test('is in the unit of its total: what no 1/64 in says is added up in mm', () => {
    expect(added(imperial, 16 * INCH, [165, 6.35])).toEqual({ unit: 'in', total: '16', parts: ['6 1/2', '1/4'] });
    expect(added(imperial, 380, [165, 6.35])).toEqual({ unit: 'mm', total: '380', parts: ['165', '6.35'] });
    expect(added(metric, 382.5, [165, 1.2375])).toEqual({ unit: 'mm', total: '382.5', parts: ['165', '1.24'] });
  });
});
