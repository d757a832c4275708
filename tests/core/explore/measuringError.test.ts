import { describe, expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import shoreGuide from '../../../public/jobs/shore-guide.json' with { type: 'json' };
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { chanceOfFit } from '../../../src/core/explore/chanceOfFit.ts';
import { measuresOf } from '../../../src/core/explore/measure.ts';
import { sensitivities } from '../../../src/core/explore/sensitivity.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { uncertainty } from '../../../src/core/report/uncertainty.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

/** A plain book whose gaps are linear in its measures: one thickness of leather, pages that give all that is asked. */
const plain = (pattern: object, error = 0.5) =>
  coverDesign(
    soundJob({
      ...tideLedger,
      book: { ...tideLedger.book, pageGive: 0.9, jointDip_mm: 0, measured: { error_mm: error } },
      leather: { outside: { min_mm: 1.8, max_mm: 1.8 } },
      pattern,
    }),
  );

const designOf = (document: unknown) => coverDesign(soundJob(document));

describe('a sensitivity', () => {
  test('of a plain book is -1 and -1/2 at the fore-edge for width and thickness, -1/2 at head and tail for height', () => {
    const rates = Object.fromEntries(sensitivities(plain({})).map(({ measure, rates }) => [measure.id, rates]));
    expect(rates.width).toMatchObject({ head: 0, tail: 0 });
    expect(defined(rates.width).closed).toBeCloseTo(-1, 9);
    expect(defined(rates.width).open).toBeCloseTo(-1, 9);
    expect(defined(rates.thickness).closed).toBeCloseTo(-1 / 2, 9);
    expect(defined(rates.height).head).toBeCloseTo(-1 / 2, 9);
    expect(defined(rates.height).tail).toBeCloseTo(-1 / 2, 9);
    expect(defined(rates.height).closed).toBeCloseTo(0, 9);
  });

  test('carries the error to the gap, so that together they are the worst case of the report', () => {
    for (const document of [tideLedger, shoreGuide]) {
      const design = designOf(document);
      const ruler = sensitivities(design).filter(({ measure }) => measure.id !== 'board');
      const worst = ruler.reduce((sum, { shifts }) => sum + shifts.closed, 0);
      // The report steps one way, this view both ways; they part where pockets begin to spread the fore-edge.
      expect(worst).toBeCloseTo(uncertainty(design).foreEdge.worst_mm, 1);
    }
  });

  test('puts the measure that may move a gap furthest first', () => {
    for (const document of [tideLedger, choirBook, shoreGuide]) {
      const largest = sensitivities(designOf(document)).map(({ shifts }) => Math.max(...Object.values(shifts)));
      expect([...largest].sort((a, b) => b - a)).toEqual(largest);
    }
    expect(nth(sensitivities(designOf(tideLedger)), 0).measure.id).toBe('width');
  });

  test('counts a rise for a rounded back only, and the fore-edge apart from the spine for a wedge only', () => {
    const ids = (document: unknown): string[] => measuresOf(soundJob(document)).map(({ id }) => id);
    expect(ids(choirBook)).toContain('rise');
    expect(ids(tideLedger)).not.toContain('rise');
    const wedge = { ...tideLedger, book: { ...tideLedger.book, foreEdgeThickness_mm: 30 } };
    expect(ids(wedge)).toContain('foreEdgeThickness');
    expect(ids(tideLedger)).not.toContain('foreEdgeThickness');
  });
});

/** Four standard deviations of a count of n trials of chance p, as a share: a right build is off by more 1 time in 16,000. */
const margin = (p: number, n: number): number => 4 * Math.sqrt((p * (1 - p)) / n);

/** Standard normal distribution function by Simpson's rule from 0. */
function normalBelow(x: number): number {
  const steps = 2000;
  const density = (t: number): number => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
  let sum = 0;
  for (let i = 0; i <= steps; i++) sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * density((x * i) / steps);
  return 0.5 + (sum * (x / steps)) / 3;
}

describe('the chance that the cover fits', () => {
  const draws = 20_000;
  const sized = plain({}).pieces.outside;
  const ERROR = 0.5;
  /** Head gap h of a plain book whose height alone is off by d is h - d / 2. */
  const headGap = (wanted: number) => {
    const spare = plain({}).fits.thick.head;
    return plain({ outsideHeight_mm: sized.height - 2 * (spare - wanted) });
  };

  test('of one measure that strays evenly is linear in the gap', () => {
    for (const gap of [-0.2, -0.1, 0, 0.1, 0.2]) {
      const chance = 0.5 + gap / ERROR;
      const { head } = chanceOfFit(headGap(gap), { spread: 'even', draws, seed: 7 });
      expect(Math.abs(head / draws - chance)).toBeLessThan(margin(chance, draws));
    }
  });

  test('of one measure that strays normally, two standard deviations to the error, is the normal distribution of the gap', () => {
    for (const gap of [-0.15, 0, 0.1, 0.25]) {
      const chance = normalBelow((2 * gap) / (ERROR / 2));
      const { head } = chanceOfFit(headGap(gap), { spread: 'normal', draws, seed: 7 });
      expect(Math.abs(head / draws - chance)).toBeLessThan(margin(chance, draws));
    }
  });

  test('of width and thickness straying normally adds their squares', () => {
    const spare = plain({}).fits.thick.closedSlack;
    for (const slack of [-0.5, 0.3, 0.8]) {
      const design = plain({ outsideWidth_mm: sized.width - (spare - slack) });
      const measures = measuresOf(design.job).filter(({ id }) => id !== 'board');
      // The closed wrap takes the width twice and the thickness once.
      const chance = normalBelow(slack / ((ERROR / 2) * Math.sqrt(5)));
      const { closes } = chanceOfFit(design, { spread: 'normal', draws, seed: 11, measures });
      expect(Math.abs(closes / draws - chance)).toBeLessThan(margin(chance, draws));
    }
  });

  test('over the weight range alone is the share of it up to the thickness that still closes', () => {
    // No error: the book is known, the leather is anything from 1.4 to 2.2 mm. The wrap grows by pi K a mm of leather, the
    // seats with it; 30 % up the range nothing is spare.
    const document = (max: number, pattern: object) => ({
      ...tideLedger,
      book: { ...tideLedger.book, pageGive: 0.9, measured: { error_mm: 0 } },
      leather: { outside: { min_mm: 1.4, max_mm: max } },
      pattern,
    });
    const edge = 1.4 + 0.3 * 0.8;
    const just = coverDesign(soundJob(document(edge, {})));
    const width = just.pieces.outside.width - just.fits.thick.closedSlack;
    const { closes } = chanceOfFit(coverDesign(soundJob(document(2.2, { outsideWidth_mm: width }))), {
      spread: 'even',
      draws,
      seed: 3,
    });
    expect(Math.abs(closes / draws - 0.3)).toBeLessThan(margin(0.3, draws));
  });

  test('is the same for the same seed, and strays for another', () => {
    const tight = headGap(0.05);
    const tried = (seed: number) => chanceOfFit(tight, { spread: 'even', seed });
    expect(tried(1)).toEqual(tried(1));
    expect(tried(2)).not.toEqual(tried(1));
    expect(tried(1).draws).toBe(2000);
  });

  test('is certain without errors for a cover that fits, and never counts all more often than its worst edge', () => {
    const sure = chanceOfFit(plain({}, 0), { spread: 'normal' });
    expect(sure).toEqual({ draws: 2000, closes: 2000, liesOpen: 2000, head: 2000, tail: 2000, all: 2000 });
    for (const document of [tideLedger, choirBook, shoreGuide]) {
      const { all, closes, liesOpen, head, tail } = chanceOfFit(designOf(document), { spread: 'even', draws: 300 });
      expect(all).toBeLessThanOrEqual(Math.min(closes, liesOpen, head, tail));
    }
  });
});
