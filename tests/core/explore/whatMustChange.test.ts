import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { type ExploreField, exploreFields } from '../../../src/core/explore/exploreField.ts';
import { mustChangeList } from '../../../src/core/explore/mustChangeList.ts';
import { tryChanges } from '../../../src/core/explore/trial.ts';
import { type FitTarget, whatMustChange } from '../../../src/core/explore/whatMustChange.ts';
import { fitReport } from '../../../src/core/fitReport.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobDocument } from '../../../src/core/job/jobDocument.ts';
import { normalQuantile } from '../../../src/core/math/normal.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../laws.ts';

const fieldsOf = (document: JobDocument) => exploreFields(document, coverDesign(soundJob(document)));
const field = (document: JobDocument, id: string) => defined(fieldsOf(document).find((each) => each.id === id));

/** Whether the target fits, tight not counting. */
function fits(document: JobDocument, { changes }: ExploreField, value: number, target: FitTarget): boolean {
  const trial = tryChanges(document, changes(value), designReport);
  if (!trial.ok) return false;
  return trial.report.checks.every(({ id, verdict }) =>
    target === 'all' ? verdict === 'fits' || verdict === 'none' : id !== target || verdict === 'fits',
  );
}

const sized = fitReport(soundJob(tideLedger)).pattern.outside;
const tideCut = (narrower: number, shorter = 0): JobDocument => ({
  ...tideLedger,
  pattern: { outsideWidth_mm: sized.width_mm - narrower, outsideHeight_mm: sized.height_mm - shorter },
});

describe('the smallest change', () => {
  test('of a width that was cut short leads to the wished chance of closing, up to the next half millimetre', () => {
    const short = tideCut(9);
    const outcome = whatMustChange(short, field(short, 'pattern.outsideWidth_mm'), 'closes');
    if (outcome.status !== 'change') throw new Error(outcome.status);
    const { spare_mm, u_mm } = fitReport(
      soundJob({ ...short, pattern: { ...(short.pattern as object), outsideWidth_mm: outcome.exact } }),
    ).doubt.edges.foreEdge;
    expect(spare_mm / u_mm).toBeCloseTo(normalQuantile(0.95), 4);
    expect(outcome.to).toBe(Math.ceil(outcome.exact * 2 - 1e-6) / 2);
    expect(outcome.changes).toEqual([{ path: 'pattern.outsideWidth_mm', value: outcome.to }]);
  });

  test('goes down where less is what fits, and is rounded down', () => {
    const deep = { ...tideLedger, book: { ...tideLedger.book, foldBack_deg: 40 }, pockets: { depth_mm: 90.2 } };
    const outcome = whatMustChange(deep, field(deep, 'pockets.depth_mm'), 'pocketLoads');
    if (outcome.status !== 'change') throw new Error(outcome.status);
    expect(outcome.to).toBeLessThan(outcome.exact);
    expect(outcome.exact - outcome.to).toBeLessThan(0.5);
    expect(outcome.to % 0.5).toBe(0);
  });

  test('names the checks that come out worse for it', () => {
    // Deep enough to hold, too deep to load.
    const shallow = {
      ...tideLedger,
      book: { ...tideLedger.book, foldBack_deg: 40 },
      pockets: { depth_mm: 40, hold_mm: 60 },
    };
    const outcome = whatMustChange(shallow, field(shallow, 'pockets.depth_mm'), 'pocketHolds');
    expect(outcome).toMatchObject({ status: 'change', worsens: ['Slipping the boards in'] });
  });

  test('is none where all fits, and none is found where the field has no say or not enough', () => {
    expect(whatMustChange(tideLedger, field(tideLedger, 'ease.head_mm'), 'all')).toEqual({ status: 'fits' });
    const short = tideCut(9);
    expect(whatMustChange(short, field(short, 'ease.foreEdge_mm'), 'closes')).toMatchObject({
      status: 'none',
      bears: false,
      unfit: ['Closing'],
    });
    const both = tideCut(9, 9);
    const width = whatMustChange(both, field(both, 'pattern.outsideWidth_mm'), 'all');
    expect(width).toMatchObject({ status: 'none', bears: true, unfit: ['Head', 'Tail', 'All edges at once'] });
  });

  test('really fits when it is made, while half of it does not, for any book, leather and field', () => {
    let found = 0;
    const law = fc.property(
      jobDocument,
      fc.double({ min: 0.2, max: 8, noNaN: true }),
      fc.constantFrom<FitTarget>('all', 'closes', 'opens', 'head', 'foreEdge'),
      fc.constantFrom<'mm' | 'in'>('mm', 'in'),
      (document, less, target, units) => {
        const { outside } = fitReport(soundJob(document)).pattern;
        const cut: JobDocument = {
          ...document,
          work: { units },
          pattern: { outsideWidth_mm: outside.width_mm - less, outsideHeight_mm: outside.height_mm - less },
        };
        for (const { field: each, outcome } of mustChangeList(cut, coverDesign(soundJob(cut)), target)) {
          if (outcome.status !== 'change') continue;
          found++;
          expect(fits(cut, each, outcome.to, target)).toBe(true);
          expect(fits(cut, each, outcome.exact, target)).toBe(true);
          expect(fits(cut, each, (outcome.from + outcome.exact) / 2, target)).toBe(false);
          expect(Math.abs(outcome.to - outcome.from)).toBeGreaterThanOrEqual(
            Math.abs(outcome.exact - outcome.from) - 1e-9,
          );
          expect(Math.abs(outcome.to / each.step - Math.round(outcome.to / each.step))).toBeLessThan(1e-6);
        }
      },
    );
    checkLaw(law, { cost: 16 });
    expect(found).toBeGreaterThan(lawCases(16) / 2);
  });
});

describe('the list', () => {
  test('leads with the fewest steps, and ends with the fields that cannot do it alone', () => {
    const cut = tideCut(4);
    const list = mustChangeList(cut, coverDesign(soundJob(cut)), 'all');
    const steps = list.flatMap(({ field: { step }, outcome }) =>
      outcome.status === 'change' ? [Math.abs(outcome.to - outcome.from) / step] : [],
    );
    expect(steps.length).toBeGreaterThan(1);
    expect([...steps].sort((a, b) => a - b)).toEqual(steps);
    const firstNone = list.findIndex(({ outcome }) => outcome.status === 'none');
    expect(list.slice(firstNone).every(({ outcome }) => outcome.status === 'none')).toBe(true);
  });

  test('never asks for another book', () => {
    const cut = tideCut(4);
    const ids = mustChangeList(cut, coverDesign(soundJob(cut)), 'all').map(({ field: { id } }) => id);
    expect(ids.filter((id) => id.startsWith('book.'))).toEqual(['book.measured.error_mm']);
  });
});
