import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { axisTicks } from '../../../src/app/explore/axisTicks.ts';
import { bandPath, linePath, plotFrame, stackedParts, stretches } from '../../../src/app/explore/chartLayout.ts';
import { bareText, fieldFigure, resultFigure } from '../../../src/app/explore/figure.ts';
import { growthWords, readingWords } from '../../../src/app/explore/readingWords.ts';
import { sweepRange } from '../../../src/app/explore/sweepRange.ts';
import { exploreFields } from '../../../src/core/explore/exploreField.ts';
import type { SweepPoint } from '../../../src/core/explore/sweep.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { jobIssue } from '../../../src/core/job/jobIssue.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const [metric, imperial] = [printer('mm'), printer('in')];
const GAP = { unit: 'mm', group: 'gaps' } as const;
const DEGREES = { unit: 'deg', group: 'closing' } as const;
const RATIO = { unit: '', group: 'leather' } as const;
const MM = resultFigure(GAP, metric);
const SUM = resultFigure({ unit: 'mm', group: 'allowances' }, metric);
const INCH = resultFigure(GAP, imperial);
const fields = (units: 'mm' | 'in') =>
  exploreFields(tideLedger, coverDesign(soundJob({ ...tideLedger, work: { units } })));

describe('ticks', () => {
  test('are round, lie inside, and are no more than asked', () => {
    for (const figure of [MM, INCH, resultFigure(DEGREES, metric), resultFigure(RATIO, metric)]) {
      for (const [from, to] of [
        [0.13, 0.94],
        [-6.1, 0.75],
        [368, 386],
        [-180, 180],
      ] as const) {
        for (const most of [2, 5, 12]) {
          const ticks = axisTicks(from, to, figure, most);
          expect(ticks.length).toBeLessThanOrEqual(most + 1);
          for (const { at } of ticks) {
            expect(at).toBeGreaterThanOrEqual(from - 1e-6);
            expect(at).toBeLessThanOrEqual(to + 1e-6);
          }
          expect(new Set(ticks.map(({ text }) => text)).size).toBe(ticks.length);
        }
      }
    }
  });

  test('of millimetres go by 1, 2 and 5, of inches by halves of an inch', () => {
    expect(axisTicks(0, 5, MM, 5).map(({ text }) => text)).toEqual(['0', '1', '2', '3', '4', '5']);
    expect(axisTicks(-2, 2, MM, 2).map(({ text }) => text)).toEqual(['−2', '0', '2']);
    const inches = axisTicks(0, 25.4, INCH, 4);
    expect(inches.map(({ text }) => text)).toEqual(['0', '1/4', '1/2', '3/4', '1']);
    expect(nth(inches, 3).at).toBeCloseTo(19.05, 9);
  });
});

describe('a figure', () => {
  test('is printed as everything else prints it: gaps as gaps, cut sizes as cut, sums as their parts, whole degrees', () => {
    expect(MM.text(-1.256)).toBe('−1.3 mm');
    expect(MM.text(1.256)).toBe('1.2 mm');
    expect(INCH.text(-25.4 / 64)).toBe('−1/64 in');
    expect(resultFigure({ unit: 'mm', group: 'cut sizes' }, metric).text(382.5)).toBe('382.5 mm');
    expect(resultFigure({ unit: 'mm', group: 'allowances' }, metric).text(1.2375)).toBe('1.24 mm');
    expect(resultFigure(DEGREES, imperial).text(90.04)).toBe('91°');
  });

  test('under a heading omits the unit of the heading, but no other', () => {
    const width = resultFigure({ unit: 'mm', group: 'cut sizes' }, imperial);
    expect([bareText(381, width), bareText(380, width), bareText(-1.256, MM)]).toEqual(['15', '380 mm', '−1.3']);
  });

  test('of a leather is in ounces with inches, and in mm where it is not a quarter of an ounce', () => {
    const weight = defined(fields('in').find(({ id }) => id === 'leather.outside'));
    expect(fieldFigure(weight, imperial).text(1.984375)).toBe('5 oz');
    expect(fieldFigure(weight, imperial).text(2)).toBe('2 mm');
    expect(fieldFigure(weight, metric).text(2)).toBe('2 mm');
  });
});

test('a length of an inch job is a fraction or, between two of them, a decimal of an inch', () => {
  const ease = defined(fields('in').find(({ id }) => id === 'ease.head_mm'));
  expect([25.4 / 32, 0.9].map(fieldFigure(ease, imperial).text)).toEqual(['1/32 in', '0.035 in']);
  expect(fieldFigure(ease, metric).text(0.9)).toBe('0.9 mm');
});

describe('the range drawn', () => {
  test('holds the present value and lies within what a job allows', () => {
    for (const units of ['mm', 'in'] as const) {
      for (const field of fields(units)) {
        for (const zoom of [1 / 8, 1, 8]) {
          const { from, to, count } = sweepRange(field, zoom);
          expect(from).toBeGreaterThanOrEqual(field.note.min - 1e-9);
          expect(to).toBeLessThanOrEqual(field.note.max + 1e-9);
          expect(to).toBeGreaterThan(from);
          expect(count).toBeLessThanOrEqual(130);
          const slip = (to - from) / (count - 1);
          expect(field.present).toBeGreaterThan(from - slip);
          expect(field.present).toBeLessThan(to + slip);
        }
      }
    }
  });

  test('of a millimetre field has tidy values', () => {
    const ease = defined(fields('mm').find(({ id }) => id === 'ease.head_mm'));
    const { from, to, count } = sweepRange({ ...ease, present: 1 }, 1);
    expect({ from, to, count }).toEqual({ from: 0, to: 6, count: 61 });
    const texts = Array.from({ length: count }, (_, i) => bareText((to * i) / (count - 1), fieldFigure(ease, metric)));
    expect(new Set(texts).size).toBe(count);
  });
});

const reading = (at: number, thin: number | null, thick: number | null): SweepPoint => ({
  at,
  verdict: 'fits',
  state: 'fits',
  readings: [
    { values: { thin, nominal: thin, thick }, limit: { fits: 0.5, fails: -0.5, failing: 'below' }, parts: [] },
  ],
});
const refused: SweepPoint = { at: 3, issue: jobIssue('rule', 'book.width_mm', '3', 'at most 2', 'measure again') };

describe('a curve', () => {
  test('is split where no job has the value and where there is no result', () => {
    const runs = stretches([reading(1, 1, 0), reading(2, 1, 0), refused, reading(4, null, 1), reading(5, 2, 1)]);
    expect(runs.map((run) => run.map(({ at }) => at))).toEqual([[1, 2], [5]]);
    expect(stretches([refused])).toEqual([]);
  });

  test('has room for every value and both limits, larger values higher up', () => {
    const run = nth(stretches([reading(0, 3, 2), reading(10, 2, 1)]), 0);
    const frame = plotFrame(run, { from: 0, to: 10 }, 400, 300);
    for (const value of [3, 1, 0.5, -0.5]) {
      expect(frame.y(value)).toBeGreaterThan(frame.top);
      expect(frame.y(value)).toBeLessThan(frame.bottom);
    }
    expect(frame.y(3)).toBeLessThan(frame.y(2));
    expect([frame.x(0), frame.x(10)]).toEqual([frame.left, frame.right]);
    expect(linePath(run, frame, ({ thick }) => thick).match(/[ML]/g)).toEqual(['M', 'L']);
    expect(
      bandPath(
        run,
        frame,
        ({ thin }) => thin,
        ({ thick }) => thick,
      ),
    ).toMatch(/^M[^Z]+Z$/);
  });

  test('that is level, or empty, still has a scale', () => {
    for (const points of [nth(stretches([reading(0, 5, 5)]), 0).map((point) => ({ ...point, limit: null })), []]) {
      const { low, high, y } = plotFrame(points, { from: 0, to: 1 }, 400, 300);
      expect(high).toBeGreaterThan(low);
      expect(Number.isFinite(y(5))).toBe(true);
    }
  });
});

const sum = (at: number, parts: Readonly<Record<string, number>>): SweepPoint => {
  const total = Object.values(parts).reduce((all, length) => all + length, 0);
  const written = Object.entries(parts).map(([name, length_mm]) => ({ name, length_mm }));
  const values = { thin: total, nominal: total, thick: total };
  return { at, verdict: 'fits', state: 'fits', readings: [{ values, limit: null, parts: written }] };
};

describe('a sum', () => {
  const points = [
    sum(1, { folds: 1, margin: 4 }),
    sum(2, { folds: 2, margin: 4 }),
    sum(3, { folds: 3, margin: 4, swell: 1 }),
  ];
  const run = nth(stretches(points), 0);
  const stack = stackedParts(run);

  test('is stacked from zero to its total, the parts that grow on top, one that appears later from zero', () => {
    expect(stack.map(({ name }) => name)).toEqual(['margin', 'swell', 'folds']);
    expect(run.map(nth(stack, 0).lower)).toEqual([0, 0, 0]);
    expect(run.map(nth(stack, 1).upper)).toEqual([4, 4, 5]);
    expect(run.map(nth(stack, -1).upper)).toEqual(run.map(({ thick }) => thick));
    for (let i = 1; i < stack.length; i++)
      expect(run.map(nth(stack, i).lower)).toEqual(run.map(nth(stack, i - 1).upper));
  });

  test('starts at the foot of the plot', () => {
    const frame = plotFrame(run, { from: 1, to: 3 }, 400, 300);
    expect(frame.low).toBe(0);
    expect(frame.y(0)).toBe(frame.bottom);
  });

  test('is read out part by part, with its growth for one more step of the field', () => {
    expect(readingWords(nth(points, 1), { title: 'Allowance', isRange: false }, SUM, SUM)).toBe(
      'At 2 mm: allowance 6 mm (2 folds, 4 margin). The cover as a whole fits.',
    );
    expect(growthWords(points, 1, 0.1, SUM, SUM)).toBe('Here 0.1 mm more asks for 0.15 mm more.');
    expect(growthWords([...points].reverse(), 1, 0.1, SUM, SUM)).toBe('Here 0.1 mm more asks for 0.15 mm more.');
    expect(growthWords(points, 0, 0.1, SUM, SUM)).toBe('');
    const level = [sum(1, { margin: 4 }), sum(2, { margin: 4 }), sum(3, { margin: 4 })];
    expect(growthWords(level, 1, 0.1, SUM, SUM)).toBe('Here 0.1 mm more asks for no more.');
  });
});

describe('the text read aloud', () => {
  const gap = { title: 'Head gap', isRange: true };
  test('says value, result over the weight range, and the verdict of the whole cover', () => {
    expect(readingWords(reading(2, 1.5, 1), gap, SUM, MM)).toBe(
      'At 2 mm: head gap 1.5 thin, 1.5 middle, 1.0 mm thick. The cover as a whole fits.',
    );
    expect(readingWords(reading(2, 1, 1), gap, SUM, MM)).toContain('head gap 1.0 mm.');
    expect(readingWords(reading(2, null, null), gap, SUM, MM)).toContain('head gap none.');
  });

  test('says why no job has the value', () => {
    expect(readingWords(refused, gap, SUM, MM)).toBe('At 3 mm: no such job; allowed is at most 2.');
  });
});
