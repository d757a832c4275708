import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { MARKED_PAPERS, markedPage, placeOfMark } from '../../../src/core/photograph/markedSheet.ts';
import { photographSheetPdf } from '../../../src/output/photographSheet/photographSheetPdf.ts';
import { sheetLink } from '../../../src/output/photographSheet/sheetLink.ts';
import { usualPages } from '../../../src/output/photographSheet/sheetPages.ts';
import { readShareFragment } from '../../../src/output/shareLink/shareLink.ts';
import { foundMarks } from '../../../src/sight/markFinder.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { wordsAgainst } from '../../wordsAgainst.ts';
import { flatTags, readDocument } from '../documentReading.ts';
import { type ReadPage, readPdf } from '../pdfReading.ts';
import { readSquare } from '../squareReading.ts';

const SHEETS = [
  { paper: 'A4', units: 'mm', pages: 6 },
  { paper: 'Letter', units: 'in', pages: 4 },
  { paper: 'A4', units: 'in', pages: 1 },
] as const;

/** Pixels a millimetre of the picture that is drawn of a page. */
const SCALE = 5;

/** Marks found by the library in a picture of the filled rectangles of a page; places in mm from the middle of the page. */
function marksOn({ width, height, paths }: ReadPage) {
  const [across, down] = [Math.round(width * SCALE), Math.round(height * SCALE)];
  const values = new Uint8Array(across * down).fill(255);
  for (const chain of paths.flatMap(({ chains }) => chains)) {
    if (chain.length !== 5) continue;
    const [xs, ys] = [chain.map(([x]) => x), chain.map(([, y]) => y)];
    for (
      let y = Math.round((height - Math.max(...ys)) * SCALE);
      y < Math.round((height - Math.min(...ys)) * SCALE);
      y++
    )
      values.fill(
        0,
        y * across + Math.round(Math.min(...xs) * SCALE),
        y * across + Math.round(Math.max(...xs) * SCALE),
      );
  }
  return foundMarks({ width: across, height: down, values }).map(({ id, corners }) => ({
    id,
    corners: corners.map(([x, y]) => [x / SCALE - width / 2, height / 2 - y / SCALE] as const),
  }));
}

describe.each(SHEETS)('the sheet for photographs on $paper in $units, $pages pages', ({ paper, units, pages }) => {
  test('shows every mark of its pages where it is meant to be, by the reader of the marks’ own library', async () => {
    const read = await readPdf(await photographSheetPdf({ paper, units, pages, job: 'Tide ledger' }));
    expect(read).toHaveLength(pages);
    // The first and the last: the marks of a page are drawn alike.
    for (const number of new Set([0, pages - 1])) {
      const page = nth(read, number);
      expect([page.width, page.height]).toEqual([
        expect.closeTo(MARKED_PAPERS[paper].width, 1),
        expect.closeTo(MARKED_PAPERS[paper].height, 1),
      ]);
      const found = marksOn(page);
      expect(found.map(({ id }) => id).sort((a, b) => a - b)).toEqual(
        markedPage(paper, number).marks.map(({ id }) => id),
      );
      for (const { id, corners } of found)
        for (const [k, corner] of defined(placeOfMark(id)).corners.entries())
          expect(Math.hypot(corner[0] - nth(corners, k)[0], corner[1] - nth(corners, k)[1])).toBeLessThan(0.8);
    }
  });

  test('has its bars as long as they say, and nothing but paper on and beside its marks', async () => {
    const read = await readPdf(
      await photographSheetPdf({ paper, units, pages, job: 'Tide ledger', link: 'https://a.example/' }),
    );
    for (const [number, { paths, words, width, height }] of read.entries()) {
      const { bars, marks } = markedPage(paper, number);
      const chains = paths.flatMap((path) => path.chains);
      for (const { from, to } of [bars.across, bars.along])
        expect(
          chains.some(
            ([a, b]) =>
              a !== undefined &&
              b !== undefined &&
              Math.hypot(a[0] - from[0] - width / 2, a[1] - from[1] - height / 2) < 0.01 &&
              Math.hypot(b[0] - to[0] - width / 2, b[1] - to[1] - height / 2) < 0.01,
          ),
        ).toBe(true);
      // A cell of white round each mark, which readers of marks need.
      for (const { corners } of marks) {
        const [left, top] = [corners[0][0] + width / 2 - 2.25, corners[0][1] + height / 2 + 2.25];
        const inside = words.filter(
          ({ at, width: wide, height: high, rotation }) =>
            rotation === 0 && at[0] < left + 22.5 && at[0] + wide > left && at[1] < top && at[1] + high > top - 22.5,
        );
        expect(inside).toEqual([]);
      }
      expect(words.map(({ text }) => text).join(' ')).toContain(`Page ${number + 1} of ${pages}`);
    }
  });

  test('is tagged for reading aloud, in the words of the vocabulary, and equal each time', async () => {
    const bytes = await photographSheetPdf({ paper, units, pages });
    expect(await photographSheetPdf({ paper, units, pages })).toEqual(bytes);
    const { isTagged, pages: read } = await readDocument(bytes);
    expect(isTagged).toBe(true);
    expect(read.map(({ unmarked }) => unmarked.trim()).join('')).toBe('');
    expect(read.every(({ tags }) => flatTags(tags).some(({ alt }) => alt?.startsWith('24 black squares')))).toBe(true);
    const text = (await readPdf(bytes)).flatMap(({ words }) => words.map((word) => word.text)).join(' ');
    expect(text).toContain('actual size');
    expect(text).toContain(`My ruler shows`);
    expect(wordsAgainst(text)).toEqual([]);
  });
});

test('a number of pages that the paper does not have is refused', async () => {
  await expect(photographSheetPdf({ paper: 'Letter', pages: 5 })).rejects.toThrow('allowed: 1 to 4 on Letter');
  await expect(photographSheetPdf({ pages: 0 })).rejects.toThrow('Got 0 pages');
});

test('the square code opens the job without the rates and the leather owned', async () => {
  const document = { ...EXAMPLE_JOBS[0].document, rates: { maker: 'Quay bindery' } };
  const link = defined(sheetLink(document, 'https://leather.example/'));
  const page = nth(await readPdf(await photographSheetPdf({ link })), 0);
  // The marks reach into the rim of the page, the square code does not.
  const within = page.paths.filter(({ chains }) => chains.flat().every(([x]) => x > 30));
  expect(readSquare({ ...page, paths: within }).text).toBe(link);
  const opened = readShareFragment(new URL(link).hash);
  expect(opened.ok && opened.document.rates).toBeUndefined();
  expect(opened.ok && opened.job.book).toEqual(soundJob(document).book);
});

test('a larger book takes more pages', () => {
  const pages = (width_mm: number, height_mm: number): number =>
    usualPages({ ...soundJob(EXAMPLE_JOBS[0].document).book, ...{ width_mm, height_mm } } as never, 'A4');
  expect([pages(110, 170), pages(165, 240), pages(220, 310), pages(400, 520)]).toEqual([1, 2, 4, 6]);
});
