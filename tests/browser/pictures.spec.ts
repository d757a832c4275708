import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page, TestInfo } from '@playwright/test';
import { expect, scenesAreDrawn, stripSettles, test } from './bench.ts';

/**
 * The screen as it is meant to look, kept as pictures to be looked at. The comparison is a coarse one, so that it minds
 * neither how letters are smoothed nor a line that moves by a pixel, but a part that is gone, moved or of another colour.
 * `UPDATE_PICTURES=1 npm run browser -- pictures` takes them anew; look at each before it is committed.
 */
const FOLDER = join(import.meta.dirname, 'pictures');

const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

/** The demo books, and one whose outside is cut too narrow to go on. */
const BOOKS = ['tide-ledger', 'choir-book', 'shore-guide', 'choir-book-too-narrow'] as const;

/** Tooled covers, each in one size and colour scheme. */
const TOOLED = [
  {
    book: 'choir-book',
    size: SIZES[0],
    colorScheme: 'light',
    tooling: {
      designs: [
        { kind: 'border', area: 'front', lines: 2, corners: 'notched' },
        { kind: 'title', area: 'front', text: 'HC', face: 'uncial', height_mm: 34 },
        { kind: 'title', area: 'spine', text: 'Harbour Choir', reading: 'down', height_mm: 9 },
      ],
    },
  },
  {
    book: 'tide-ledger',
    size: SIZES[1],
    colorScheme: 'dark',
    tooling: {
      designs: [
        { kind: 'border', area: 'front', corners: 'rounded' },
        { kind: 'drawing', area: 'front', artwork: 'wave', width_mm: 70, repeat: { rows: 3, stepY_mm: 12 } },
      ],
      artworks: [
        {
          id: 'wave',
          name: 'Wave',
          kind: 'lines',
          width: 10_000,
          height: 1000,
          lines:
            'm0,500 800,-350 900,-150 900,150 800,350 800,350 900,150 900,-150 800,-350 800,-350 900,-150 900,150 500,250',
        },
      ],
    },
  },
] as const;

/** The job file of a book, as the page opens it. */
function jobFile(book: (typeof BOOKS)[number], tooling?: object) {
  const [example] = book.split('-too-');
  const job = JSON.parse(readFileSync(join(import.meta.dirname, `../../public/jobs/${example}.json`), 'utf8'));
  if (example !== book) job.pattern = { ...job.pattern, outsideWidth_mm: 360 };
  if (tooling !== undefined) job.tooling = tooling;
  return { name: `${book}.json`, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(job)) };
}

/** Side of the square that is compared as one, px. */
const CELL = 12;
/** A square differs when a colour of it is off by more than this, of 255. */
const OFF = 40;
/** Of all squares, this share may differ. */
const SHARE = 0.004;

/** Whether the letters can be those of the pictures. */
const hasFonts = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const context = document.createElement('canvas').getContext('2d')!;
    const width = (family: string): number => {
      context.font = `40px ${family}`;
      return context.measureText('Harbour mill 0123').width;
    };
    return ['Liberation Sans', 'Liberation Serif'].every(
      (name) => width(`"${name}", monospace`) !== width('monospace'),
    );
  });

/** A picture of the page once it no longer changes. */
async function settledPicture(page: Page): Promise<Buffer> {
  let last: Buffer = Buffer.alloc(0);
  for (let i = 0; i < 20; i++) {
    const next = await page.screenshot({ type: 'jpeg', quality: 80, animations: 'disabled' });
    if (next.equals(last)) return next;
    last = next;
    await page.waitForTimeout(300);
  }
  throw new Error('The page goes on changing and cannot be pictured');
}

/** Share of squares in which two pictures differ; 1 where their sizes do. */
function difference(page: Page, pictures: readonly Buffer[]): Promise<number> {
  const addresses = pictures.map((picture) => `data:image/jpeg;base64,${picture.toString('base64')}`);
  return page.evaluate(
    async ([sources, cell, off]) => {
      const squares = async (source: string) => {
        const image = new Image();
        image.src = source;
        await image.decode();
        const [width, height] = [Math.round(image.width / cell), Math.round(image.height / cell)];
        const context = new OffscreenCanvas(width, height).getContext('2d')!;
        context.imageSmoothingQuality = 'high';
        context.drawImage(image, 0, 0, width, height);
        return { width, data: context.getImageData(0, 0, width, height).data };
      };
      const [a, b] = await Promise.all([squares(sources[0]!), squares(sources[1]!)]);
      if (a.width !== b.width || a.data.length !== b.data.length) return 1;
      let differing = 0;
      for (let i = 0; i < a.data.length; i += 4)
        if ([0, 1, 2].some((c) => Math.abs(a.data[i + c]! - b.data[i + c]!) > off)) differing++;
      return differing / (a.data.length / 4);
    },
    [addresses, CELL, OFF] as const,
  );
}

/** Letters the page as in the kept pictures; skips the test where it cannot be. */
async function letterAsInPictures(page: Page): Promise<void> {
  test.skip(!(await hasFonts(page)), 'needs the Liberation fonts, in which the pictures are lettered');
  await page.evaluate(() => {
    document.documentElement.style.setProperty('--sans', '"Liberation Sans"');
    document.documentElement.style.setProperty('--serif', '"Liberation Serif"');
  });
}

/** Compares the page with its kept picture, or keeps it where that is asked for. */
async function expectPicture(page: Page, picture: string, info: TestInfo): Promise<void> {
  const taken = await settledPicture(page);
  await info.attach(picture, { body: taken, contentType: 'image/jpeg' });
  const file = join(FOLDER, picture);
  if (process.env.UPDATE_PICTURES) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, taken);
  }
  expect(existsSync(file), `${file} is not there; take it with UPDATE_PICTURES=1`).toBe(true);
  const share = await difference(page, [readFileSync(file), taken]);
  expect.soft(share, `share of the picture that differs from ${file}`).toBeLessThan(SHARE);
}

for (const { width, height } of SIZES) {
  test.describe(`${width} px`, () => {
    test.use({ look: 'light', viewport: { width, height } });
    test('the demo books look as in their pictures, on light and on dark paper', async ({ bench }, info) => {
      await letterAsInPictures(bench);
      for (const book of BOOKS) {
        await bench.getByLabel('Job file').setInputFiles(jobFile(book));
        await stripSettles(bench);
        for (const colorScheme of ['light', 'dark'] as const) {
          await bench.emulateMedia({ colorScheme });
          await scenesAreDrawn(bench);
          await expectPicture(bench, `${book}-${width}-${colorScheme}.jpg`, info);
        }
      }
    });
  });
}

for (const { book, size, colorScheme, tooling } of TOOLED) {
  test.describe(`${book}, ${size.width} px`, () => {
    test.use({ look: 'light', viewport: size, colorScheme });
    test('looks tooled, as in its picture', async ({ bench }, info) => {
      await letterAsInPictures(bench);
      await bench.getByLabel('Job file').setInputFiles(jobFile(book, tooling));
      await stripSettles(bench);
      await scenesAreDrawn(bench);
      await expectPicture(bench, `${book}-tooled-${size.width}-${colorScheme}.jpg`, info);
    });
  });
}
