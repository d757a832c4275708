import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { JobRecord } from '../../../src/core/job/migrate.ts';
import { readStockCovers, type StockCover } from '../../../src/output/catalogue/stockCover.ts';
import { matchBook, matchColumns, matchRow } from '../../../src/output/catalogue/stockMatch.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

const coversDocument = (...covers: unknown[]) => ({ format: 'coverwright-covers', version: 1, covers });

function stock(...covers: unknown[]): readonly StockCover[] {
  const read = readStockCovers(coversDocument(...covers));
  if (!read.ok) throw new Error(read.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return read.covers;
}

const tideLedger = EXAMPLE_JOBS[0].document;

/** The cover that a job leads to, as a ready-made one: its sizes fixed, without its book. */
function readyMade(document: JobRecord, name: string, wider = 0) {
  const { job, pattern, fit } = fitReport(soundJob(document));
  const { leather, seam, seating, ease, pockets } = job as ReturnType<typeof soundJob>;
  return {
    name,
    leather,
    seam,
    seating,
    ease,
    pockets: { ...pockets, depth_mm: fit.thick.pockets.depth_mm },
    pattern: { outsideWidth_mm: pattern.outside.width_mm + wider, outsideHeight_mm: pattern.outside.height_mm },
  };
}

describe('ready-made covers', () => {
  test('a book goes into the cover that was sized for it, with the gaps of its own report', () => {
    checkLaw(
      fc.property(jobDocument, (drawn) => {
        const document = JSON.parse(JSON.stringify(drawn)) as JobRecord;
        const report = fitReport(soundJob(document));
        const matched = matchBook(document, stock(readyMade(document, 'its own')));
        if (!matched.ok) throw new Error(matched.issues[0]?.message);
        const [cover] = matched.match.covers;
        expect(cover?.verdict).toBe(report.verdict);
        const { head_mm, tail_mm, foreEdge } = report.fit.thick;
        const smallest = Math.min(head_mm, tail_mm, foreEdge.front_mm, foreEdge.back_mm);
        expect(cover?.smallest_mm).toBeLessThanOrEqual(smallest + 0.001);
        expect(cover?.largest_mm).toBeGreaterThanOrEqual(smallest - 0.001);
      }),
    );
  });

  const covers = stock(
    readyMade(tideLedger, 'short', -12),
    readyMade(tideLedger, 'loose', 12),
    readyMade(tideLedger, 'right'),
    readyMade(tideLedger, 'right again'),
  );

  test('the best one fits with the smallest largest gap, the first of equals', () => {
    const matched = matchBook(tideLedger, covers);
    expect(matched.ok && matched.match).toMatchObject({
      book: 'Tide ledger',
      best: { cover: 'right', verdict: 'fits' },
      covers: [{ verdict: 'fails' }, { verdict: 'loose' }, { verdict: 'fits' }, { verdict: 'fits' }],
    });
  });

  test('one that fits goes before one that is tight but has smaller gaps', () => {
    const matched = matchBook(tideLedger, stock(readyMade(tideLedger, 'tight', -2), readyMade(tideLedger, 'wider', 2)));
    expect(matched.ok && matched.match.covers.map(({ verdict }) => verdict)).toEqual(['tight', 'fits']);
    expect(matched.ok && matched.match.best?.cover).toBe('wider');
  });

  test('one that is too loose is no match, unless a larger gap is allowed', () => {
    const loose = stock(readyMade(tideLedger, 'loose', 12));
    expect(matchBook(tideLedger, loose)).toMatchObject({ match: { best: null, covers: [{ verdict: 'loose' }] } });
    expect(matchBook(tideLedger, loose, 5)).toMatchObject({ match: { best: null, covers: [{ verdict: 'loose' }] } });
    expect(matchBook(tideLedger, loose, 9)).toMatchObject({ match: { best: { cover: 'loose' } } });
  });

  test('an invalid book is an issue', () => {
    expect(matchBook({ name: 'x', book: { ...(tideLedger.book as object), width_mm: -1 } }, covers)).toMatchObject({
      ok: false,
      issues: [{ path: 'book.width_mm' }],
    });
  });

  test('the matrix has a cell for every column', () => {
    const matched = matchBook(tideLedger, covers);
    expect(matched.ok && matchRow(matched.match)).toHaveLength(matchColumns(covers).length);
    const none = matchBook({ ...tideLedger, book: { width_mm: 900, height_mm: 900, thickness_mm: 28 } }, covers);
    expect(none.ok && matchRow(none.match)).toHaveLength(matchColumns(covers).length);
    expect(none.ok && none.match.best).toBeNull();
  });
});

describe('a set of covers', () => {
  const sound = readyMade(tideLedger, 'sound');
  test.each([
    ['a job', tideLedger, '(document)'],
    ['nothing', null, '(document)'],
    ['no cover', coversDocument(), 'covers'],
    ['a cover with a book', coversDocument({ ...sound, book: tideLedger.book }), 'covers.0.book'],
    ['no width', coversDocument({ ...sound, pattern: { outsideHeight_mm: 250 } }), 'covers.0.pattern.outsideWidth_mm'],
    ['no height', coversDocument({ ...sound, pattern: { outsideWidth_mm: 370 } }), 'covers.0.pattern.outsideHeight_mm'],
    ['no pocket depth', coversDocument({ ...sound, pockets: {} }), 'covers.0.pockets.depth_mm'],
    ['an unsound leather', coversDocument(sound, { ...sound, name: 'b', leather: {} }), 'covers.1.leather.outside'],
    ['two of one name', coversDocument(sound, sound), 'covers.1.name'],
    ['a cover that is none', coversDocument(sound, 7), 'covers.1.(cover)'],
    ['a list in place of a cover', coversDocument(sound, [{ toString: '' }]), 'covers.1.(cover)'],
    ['a name that is no text', coversDocument({ ...sound, name: { toString: '' } }), 'covers.0.name'],
  ])('with %s is refused', (_what, document, path) => {
    const read = readStockCovers(document);
    expect(!read.ok && read.issues.map((issue) => issue.path)).toContain(path);
  });

  test('is read without a throw whatever it holds', () => {
    const some = fc.oneof(
      fc.anything(),
      fc.array(fc.anything()).map((covers) => ({ format: 'coverwright-covers', version: 1, covers })),
    );
    checkLaw(
      fc.property(some, (value) => {
        expect(readStockCovers(value).ok).toBe(false);
      }),
      { cost: 0.2 },
    );
  });
});
