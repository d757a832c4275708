import type { Page } from '@playwright/test';
import { expect, openExample, test } from './bench.ts';

/** The open job as it is kept, typed texts with it. */
const kept = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { document, typed } = JSON.parse(localStorage.getItem('coverwright.open-job.v1')!);
    return JSON.stringify({ document, typed });
  });

const FILE = { name: 'other.job.json', mimeType: 'application/json' };

/** One of each kind of edit that the bench offers. */
const EDITS: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'a figure typed': (page) => page.locator('.job-form').getByLabel('Thickness', { exact: true }).fill('1 1/8 in'),
  'a figure that cannot be read': (page) =>
    page.locator('.job-form').getByLabel('Height', { exact: true }).fill('tall'),
  'a weight typed': (page) => page.locator('.job-form').getByLabel('Outside weight').fill('6-7 oz'),
  'the job’s name': (page) => page.getByRole('textbox', { name: 'Job', exact: true }).fill('Another name'),
  'a choice': (page) =>
    page.getByRole('group', { name: 'Where the spare wrap goes' }).getByRole('radio', { name: 'spine' }).check(),
  'a seam that brings its own figures': (page) =>
    page.getByRole('group', { name: 'Seam', exact: true }).getByRole('radio', { name: 'stitched' }).check(),
  'a size decided by the maker': (page) => page.getByLabel('Outside width', { exact: true }).fill('372'),
  'a tab moved by keys': (page) => page.locator('.upright').getByRole('slider', { name: 'tail ease' }).press('PageUp'),
  'a choice of construction': async (page) => {
    await page.locator('.workbench-bar').getByRole('button', { name: 'Construction' }).click();
    await page.locator('.workbench-panel').getByRole('radio', { name: 'a strap' }).check();
    await page.locator('.workbench-bar').getByRole('button', { name: 'Construction' }).click();
  },
  'a rate of the quote': async (page) => {
    await page.locator('.workbench-bar').getByRole('button', { name: 'Quote' }).click();
    await page.locator('.workbench-panel').getByLabel('Hour of work').fill('31');
    await page.locator('.workbench-bar').getByRole('button', { name: 'Quote' }).click();
  },
  'an example opened': (page) => openExample(page, 'shore guide'),
  'a file opened': (page) =>
    page
      .locator('.bar input[type=file], input[type=file]')
      .first()
      .setInputFiles({
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
  await expect(bench.locator('.upright').getByRole('slider').first()).toBeVisible();
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
