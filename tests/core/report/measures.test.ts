import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { soundJob } from '../../jobArbitrary.ts';

const document = (book: Partial<JobInput['book']>): JobInput => ({
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, ...book },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
});

const measures = (book: Partial<JobInput['book']>) =>
  fitReport(soundJob(document(book))).checks.find(({ id }) => id === 'measures')!;

describe('measures', () => {
  test('that agree within their errors fit', () => {
    expect(measures({ measured: { closedWrap_mm: 330.9, rolledHalf_mm: 165.4 } }).verdict).toBe('fits');
  });

  test('between the root-sum-square and the sum of the errors are tight', () => {
    expect(measures({ measured: { closedWrap_mm: 331.6 } }).verdict).toBe('tight');
  });

  test('beyond the sum of the errors fail', () => {
    expect(measures({ measured: { closedWrap_mm: 333 } }).verdict).toBe('fails');
    expect(measures({ measured: { closedWrap_mm: 326 } }).verdict).toBe('fails');
  });

  test('find the rise of a rounded back that was taken for flat, and agree once it is set', () => {
    const wrap = 300 + circularSegment(30, 6).arc;
    const check = measures({ measured: { closedWrap_mm: wrap } });
    expect(check.message).toContain('a rounded spine with a rise of 6 mm');
    expect(check.change).toEqual([
      { path: 'book.spine.shape', value: 'rounded' },
      { path: 'book.spine.rise_mm', value: 6 },
    ]);
    expect(measures({ spine: { shape: 'rounded', rise_mm: 6 }, measured: { closedWrap_mm: wrap } }).verdict).toBe(
      'fits',
    );
  });

  test('take half of a rolled half for the whole wrap', () => {
    const check = measures({ measured: { rolledHalf_mm: 150 + circularSegment(30, 6).arc / 2 } });
    expect(check.message).toContain('a rise of 6 mm');
  });

  test('offer a slip of thickness or width where the wrap is too short for any rise', () => {
    const check = measures({ measured: { closedWrap_mm: 326 } });
    expect(check.message).toContain('a spine 26 mm thick');
    expect(check.message).toContain('a width of 148 mm');
    const [change] = check.change;
    expect(
      measures({ [change!.path.replace('book.', '')]: change!.value, measured: { closedWrap_mm: 326 } }).verdict,
    ).toBe('fits');
  });

  test('compare two tapes with each other', () => {
    expect(measures({ measured: { closedWrap_mm: 331.5, rolledHalf_mm: 164.2 } }).message).toContain(
      'against the rolled half',
    );
  });

  test('take any open-flat width from the wrap to the wrap and two deep joints as a joint dip', () => {
    for (const openFlatWidth_mm of [330, 336, 342])
      expect(measures({ measured: { openFlatWidth_mm } }).verdict).toBe('fits');
    expect(measures({ measured: { openFlatWidth_mm: 322 } }).verdict).toBe('fails');
    expect(measures({ measured: { openFlatWidth_mm: 350 } }).verdict).toBe('fails');
  });
});
