import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { fitReport } from '../../src/core/fitReport.ts';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { createElasticSolvers } from '../../src/core/fold/elastic/elasticFit.ts';
import { parseJobText } from '../../src/core/job/parseJob.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { PLAIN_OFFER } from '../../src/output/customerSheet/offer.ts';
import { sheetTexts } from '../output/customerSheet/sheetTexts.ts';
import { expectAccessible } from './accessibility.ts';
import { chooseLook, expect, goToPlace, jobName, openDocument, openExample, scenesAreDrawn, test } from './bench.ts';
import { withoutWebGl } from './webGl.ts';

const toCustomer = async (page: Page): Promise<void> => {
  await goToPlace(page, 'Customer');
  await expect(page.getByRole('button', { name: 'Take away' })).toBeVisible();
};

async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path());
}

/** Prints at the moment at which both scenes say that they are drawn: whether each of their pictures is there. */
const printedOnceDrawn = (): Promise<boolean[]> =>
  new Promise((resolve) => {
    const watch = new MutationObserver(() => {
      if (document.querySelectorAll('.customer-scene .cover-scene[aria-busy="false"]').length < 2) return;
      watch.disconnect();
      window.dispatchEvent(new Event('beforeprint'));
      const papers = document.querySelectorAll<HTMLImageElement>('.customer-print');
      resolve([...papers].map(({ src }) => /^(data|blob):/.test(src)));
    });
    watch.observe(document.body, { subtree: true, childList: true, attributes: true });
  });

test('the sheet says the fit as computed, and changes nothing', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await toCustomer(bench);
  const parsed = parseJobText(readFileSync('public/jobs/choir-book.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const design = coverDesign(parsed.job);
  const sheet = customerSheet(design, designReport(design));
  const main = bench.getByRole('main');
  await expect(main.getByRole('heading', { name: 'Choir book' })).toBeVisible();
  await expect(main).toContainText(sheet.fit);
  await expect(main.getByRole('heading', { name: 'Why this leather' })).toBeVisible();
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
  await expect(bench.getByRole('row', { name: /^Price kr .* kr .* kr / })).toBeVisible();
  await expect(bench.getByRole('main')).toContainText('A leather cover for this book, by The harbour bench');
  await bench.getByLabel('Show the price').uncheck();
  await expect(price).toBeHidden();
  await expect(bench.getByRole('main')).not.toContainText(/price|kr /i);
});

/** A page's own words, without spaces. */
const letters = (text: string): string => text.replace(/\s/g, '');

test('the page, as it is printed, says every sentence and figure of the sheet, and nothing else', async ({ bench }) => {
  const job = JSON.parse(readFileSync('public/jobs/choir-book.json', 'utf8'));
  await openDocument(bench, { ...job, rates: { maker: 'The harbour bench', currency: 'kr', prices: { hour: 300 } } });
  await toCustomer(bench);
  const main = bench.getByRole('main');
  await expect(main).toContainText('Let go, the new cover');
  await bench.emulateMedia({ media: 'print' });
  const parsed = parseJobText(
    JSON.stringify({ ...job, rates: { maker: 'The harbour bench', currency: 'kr', prices: { hour: 300 } } }),
  );
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const date = await bench.evaluate(() => new Date().toLocaleDateString('sv'));
  const report = fitReport(parsed.job, { solvers: createElasticSolvers() });
  const sheet = customerSheet(coverDesign(parsed.job), report, { ...PLAIN_OFFER, date });
  let rest = letters((await main.textContent()) ?? '');
  for (const text of [...sheetTexts(sheet)].sort((a, b) => b.length - a.length)) {
    expect(rest).toContain(letters(text));
    rest = rest.replace(letters(text), '');
  }
  expect(rest).toBe('');
});

test('other weights are typed, and one that is none says so and changes nothing', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await toCustomer(bench);
  const weights = bench.getByRole('columnheader');
  await expect(weights).toHaveText(['4-5 oz', '5-6 oz', '6-7 oz']);
  await bench.getByText('Weights and mark').click();
  await bench.getByLabel('Compare with', { exact: true }).fill('2.5-3 oz');
  await expect(weights).toHaveText(['2 1/2-3 oz', '5-6 oz', '6-7 oz']);
  await bench.getByLabel('and with', { exact: true }).fill('30 oz');
  await expect(bench.getByRole('alert')).toContainText('“30 oz” is not a leather weight of at most 10 mm');
  await expect(weights).toHaveText(['2 1/2-3 oz', '5-6 oz', '6-7 oz']);
  await bench.getByLabel('and with', { exact: true }).fill('');
  await expect(bench.getByRole('alert')).toHaveCount(0);
});

test('a mark of the maker is drawn anew, kept in this browser and taken off; what is no picture is refused', async ({
  bench,
}) => {
  await toCustomer(bench);
  await bench.getByText('Weights and mark').click();
  const mark = bench.getByRole('img', { name: 'The mark of the maker' });
  const open = (name: string, content: string | Uint8Array): Promise<void> =>
    bench
      .getByLabel('Picture of your mark')
      .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) });
  await open('mark.png', 'no picture at all');
  await expect(bench.getByRole('status').filter({ hasText: 'a file of another kind' })).toBeVisible();
  // The browser would expand them, here to 45 MB.
  const entities = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><text>${'&a;'.repeat(900)}</text><path d="M0 0H9V9Z"/></svg>`;
  await open('mark.svg', `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(50_000)}">]>${entities}`);
  await expect(bench.getByRole('status').filter({ hasText: 'declares entities of its own' })).toBeVisible();
  await expect(mark).toHaveCount(0);
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20" onload="window.ran = true"><path d="M0 0H40V20H0Z" fill="#7d2432"/></svg>';
  await open('mark.svg', svg);
  await expect(mark).toHaveAttribute('src', /^data:image\/png;base64,/);
  expect(await bench.evaluate(() => 'ran' in window)).toBe(false);
  // Filled in its own colour.
  const pixel = await mark.evaluate(async (picture: HTMLImageElement) => {
    await picture.decode();
    const context = new OffscreenCanvas(1, 1).getContext('2d')!;
    context.drawImage(picture, -picture.naturalWidth / 2, -picture.naturalHeight / 2);
    return [picture.naturalWidth, ...context.getImageData(0, 0, 1, 1).data];
  });
  expect(pixel).toEqual([600, 0x7d, 0x24, 0x32, 255]);
  await bench.reload();
  await expect(mark).toBeVisible();
  await bench.getByText('Weights and mark').click();
  await bench.getByRole('button', { name: 'Take your mark off' }).click();
  await expect(mark).toHaveCount(0);
  await bench.reload();
  await expect(bench.getByRole('heading', { name: 'Why this leather' })).toBeVisible();
  await expect(mark).toHaveCount(0);
});

test('a browser without a camera view shows no button for one and says why when asked', async ({ bench }) => {
  await toCustomer(bench);
  await expect(bench.getByRole('button', { name: 'See it on your table' })).toHaveCount(0);
  await bench.getByText('On your own table?').click();
  await expect(bench.getByText('This browser has no camera view')).toBeVisible();
});

test('one that has it is asked for a session on a press, and its refusal is shown', async ({ page }) => {
  await page.addInitScript(withoutWebGl);
  await page.addInitScript(() => {
    const asked: unknown[] = [];
    Object.assign(window, { asked });
    Object.defineProperty(navigator, 'xr', {
      value: {
        isSessionSupported: (mode: string) => Promise.resolve(mode === 'immersive-ar'),
        requestSession: (mode: string, init: XRSessionInit) => {
          asked.push([mode, init.requiredFeatures]);
          return Promise.reject(new DOMException('The camera was refused.', 'NotAllowedError'));
        },
      },
    });
  });
  await page.goto('#customer');
  await page.getByRole('button', { name: 'See it on your table' }).click();
  await expect(page.getByRole('alert')).toContainText('The camera was refused.');
  expect(await page.evaluate(() => (window as unknown as { asked: unknown }).asked)).toEqual([
    ['immersive-ar', ['hit-test']],
  ]);
  await expect(page.getByRole('button', { name: 'See it on your table' })).toBeEnabled();
});

test('a device that opens links to USDZ is given one, and no button', async ({ page }) => {
  await page.addInitScript(withoutWebGl);
  await page.addInitScript(() => {
    const own = DOMTokenList.prototype.supports;
    DOMTokenList.prototype.supports = function (this: DOMTokenList, token: string) {
      return token === 'ar' || Reflect.apply(own, this, [token]);
    };
  });
  await page.goto('#customer');
  const link = page.getByRole('link', { name: 'See it on your table' });
  await expect(link).toHaveAttribute('rel', 'ar');
  await expect(page.getByRole('button', { name: 'See it on your table' })).toHaveCount(0);
  // An image and nothing else: only such a link is opened at once.
  expect(await link.evaluate((node) => [...node.childNodes].map(({ nodeName }) => nodeName))).toEqual(['IMG']);
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  expect(download.suggestedFilename()).toMatch(/\.usdz$/);
  const bytes = readFileSync(await download.path());
  // A ZIP file whose first entry is the layer that is opened (USDZ File Format Specification).
  expect(bytes.toString('latin1', 0, 4)).toBe('PK\u0003\u0004');
  expect(bytes.toString('latin1', 30, 40)).toBe('cover.usda');
});

test('without WebGL the sections stand in, and a picture says why there is none', async ({ page }) => {
  await page.addInitScript(withoutWebGl);
  await page.goto('#customer');
  await expect(page.getByRole('img', { name: /^Section across the spine/ })).toHaveCount(2);
  await page.getByRole('button', { name: 'Take away' }).click();
  await page.getByRole('button', { name: 'Save picture' }).click();
  await expect(page.getByRole('dialog').getByRole('status')).toContainText('There is no 3D view');
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

  test('sheet and measuring sheet are saved as PDF', async ({ bench }) => {
    await toCustomer(bench);
    const pdf = await saved(bench, 'Save as PDF');
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.toString('latin1').match(/\/DCTDecode/g)).toHaveLength(2);
    for (const sheet of ['Save a measuring sheet', 'Save the sheet to photograph the book on'])
      expect((await saved(bench, sheet)).subarray(0, 5).toString()).toBe('%PDF-');
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
    const arePrinted = bench.evaluate(printedOnceDrawn);
    await toCustomer(bench);
    const papers = bench.locator('.customer-print');
    await expect(papers.first()).toHaveAttribute('hidden');
    await scenesAreDrawn(bench, 2);
    expect(await arePrinted).toEqual([true, true]);
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
    for (const width of [1440, 1024, 390, 320]) {
      await bench.setViewportSize({ width, height: 844 });
      const overflow = () =>
        bench.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      await expect.poll(overflow, `at ${width} px`).toBe(0);
    }
    await bench.setViewportSize({ width: 1280, height: 800 });
    await expectAccessible(bench);
  });
});
