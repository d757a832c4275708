import type { Page } from '@playwright/test';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { nth } from '../nth.ts';
import { expect, openDocument, test } from './bench.ts';

const EXAMPLES = ['tide-ledger', 'choir-book', 'shore-guide'] as const;

const openJob = async (page: Page, file: string, name: RegExp): Promise<void> => {
  await page.getByLabel('Job file').setInputFiles(file);
  await expect(page.getByRole('button', { name: /^Job: / })).toHaveText(name);
};

interface Word {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface PrintedPage {
  readonly words: readonly Word[];
  /** All that is said, in one line. */
  readonly said: string;
  readonly pictures: number;
  /** Paths painted, among them the hatches. */
  readonly paths: number;
  /** Names of its fonts. */
  readonly fonts: readonly string[];
  /** Width of the sheet, points. */
  readonly width: number;
  readonly height: number;
}

/** The pages of a print with the margins that a browser usually leaves. */
async function printed(page: Page, format: 'A4' | 'Letter'): Promise<readonly PrintedPage[]> {
  const margin = { top: '1cm', right: '1cm', bottom: '1cm', left: '1cm' };
  const file = await getDocument({ data: new Uint8Array(await page.pdf({ format, margin })), verbosity: 0 }).promise;
  const pages = [];
  for (let number = 1; number <= file.numPages; number++) {
    const sheet = await file.getPage(number);
    const { items } = await sheet.getTextContent();
    const words = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: item.transform[4], y: item.transform[5], width: item.width, height: item.height }]
        : [],
    );
    const { fnArray } = await sheet.getOperatorList();
    const [, , width, height] = sheet.view;
    const ids = new Set(items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.fontName] : [])));
    pages.push({
      words,
      fonts: [...ids].map((id) => (sheet.commonObjs.get(id) as { readonly name: string }).name),
      said: words
        .map(({ text }) => text)
        .join(' ')
        .replace(/\s+/g, ' '),
      pictures: fnArray.filter((operator) => operator === OPS.paintImageXObject).length,
      paths: fnArray.filter((operator) => operator === OPS.constructPath).length,
      width: Number(width),
      height: Number(height),
    });
  }
  await file.destroy();
  return pages;
}

/** Pairs of words of which one lies over the other: from the baseline up to the height of a small letter. */
function overlaps(words: readonly Word[]): readonly string[] {
  const EDGE = 0.5;
  return words.flatMap((a, i) =>
    words
      .slice(i + 1)
      .filter(
        (b) =>
          a.x + EDGE < b.x + b.width &&
          b.x + EDGE < a.x + a.width &&
          // Outlined words are painted twice in one place.
          !(a.text === b.text && a.x === b.x && a.y === b.y) &&
          a.y < b.y + 0.5 * b.height &&
          b.y < a.y + 0.5 * a.height,
      )
      .map((b) => `${a.text} over ${b.text}`),
  );
}

/** Words that are of use on a screen only. */
const OF_THE_SCREEN =
  /drag a tab|arrow keys|being fetched|being prepared|being worked out|Measure next|How sure|Find\b|Undo|Workbench|Customer|Save|Press |change\b|show\b|https?:/;

/** Waits until the page can make the sheet: that part comes after the first paint. */
const sheetIsReady = (page: Page): Promise<void> =>
  expect(async () => {
    const ask = (type: string) => page.evaluate((each) => window.dispatchEvent(new Event(each)), type);
    await ask('beforeprint');
    const sheets = await page.locator('.bench-page').count();
    await ask('afterprint');
    expect(sheets).toBe(1);
  }).toPass();

/** Expects one sheet with the fit, the sizes and both strips, all inside the paper and nothing over another. */
async function expectBenchPage(page: Page, format: 'A4' | 'Letter'): Promise<PrintedPage> {
  await sheetIsReady(page);
  const headline = await page.locator('.headline').first().textContent();
  const cut = await page.locator('#card-cut .card-said').textContent();
  const pages = await printed(page, format);
  expect(pages).toHaveLength(1);
  const sheet = nth(pages, 0);
  // Its capital and its full stop are drawn by the style sheet.
  const bare = (said: string): string => said.replace(/[\s.]/g, '').toLowerCase();
  expect(bare(sheet.said)).toContain(bare(headline ?? ''));
  expect(bare(headline ?? '')).not.toBe('');
  // 382.5 × 260 mm outside, as the card says it.
  for (const size of cut?.match(/^[\d./ ]+(?= ×)|(?<=× )[\d./ ]+(?= )/g) ?? [])
    expect(sheet.said).toContain(size.trim());
  expect(cut).toMatch(/×/);
  expect(sheet.said).toMatch(/Least sure: /);
  expect(sheet.said).toMatch(/Cut sizes, width × height Outside .* Pocket, cut 2/);
  expect(sheet.said).toContain('The wrap laid out');
  expect(sheet.said).toContain('Head to tail');
  // Both ends of both strips.
  expect(sheet.words.filter(({ text }) => text.trim() === 'stop')).toHaveLength(4);
  expect(sheet.said).not.toMatch(OF_THE_SCREEN);
  expect(overlaps(sheet.words)).toEqual([]);
  expect(sheet.words.filter(({ x, width }) => x < 0 || x + width > sheet.width)).toEqual([]);
  return sheet;
}

test('a print is set in the face of the PDF sheets, whole in the file', async ({ bench }) => {
  // `check` of a face that is not there yet says yes: nothing of it is left to load.
  const faces = () =>
    bench.evaluate(() => [...document.fonts].filter(({ family }) => /Printed letters/.test(family)).length);
  await expect.poll(faces).toBe(2);
  const { fonts } = await expectBenchPage(bench, 'A4');
  expect(fonts.length).toBeGreaterThan(0);
  for (const font of fonts) expect(font).toMatch(/DejaVuSansCondensed/);
});

test('a print from any place is one page of the open job, on A4 and on Letter', async ({ bench }) => {
  test.slow();
  for (const example of EXAMPLES) {
    await openJob(bench, `public/jobs/${example}.json`, new RegExp(example.replace('-', ' '), 'i'));
    // From windows of any size: what is drawn for the paper has nothing of the screen's.
    for (const [format, place, width] of [
      ['A4', '', 1440],
      ['Letter', '', 390],
      ['A4', '#strips', 1024],
      ['Letter', '#explore', 1920],
      ['A4', '#workbench/template', 390],
      ['A4', '#shelf', 1280],
    ] as const)
      await test.step(`${example} on ${format} from ${place || 'the cover'} at ${width} px`, async () => {
        await bench.setViewportSize({ width, height: 900 });
        await bench.evaluate((hash) => {
          window.location.hash = hash;
        }, place);
        await expect(bench.locator('.page')).toHaveAttribute('data-place', place.match(/\w+/)?.[0] ?? 'cover');
        const sheet = await expectBenchPage(bench, format);
        // Without WebGL the section is the picture: its outlines are painted, and so are the hatches.
        expect(sheet.said).toContain('Section across the spine');
        expect(sheet.paths).toBeGreaterThan(100);
      });
  }
  // The page on the screen is as it was.
  await expect(bench.locator('.bench-page')).toHaveCount(0);
  await expect(bench.locator('.shelf-place')).toBeVisible();
});

test('an inch job with long words, and a cover that fails, are printed on one page too', async ({ bench }) => {
  const job = {
    format: 'coverwright-job',
    version: 2,
    name: 'A book with a long name that goes on for more than one line of an ordinary sheet of paper, second volume',
    work: { units: 'in' },
    book: {
      kind: 'hardback',
      width_mm: 165.1,
      height_mm: 241.3,
      thickness_mm: 31.75,
      spine: { shape: 'rounded', rise_mm: 9 },
    },
    leather: { outside: { min_mm: 1.6, max_mm: 2.4 }, lining: { min_mm: 0.6, max_mm: 0.8 } },
    pattern: { outsideWidth_mm: 360 },
  };
  await openDocument(bench, job);
  await expect(bench.locator('.headline').first()).toHaveAttribute('data-verdict', 'fails');
  await sheetIsReady(bench);
  for (const format of ['A4', 'Letter'] as const) {
    const [sheet, ...more] = await printed(bench, format);
    expect(more).toEqual([]);
    expect(sheet?.said).toMatch(/Does not fit|Too small|Fails/i);
    expect(sheet?.said).toContain(' in ');
    expect(overlaps(sheet?.words ?? [])).toEqual([]);
  }
});

test('the order of work, the supplies and the quote are printed as they are', async ({ bench }) => {
  for (const [part, said] of [
    ['work', /Measure and draft/],
    ['supplies', /What one cover takes/],
    ['quote', /One cover: /],
  ] as const) {
    await bench.goto(`#workbench/${part}`);
    await expect(bench.locator('.panel-outcome')).toContainText(said);
    const pages = await printed(bench, 'A4');
    const all = pages.map((page) => page.said).join(' ');
    expect(all).toMatch(said);
    expect(all).not.toMatch(/The wrap laid out|Parts of the workbench/);
  }
});

test.describe('with the scene', () => {
  test.use({ look: 'light' });

  test('the picture is of the cover in 3D, and of no cover but the one at hand', async ({ bench }) => {
    const drawn = bench.locator('.cover-scene[aria-busy="false"]');
    await expect(drawn).toBeVisible();
    for (const [width, height] of [
      [1440, 1300],
      [1024, 768],
    ] as const) {
      await bench.setViewportSize({ width, height });
      await expect(drawn).toBeVisible();
      const sheet = await expectBenchPage(bench, 'A4');
      expect(sheet.pictures).toBe(1);
    }
    // What is drawn is not one colour: the picture as the page has it.
    await bench.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    const colours = await bench.locator('.bench-page img').evaluate(async (image: HTMLImageElement) => {
      await image.decode();
      const canvas = new OffscreenCanvas(120, 90);
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0, 120, 90);
      const { data } = context.getImageData(0, 0, 120, 90);
      return new Set(Array.from({ length: 120 * 90 }, (_, i) => `${data[4 * i]} ${data[4 * i + 1]} ${data[4 * i + 2]}`))
        .size;
    });
    expect(colours).toBeGreaterThan(500);
    await bench.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await expect(bench.locator('.bench-page')).toHaveCount(0);

    // Changed while the scene was out of sight: the section of the job at hand is printed, not the old scene.
    await bench.goto('#strips');
    await bench
      .getByRole('slider', { name: /pocket mouth|cut width|outside/i })
      .first()
      .press('ArrowUp');
    const [changed] = await printed(bench, 'A4');
    expect(changed?.pictures).toBe(0);
    expect(changed?.said).toContain('Section across the spine');
  });
});
