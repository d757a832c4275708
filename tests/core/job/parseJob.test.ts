import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob, parseJobText } from '../../../src/core/job/parseJob.ts';
import { soundJob } from '../../jobArbitrary.ts';

const least = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
};

describe('a job document', () => {
  test.each(EXAMPLE_JOBS)('of the harbour bindery is sound: $id', ({ document }) => {
    expect(parseJob(document).ok).toBe(true);
  });

  test('with nothing but book and leather takes the documented defaults', () => {
    expect(soundJob(least)).toMatchObject({
      name: 'Untitled cover',
      book: { kind: 'hardback', foreEdgeThickness_mm: 28, boardThickness_mm: 2.5, jointDip_mm: 1, foldBack_deg: 90 },
      leather: { pocket: { min_mm: 1.6, max_mm: 2, neutral: 2 / Math.PI }, lining: null },
      seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4 },
      pockets: { construction: 'separate', depth_mm: null, hold_mm: 40 },
      seating: 'centred',
      ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
      pattern: { outsideWidth_mm: null, outsideHeight_mm: null, rounding_mm: 0.5 },
    });
  });

  test.each([
    ['paperback', 0.4, 0, 150],
    ['limp', 1, 0, 175],
  ] as const)('of a %s takes the defaults of its kind', (kind, boardThickness_mm, jointDip_mm, foldBack_deg) => {
    const { book } = soundJob({ ...least, book: { ...least.book, kind } });
    expect(book).toMatchObject({ boardThickness_mm, jointDip_mm, foldBack_deg });
  });

  test('filled in once is not changed by filling in again', () => {
    for (const { document } of EXAMPLE_JOBS) {
      const job = soundJob(document);
      expect(soundJob(JSON.parse(JSON.stringify(job)))).toEqual(job);
    }
  });

  test('is never changed by parsing', () => {
    const document = structuredClone(least);
    parseJob(document);
    expect(document).toEqual(least);
  });

  test('gives each issue as data: code, path, got, allowed, remedy', () => {
    const parsed = parseJob({ ...least, book: { ...least.book, width_mm: '165' } });
    expect(parsed).toEqual({
      ok: false,
      issues: [
        {
          code: 'type',
          path: 'book.width_mm',
          got: '"165"',
          allowed: 'a number',
          remedy: expect.stringContaining('without quotes'),
          message: expect.stringContaining('got "165"; allowed: a number'),
        },
      ],
    });
  });

  test('in a file may start with a byte order mark', () => {
    expect(parseJobText(`\uFEFF${JSON.stringify(least)}`).ok).toBe(true);
  });

  test('does not take a key of the prototype for a field', () => {
    const parsed = parseJobText('{"format":"coverwright-job","version":1,"__proto__":{"x":1},"constructor":1}');
    expect(parsed.ok === false && parsed.issues.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['constructor', 'book', 'leather']),
    );
  });
});
