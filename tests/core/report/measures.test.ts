import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const document = (book: Partial<JobInput['book']>): JobInput => ({
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, ...book },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
});

const measures = (book: Partial<JobInput['book']>) =>
  defined(fitReport(soundJob(document(book))).checks.find(({ id }) => id === 'measures'));

describe('measures', () => {
  test('that agree within their errors fit', () => {
    expect(measures({ measured: { closedWrap_mm: 330.9, rolledHalf_mm: 165.4 } })).toMatchObject({
      verdict: 'fits',
      message: 'Paper strip: 330.9 mm measured, 330.0 mm from the other measures; they agree.',
    });
  });

  test('without a second way of measuring are not checked', () => {
    expect(measures({})).toMatchObject({
      verdict: 'none',
      state: 'not checked',
      message: 'A paper strip round the closed book would check them.',
    });
  });

  test('between two and three standard uncertainties are tight', () => {
    expect(measures({ measured: { closedWrap_mm: 331.6 } }).verdict).toBe('tight');
  });

  test('beyond three standard uncertainties fail', () => {
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
      'against the half round',
    );
  });

  test('take any open-flat width from the wrap to the wrap and two deep joints as a joint dip', () => {
    for (const openFlatWidth_mm of [330, 336, 342])
      expect(measures({ measured: { openFlatWidth_mm } }).verdict).toBe('fits');
    expect(measures({ measured: { openFlatWidth_mm: 322 } }).verdict).toBe('fails');
    expect(measures({ measured: { openFlatWidth_mm: 350 } }).verdict).toBe('fails');
  });

  test('name what would explain them, likeliest first, with the change that makes each of them agree', () => {
    // Bare wrap 2 x 150 + 30 = 330: 334 is 4 mm more than the errors allow.
    const long = measures({ measured: { closedWrap_mm: 334 } });
    expect(long.message).toMatch(
      /^Paper strip: 334 mm measured, 330\.0 mm from the other measures; 4\.0 mm more than they allow\./,
    );
    expect(long.message).toContain(
      'Or: a spine 34 mm thick, swollen beyond the 30 mm given; or a width of 152 mm in place of 150 mm.',
    );
    expect(long.remedy).toMatch(/^If the spine is rounded, set its rise to [\d.]+ mm; else measure again\.$/);
    expect(long).toMatchObject({
      value: 4,
      limit: expect.closeTo(2 * Math.hypot(0.5, 0.3, 0.25), 9),
      bound: 'within',
      state: 'contradict each other',
    });
    const short = measures({ measured: { closedWrap_mm: 326 } });
    expect(short.message).toContain(
      '; 4.0 mm less than they allow. Likely cause: a spine 26 mm thick, thinner than the 30 mm given.',
    );
    expect(short.change).toEqual([{ path: 'book.thickness_mm', value: 26 }]);
  });

  test('of a spine that cannot be that thin, or is rounded, leave a slip of the width as the cause', () => {
    const thin = measures({ thickness_mm: 6, measured: { closedWrap_mm: 301 } });
    // 6 - 5 = 1 mm would be thinner than the two boards.
    expect(thin.message).toMatch(/Likely cause: a width of 147\.5 mm in place of 150 mm\.$/);
    expect(thin.change).toEqual([{ path: 'book.width_mm', value: 147.5 }]);
    expect(thin.remedy).toBe('Measure the width again: 147.5 mm would agree.');
    // 9 - 4 = 5 mm would be the two boards and nothing between them.
    expect(measures({ thickness_mm: 9, measured: { closedWrap_mm: 305 } }).message).toContain('Likely cause: a width');
    // 333 mm by its rise; a spine of 22 mm would be thick enough.
    const round = measures({ spine: { shape: 'rounded', rise_mm: 6 }, measured: { closedWrap_mm: 325 } });
    expect(round.message).toMatch(/Likely cause: a width of [\d.]+ mm in place of 150 mm\.$/);
  });

  test('are judged by the reading that lies furthest from the others for its errors', () => {
    const check = measures({ measured: { closedWrap_mm: 333, rolledHalf_mm: 168 } });
    expect(check.message).toMatch(/^Half round: 168 mm measured, 165\.0 mm from the other measures/);
    // In their standard uncertainties: wrap 3 / 0.63, half 3 / 0.38 (0.25 of the width, 0.15 of the thickness, 0.25 of the tape).
    expect(check.limit).toBeCloseTo(2 * Math.hypot(0.25, 0.15, 0.25), 9);
  });

  test('agree to the limits themselves', () => {
    // Two widths of 0.25 mm that are one reading, a thickness of 0.3 and a strip of 0.25; two of their root-sum-square agree.
    const at = (off: number) => measures({ measured: { closedWrap_mm: 330 + off } }).verdict;
    const u = Math.hypot(2 * 0.25, 0.3, 0.25);
    expect(at(2 * u)).toBe('fits');
    expect(at(2 * u + 1e-6)).toBe('tight');
    expect(at(3 * u)).toBe('tight');
    expect(at(3 * u + 1e-6)).toBe('fails');
  });
});

describe('a rise that was not measured', () => {
  const estimated = (measured: object) => measures({ spine: { shape: 'rounded' }, measured });

  test('is offered as a tape round the book tells it, whole or half', () => {
    const wrap = 300 + circularSegment(30, 6).arc;
    for (const [name, tape] of [
      ['paper strip', { closedWrap_mm: wrap }],
      ['half round', { rolledHalf_mm: wrap / 2 }],
    ] as const)
      expect(estimated(tape)).toMatchObject({
        verdict: 'tight',
        state: 'rise not measured',
        bound: null,
        remedy: `By the ${name} the rise is 6 mm: take that, or measure it.`,
        change: [{ path: 'book.spine.rise_mm', value: 6 }],
      });
  });

  test('has to be measured where no tape tells it', () => {
    for (const measured of [{}, { closedWrap_mm: 325 }, { openFlatWidth_mm: 336 }])
      expect(estimated(measured)).toMatchObject({
        change: [],
        remedy: expect.stringMatching(/^Measure how far the spine/),
      });
  });

  test('is told to the 64th of an inch in a job worked in inches', () => {
    const wrap = 300 + circularSegment(30, 6).arc;
    const inches = {
      ...document({ spine: { shape: 'rounded' }, measured: { closedWrap_mm: wrap } }),
      work: { units: 'in' },
    };
    const check = defined(fitReport(soundJob(inches)).checks.find(({ id }) => id === 'measures'));
    const steps = (64 * Number(nth(check.change, 0).value)) / 25.4;
    expect(steps).toBeCloseTo(Math.round(steps), 4);
    expect(Math.abs(Number(nth(check.change, 0).value) - 6)).toBeLessThan(25.4 / 128);
  });
});
