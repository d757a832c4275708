import type { Page } from '@playwright/test';
import { expect, goToPlace, openCard, openExample, openPart, renameJob, test } from './bench.ts';

/** The open job as it is kept, typed texts with it. */
const kept = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { document, typed } = JSON.parse(localStorage.getItem('coverwright.open-job.v1')!);
    return JSON.stringify({ document, typed });
  });

const FILE = { name: 'other.job.json', mimeType: 'application/json' };

/** One of each kind of edit that the bench offers. */
const EDITS: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'a figure typed': async (page) =>
    (await openCard(page, 'book')).getByLabel('Thickness', { exact: true }).fill('1 1/8 in'),
  'a figure that cannot be read': async (page) =>
    (await openCard(page, 'book')).getByLabel('Height', { exact: true }).fill('tall'),
  'a weight typed': async (page) => (await openCard(page, 'leather')).getByLabel('Outside weight').fill('6-7 oz'),
  'a colour typed': async (page) =>
    (await openCard(page, 'leather')).getByLabel('Outside colour', { exact: true }).fill('#204A87'),
  'a colour picked': async (page) =>
    (await openCard(page, 'leather')).getByLabel('Colour of the lace, from a palette').fill('#204a87'),
  'the job’s name': (page) => renameJob(page, 'Another name'),
  'a choice': async (page) =>
    (await openCard(page, 'seam'))
      .getByRole('group', { name: 'Where the spare wrap goes' })
      .getByRole('radio', { name: 'spine' })
      .check(),
  'a seam that brings its own figures': async (page) =>
    (await openCard(page, 'seam'))
      .getByRole('group', { name: 'Seam', exact: true })
      .getByRole('radio', { name: 'stitched' })
      .check(),
  'a size decided by the maker': async (page) =>
    (await openCard(page, 'cut')).getByLabel('Outside width', { exact: true }).fill('372'),
  'a tab moved by keys': async (page) => {
    await goToPlace(page, 'Strips');
    await page.locator('.upright').getByRole('slider', { name: 'tail ease' }).press('PageUp');
  },
  'a choice of construction': async (page) =>
    (await openPart(page, 'Construction')).getByRole('radio', { name: 'a strap' }).check(),
  'a rate of the quote': async (page) => (await openPart(page, 'Quote')).getByLabel('Hour of work').fill('31'),
  'an example opened': (page) => openExample(page, 'shore guide'),
  'a file opened': (page) =>
    page.getByLabel('Job file').setInputFiles({
      ...FILE,
      buffer: Buffer.from(
        JSON.stringify({
          format: 'coverwright-job',
          version: 1,
          name: 'From a file',
          book: { kind: 'hardback', width_mm: 140, height_mm: 200, thickness_mm: 20 },
          leather: { outside: { min_mm: 1.5, max_mm: 2 } },
        }),
      ),
    }),
};

test('undo takes back every kind of edit, and redo brings it again', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const before = await kept(bench);
  const undo = bench.getByRole('button', { name: 'Undo', exact: true });
  for (const [name, edit] of Object.entries(EDITS))
    await test.step(name, async () => {
      await edit(bench);
      await expect.poll(() => kept(bench)).not.toBe(before);
      const after = await kept(bench);
      await undo.click();
      await expect.poll(() => kept(bench)).toBe(before);
      await bench.getByRole('button', { name: 'Redo' }).click();
      await expect.poll(() => kept(bench)).toBe(after);
      await undo.click();
      await expect.poll(() => kept(bench)).toBe(before);
    });
});
