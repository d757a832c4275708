import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { OPTIONAL_STEPS } from '../../../src/core/job/orderSchema.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const { document } = nth(EXAMPLE_JOBS, 0);

/** Path and message of each issue of the ledger with a change. */
const issues = (change: object): readonly string[] => {
  const parsed = parseJob({ ...document, ...change });
  return parsed.ok ? [] : parsed.issues.map(({ path, message }) => `${path}: ${message}`);
};

describe('the order of work in a job', () => {
  test('of before is the usual one, with nothing done', () => {
    const { order, made } = soundJob(document);
    const undecided = Object.fromEntries(OPTIONAL_STEPS.map((id) => [id, null]));
    expect(order).toEqual({ ...undecided, dyeing: 'after tooling', holes: 'before joining', clip_mm: null });
    expect(made).toEqual({});
  });

  test('refuses holes after cementing, and a step of cementing, where nothing is cemented', () => {
    const dry = { supplies: { cementBand_mm: 0 } };
    expect(issues({ ...dry, order: { holes: 'after cementing' } })).toEqual([
      'order.holes: got "after cementing"; allowed: before joining while nothing is cemented; give the cement band (supplies.cementBand_mm) a width',
    ]);
    expect(issues({ ...dry, order: { cement: true } })).toEqual([expect.stringMatching(/^order\.cement: got true/)]);
    expect(issues({ order: { holes: 'after cementing', cement: true } })).toEqual([]);
  });

  test('refuses a step of lining without a lining', () => {
    expect(issues({ order: { line: true } })).toEqual([expect.stringMatching(/^order\.line: got true; .*no lining/)]);
    const lined = { leather: { ...(document.leather as object), lining: { min_mm: 0.6, max_mm: 0.8 } } };
    expect(issues({ ...lined, order: { line: true } })).toEqual([]);
  });

  test('refuses a clip that leaves less than half the margin at the hole in the corner', () => {
    // The margin is 6.35 mm. A clip c lies (2 x 6.35 - c) / sqrt 2 from the hole: 3.18 mm at c = 8.2, 3.11 mm at 8.3.
    expect(issues({ order: { clip_mm: 8.2 } })).toEqual([]);
    expect(issues({ order: { clip_mm: 8.3 } })).toEqual([expect.stringMatching(/^order\.clip_mm: .*at most 8\.2 mm/)]);
  });

  test('refuses a clip where the corners are cut already, or folded', () => {
    const clip = { order: { clip_mm: 3 } };
    const seam = document.seam as object;
    for (const change of [
      { seam: { ...seam, cornerRadius_mm: 6 } },
      { seam: { ...seam, cornerRadius_mm: 6 }, construction: { corners: 'clipped' } },
      { pockets: { construction: 'turned' } },
    ])
      expect(issues({ ...clip, ...change })).toEqual([expect.stringMatching(/^order\.clip_mm: got 3/)]);
    expect(issues({ ...clip, seam: { ...seam, cornerRadius_mm: 6 }, construction: { corners: 'square' } })).toEqual([]);
  });

  test('takes days of the calendar alone, and the steps that there are', () => {
    expect(issues({ made: { cut: '2026-11-26', measure: null } })).toEqual([]);
    expect(issues({ made: { cut: '2028-02-29' } })).toEqual([]);
    for (const day of ['2026-02-29', '26.11.2026', '2026-11-26T10:00', ''])
      expect(issues({ made: { cut: day } })).toEqual([
        expect.stringMatching(/^made\.cut: got ".*allowed: a day, as "2026-11-26"; write year, month and day$/),
      ]);
    expect(issues({ made: { varnish: '2026-11-26' } })).toEqual([expect.stringMatching(/^made\.varnish: got a field/)]);
  });
});
