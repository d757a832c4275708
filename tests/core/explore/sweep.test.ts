import { describe, expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import shoreGuide from '../../../public/jobs/shore-guide.json' with { type: 'json' };
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { exploreFields } from '../../../src/core/explore/exploreField.ts';
import { EXPLORE_RESULTS } from '../../../src/core/explore/exploreResult.ts';
import { sweep } from '../../../src/core/explore/sweep.ts';
import { fitReport } from '../../../src/core/fitReport.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobDocument } from '../../../src/core/job/jobDocument.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const fieldsOf = (document: JobDocument) => exploreFields(document, coverDesign(soundJob(document)));
const field = (document: JobDocument, id: string) => defined(fieldsOf(document).find((each) => each.id === id));
const result = (id: string) => defined(EXPLORE_RESULTS.find((each) => each.id === id));

/** Sweeps one result and gives [at, thick value], null for a value that is no job. */
function curve(document: JobDocument, id: string, of: string, from: number, to: number, count: number) {
  return sweep(document, field(document, id), [result(of)], { from, to, count }).map((point) =>
    'issue' in point ? ([point.at, null] as const) : ([point.at, nth(point.readings, 0).values.thick] as const),
  );
}

describe('a sweep', () => {
  test('reads at every value what the report says of the job with that value', () => {
    for (const [id, of, from, to] of [
      ['book.thickness_mm', 'outsideWidth', 20, 40],
      ['ease.head_mm', 'head', 0, 6],
      ['pockets.depth_mm', 'loadingAngle', 40, 160],
      ['pockets.share', 'loadingAngle', 0.2, 0.95],
    ] as const) {
      const [section, name] = id.split('.') as ['book' | 'ease' | 'pockets', string];
      for (const [at, value] of curve(tideLedger, id, of, from, to, 5)) {
        const changed = { ...tideLedger, [section]: { ...(tideLedger as JobDocument)[section]!, [name]: at } };
        expect(value).toBe(result(of).read(fitReport(soundJob(changed)), 'thick'));
      }
    }
  });

  test('of a given width gains half a millimetre of gap for each millimetre of outside, whatever the wrap', () => {
    const width = fitReport(soundJob(tideLedger)).pattern.outside.width_mm;
    const points = curve(tideLedger, 'pattern.outsideWidth_mm', 'foreEdge', width - 10, width + 10, 41);
    for (let i = 1; i < points.length; i++)
      expect(nth(nth(points, i), 1) - nth(nth(points, i - 1), 1)).toBeCloseTo(
        (nth(points, i)[0] - nth(points, i - 1)[0]) / 2,
        9,
      );
  });

  test('of leather weight asks for more at the fore-edge with every step, and the parts add up to it', () => {
    for (const document of [tideLedger, choirBook, shoreGuide] as JobDocument[]) {
      const weight = field(document, 'leather.outside');
      const range = { from: weight.note.min, to: weight.note.min + 2.4, count: 25 };
      const points = sweep(document, weight, [result('foreEdgeAllowance')], range).map((point) => {
        if ('issue' in point) throw new Error(point.issue.message);
        return nth(point.readings, 0);
      });
      const totals = points.map(({ values }) => defined(values.thick));
      for (let i = 1; i < totals.length; i++) expect(nth(totals, i)).toBeGreaterThan(nth(totals, i - 1));
      for (const { parts, values } of points) {
        expect(parts.reduce((sum, { length_mm }) => sum + length_mm, 0)).toBeCloseTo(defined(values.thick), 9);
        expect(parts.map(({ name }) => name)).not.toContain('rounding up');
      }
    }
  });

  test('of the board covered deepens the pockets up to what loads, and is not asked for where their depth is given', () => {
    const document = { ...tideLedger, book: { ...tideLedger.book, foldBack_deg: 60 } };
    const depths = curve(document, 'pockets.share', 'pocketDepth', 0.3, 0.9, 13).map(([, depth]) => defined(depth));
    expect([...depths].sort((a, b) => a - b)).toEqual(depths);
    expect(nth(depths, 4)).toBeGreaterThan(nth(depths, 0) + 25);
    // At 60 degrees past flat half of the board is clear, 82.5 mm beyond the stop.
    expect(Math.max(...depths)).toBeLessThan(82.5 + 3.5);
    const ids = fieldsOf({ ...document, pockets: { depth_mm: 80 } }).map(({ id }) => id);
    expect(ids).toContain('pockets.depth_mm');
    expect(ids).not.toContain('pockets.share');
  });

  test('holds the job as it stands, off the even grid', () => {
    const points = curve(tideLedger, 'book.width_mm', 'outsideWidth', 160.1, 171.3, 7);
    expect(points).toHaveLength(8);
    const present = points.find(([at]) => at === 165);
    expect(present?.[1]).toBe(fitReport(soundJob(tideLedger)).pattern.outside.width_mm);
  });

  test('leaves a gap where no job has the value, with the reason', () => {
    const points = sweep(choirBook, field(choirBook, 'book.spine.rise_mm'), [result('head')], {
      from: 20,
      to: 40,
      count: 5,
    });
    expect(points.map((point) => 'issue' in point)).toEqual([false, false, true, true, true]);
    expect(points[3]).toMatchObject({ at: 35, issue: { path: 'book.spine.rise_mm', allowed: /half the thickness/ } });
  });

  test('lets what follows a field by default go on following it', () => {
    // The tide ledger gives no thickness at the fore-edge: a thicker spine is no wedge.
    const [thin, thick] = curve(tideLedger, 'book.thickness_mm', 'closedWrap', 30, 40, 2);
    expect(nth(thick!, 1) - nth(thin!, 1)).toBeCloseTo(10, 9);
  });

  test('moves a weight range as one, and the pocket with it where it is cut from the same leather', () => {
    const { changes, present } = field(tideLedger, 'leather.outside');
    expect(present).toBe(1.984375);
    expect(changes(2.4)).toEqual([
      { path: 'leather.outside.min_mm', value: 2.4 - 0.396875 },
      { path: 'leather.outside.max_mm', value: 2.4 },
    ]);
    const allowance = curve(tideLedger, 'leather.outside', 'foreEdgeAllowance', 1, 3, 9).map(([, value]) => value!);
    expect([...allowance].sort((a, b) => a - b)).toEqual(allowance);
  });

  test('refuses a range that does not rise', () => {
    expect(() => curve(tideLedger, 'book.width_mm', 'head', 5, 5, 3)).toThrow('rising range');
  });
});

describe('limits', () => {
  test('say of each result what the check says of it', () => {
    for (const document of [tideLedger, choirBook, shoreGuide] as JobDocument[]) {
      const sized = fitReport(soundJob(document)).pattern.outside;
      for (const less of [0, 1, 2, 3, 5]) {
        const report = fitReport(
          soundJob({
            ...document,
            pattern: { outsideWidth_mm: sized.width_mm - less, outsideHeight_mm: sized.height_mm - less },
          }),
        );
        for (const [of, check] of [
          ['foreEdge', 'foreEdge'],
          ['closedSlack', 'closes'],
          ['flatSlack', 'opens'],
          ['head', 'head'],
          ['held', 'pocketHolds'],
          ['loadingAngle', 'pocketLoads'],
        ] as const) {
          const { read, limit } = result(of);
          const { verdict: judged } = defined(report.checks.find(({ id }) => id === check));
          const limits = limit(report);
          if (limits === null) {
            expect(judged).toBe('none');
            continue;
          }
          const { fits, fails, failing } = limits;
          // A check judges the middle of the leather, whose range is part of the doubt.
          const side = failing === 'below' ? 1 : -1;
          const worst = side * defined(read(report, 'nominal'));
          const verdict = worst >= side * fits - 1e-9 ? 'fits' : worst >= side * fails - 1e-9 ? 'tight' : 'fails';
          expect(verdict).toBe(judged);
        }
      }
    }
  });
});

describe('fields', () => {
  test('come with title, unit and range from the schema, and stand where the job stands', () => {
    expect(field(tideLedger, 'ease.head_mm')).toMatchObject({
      note: { title: 'Head ease', max: 20 },
      present: coverDesign(soundJob(tideLedger)).pieces.ease.head_mm,
    });
    expect(field(tideLedger, 'pattern.outsideWidth_mm').present).toBe(
      fitReport(soundJob(tideLedger)).pattern.outside.width_mm,
    );
  });

  test('of a leather that the job does not give are left out', () => {
    const ids = (document: JobDocument): string[] => fieldsOf(document).map(({ id }) => id);
    expect(ids(tideLedger).some((id) => /^leather\.(pocket|lining)/.test(id))).toBe(false);
    expect(ids(choirBook)).toEqual(expect.arrayContaining(['leather.pocket', 'leather.lining.max_mm']));
  });

  test('each bear on some result or limit of some job', () => {
    const own = { min_mm: 1, max_mm: 1.6, foldThickness_mm: 0.8 };
    const rounded = {
      ...choirBook,
      book: { ...choirBook.book, cornerRadius_mm: 2, jointDip_mm: 3, foreEdgeThickness_mm: 50 },
      leather: { outside: { ...choirBook.leather.outside, foldThickness_mm: 1.5 }, pocket: own, lining: own },
      pattern: { rounding_mm: 0 },
    };
    const thin = { ...shoreGuide, book: { ...shoreGuide.book, foldBack_deg: 40, thickness_mm: 6 } };
    const opened = { ...rounded, book: { ...rounded.book, measured: { openFlatWidth_mm: 372 } } };
    const turned = { ...tideLedger, pockets: { construction: 'turned' } };
    const whole = { ...choirBook, pattern: { rounding_mm: 0 } };
    const documents: JobDocument[] = [rounded, thin, opened, turned, whole];
    const moved = new Set<string>();
    const all = new Set<string>();
    for (const document of documents) {
      for (const each of fieldsOf(document)) {
        all.add(each.id);
        const { min, max } = each.note;
        const [from, to] = [Math.max(min, each.present - each.span), Math.min(max, each.present + each.span)];
        const prints = sweep(document, each, EXPLORE_RESULTS, { from, to, count: 9 }).flatMap((point) =>
          'issue' in point ? [] : [JSON.stringify(point.readings)],
        );
        if (new Set(prints).size > 1) moved.add(each.id);
      }
    }
    expect([...all].filter((id) => !moved.has(id))).toEqual([]);
  });
});

test('a gap has the loosest one as a limit too, and a spare wrap has not', () => {
  const report = fitReport(soundJob({ ...tideLedger, loosest: { foreEdge_mm: 3, head_mm: 2.5 } }));
  expect(result('foreEdge').limit(report)?.loosest).toBe(3);
  expect(result('head').limit(report)?.loosest).toBe(2.5);
  expect(result('tail').limit(report)?.loosest).toBe(4);
  expect(result('closedSlack').limit(report)?.loosest).toBeUndefined();
});
