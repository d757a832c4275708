import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { validateBytes } from 'gltf-validator';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { parseJobText } from '../../src/core/job/parseJob.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { nth } from '../nth.ts';
import { expectAccessible } from './accessibility.ts';
import { chooseLook, expect, goToPlace, jobName, openDocument, openExample, scenesAreDrawn, test } from './bench.ts';
import { withoutWebGl } from './webGl.ts';

const toCustomer = async (page: Page): Promise<void> => {
  await goToPlace(page, 'Customer');
  await expect(page.getByRole('button', { name: 'Save picture' })).toBeVisible();
};

async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path());
}

test('the sheet says the fit, three numbers, leather and seam as computed, and changes nothing', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await toCustomer(bench);
  const parsed = parseJobText(readFileSync('public/jobs/choir-book.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const design = coverDesign(parsed.job);
  const sheet = customerSheet(design, designReport(design));
  const main = bench.getByRole('main');
  await expect(main.getByRole('heading', { name: 'Choir book' })).toBeVisible();
  await expect(main).toContainText(sheet.fit);
  for (const { name, value } of [...sheet.numbers, ...sheet.facts]) {
    await expect(main.getByText(name, { exact: true })).toBeVisible();
    await expect(main.getByRole('definition').filter({ hasText: value }).first()).toBeVisible();
  }
  for (const { means } of sheet.numbers) await expect(main.getByText(means)).toBeVisible();
  await expect(main).not.toContainText('Price');
  await expect(main.locator('input, select, button')).toHaveCount(0);
  await bench.keyboard.press('Control+z');
  await expect(main.getByRole('heading', { name: 'Choir book' })).toBeVisible();
  await bench.goBack();
  await expect(jobName(bench)).toHaveText('Choir book');
});

test('a priced job shows its price, and hides it at a word', async ({ bench }) => {
  const job = JSON.parse(readFileSync('public/jobs/tide-ledger.json', 'utf8'));
  const priced = { ...job, rates: { maker: 'The harbour bench', currency: 'kr', prices: { hour: 300 } } };
  await openDocument(bench, priced);
  await toCustomer(bench);
  const price = bench.getByRole('definition').filter({ hasText: /^kr \d+\.\d\d, without / });
  await expect(price).toBeVisible();
  await expect(bench.getByRole('main')).toContainText('A leather cover for this book, by The harbour bench');
  await bench.getByLabel('Show the price').uncheck();
  await expect(price).toBeHidden();
});

test('the 3D model passes the validator', async ({ bench }) => {
  await toCustomer(bench);
  const { issues } = await validateBytes(new Uint8Array(await saved(bench, 'Save 3D model')));
  expect([issues.numErrors, issues.numWarnings]).toEqual([0, 0]);
});

test('without WebGL the sections stand in, and a picture says why there is none', async ({ page }) => {
  await page.addInitScript(withoutWebGl);
  await page.goto('#customer');
  await expect(page.getByRole('img', { name: /^Section across the spine/ })).toHaveCount(2);
  await page.getByRole('button', { name: 'Save picture' }).click();
  await expect(page.getByRole('status')).toContainText('draws no 3D view');
});

test.describe('with motion', () => {
  test.use({ look: 'light', contextOptions: { reducedMotion: 'no-preference' } });
  test('the covers turn until they are stopped, and stand still for whoever wants less motion', async ({ bench }) => {
    await openExample(bench, 'shore guide');
    await toCustomer(bench);
    const view = bench.locator('.customer-scene').first();
    const changes = async (): Promise<boolean> => {
      const before = await view.screenshot();
      await bench.waitForTimeout(600);
      return !before.equals(await view.screenshot());
    };
    await expect.poll(changes).toBe(true);
    await bench.getByRole('button', { name: 'Stop turning' }).click();
    await expect.poll(changes).toBe(false);

    await bench.emulateMedia({ reducedMotion: 'reduce' });
    await bench.reload();
    await scenesAreDrawn(bench, 2);
    await expect(bench.getByRole('button', { name: 'Turn slowly' })).toBeVisible();
    await expect.poll(changes).toBe(false);
  });
});

test.describe('with the covers drawn', () => {
  test.use({ look: 'light' });

  test('a picture is saved at 4096 pixels and shows the cover', async ({ bench }) => {
    await toCustomer(bench);
    await bench.getByLabel('Size of the picture').selectOption('4096');
    const png = await saved(bench, 'Save picture');
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([4096, 3072]);
    const middle = await bench.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const context = new OffscreenCanvas(1, 1).getContext('2d')!;
      context.drawImage(bitmap, -bitmap.width / 2, -bitmap.height / 2);
      return [...context.getImageData(0, 0, 1, 1).data];
    }, png.toString('base64'));
    // Leather in the middle: brown, so red over green over blue; opaque.
    expect(middle[0]).toBeGreaterThan(nth(middle, 1) + 15);
    expect(middle[1]).toBeGreaterThan(nth(middle, 2) + 5);
    expect(middle[3]).toBe(255);
    await expect(bench.locator('.customer-scene canvas').first()).toBeVisible();
  });

  test('sheet and measuring sheet are saved as PDF', async ({ bench }) => {
    await toCustomer(bench);
    const pdf = await saved(bench, 'Save as PDF');
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.toString('latin1').match(/\/DCTDecode/g)).toHaveLength(2);
    expect((await saved(bench, 'Save a measuring sheet')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('a sheet asked for before the covers are drawn waits for both of them', async ({ page }) => {
    let letCome = (): void => {};
    const held = new Promise<void>((resolve) => {
      letCome = resolve;
    });
    await page.route(/\/CoverScene-[^/]+\.js$/, async (route) => {
      await held;
      await route.continue();
    });
    await page.addInitScript(chooseLook, 'light');
    await page.goto('#customer');
    const sheet = page.waitForEvent('download', {
      predicate: (download) => download.suggestedFilename().endsWith('.sheet.pdf'),
    });
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    await expect(page.getByText('The sheet is being made.')).toBeVisible();
    // Another PDF made meanwhile leaves time for a sheet that does not wait.
    await Promise.all([
      page.waitForEvent('download', (download) => download.suggestedFilename() === 'measuring-sheet-mm.pdf'),
      page.getByRole('button', { name: 'Save a measuring sheet' }).click(),
    ]);
    letCome();
    const pdf = readFileSync(await (await sheet).path());
    expect(pdf.toString('latin1').match(/\/DCTDecode/g)).toHaveLength(2);
  });

  test('a print shows plain pictures of the covers, by whatever command it is started', async ({ bench }) => {
    await openExample(bench, 'choir book');
    await toCustomer(bench);
    const papers = bench.locator('.customer-print');
    await expect(papers.first()).toHaveAttribute('hidden');
    await scenesAreDrawn(bench, 2);
    // The browser's own command: no button of the page is pressed.
    await bench.pdf();
    for (const paper of await papers.all()) await expect(paper).toHaveAttribute('src', /^(data|blob):/);
    const middles = await papers.evaluateAll((pictures) =>
      Promise.all(
        (pictures as HTMLImageElement[]).map(async (picture) => {
          await picture.decode();
          const context = new OffscreenCanvas(1, 1).getContext('2d')!;
          context.drawImage(picture, -picture.naturalWidth / 2, -picture.naturalHeight / 2);
          return [picture.naturalWidth, ...context.getImageData(0, 0, 1, 1).data];
        }),
      ),
    );
    expect(middles).toHaveLength(2);
    for (const [width, red, , blue, alpha] of middles) {
      expect(width).toBe(1200);
      // Leather, or pages: neither is the white behind them.
      expect(red).toBeGreaterThan(blue! + 10);
      expect(alpha).toBe(255);
    }
    await bench.emulateMedia({ media: 'print' });
    await expect(papers.first()).toBeVisible();
    await expect(papers.last()).toBeVisible();
    await expect(bench.locator('.customer-scene').first()).toBeHidden();
    await expect(bench.getByRole('button', { name: 'Print' })).toBeHidden();
    await bench.emulateMedia({ media: 'screen' });
    await expect(papers.first()).toBeHidden();
    await expect(bench.locator('.customer-scene canvas').first()).toBeVisible();
  });

  test('the sheet does not scroll sideways, on a telephone or a desk, and meets WCAG 2.2 AA', async ({ bench }) => {
    await toCustomer(bench);
    for (const width of [1440, 320]) {
      await bench.setViewportSize({ width, height: 844 });
      const overflow = () =>
        bench.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      await expect.poll(overflow, `at ${width} px`).toBe(0);
    }
    await bench.setViewportSize({ width: 1280, height: 800 });
    await expectAccessible(bench);
  });
});
