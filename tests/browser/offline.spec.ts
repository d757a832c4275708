import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import {
  chooseInMenu,
  chooseLook,
  exploreSettles,
  goToPlace,
  headline,
  jobName,
  openCard,
  openExample,
  openPart,
  PARTS,
  stripSettles,
} from './bench.ts';
import { expect, type Site, test } from './site.ts';
import { withoutWebGl } from './webGl.ts';

test.use({ serviceWorkers: 'allow' });

async function visit(context: BrowserContext, site: Site, hasScene = false): Promise<Page> {
  const page = await context.newPage();
  if (hasScene) await page.addInitScript(chooseLook, 'light');
  else await page.addInitScript(withoutWebGl);
  await page.goto(site.address);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  return page;
}

const editions = (page: Page) => page.evaluate(() => caches.keys());

test('after one visit everything works without a network', async ({ context, site }) => {
  test.slow();
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const page = await visit(context, site, true);
  await site.close();
  const faults: string[] = [];
  page.on('pageerror', ({ message }) => faults.push(message));
  page.on('console', (message) => {
    const { url } = message.location();
    // The browser itself fetches the icon of its tab, past the service worker and when it has time.
    if (message.type() === 'error' && !url.endsWith('/favicon.svg')) faults.push(`${message.text()} ${url}`);
  });
  await page.reload();
  await expect(page.locator('.stage-scene canvas')).toBeVisible();
  await openExample(page, 'choir book');
  await (await openCard(page, 'book')).getByLabel('Width', { exact: true }).fill('151');
  for (const id of ['leather', 'seam', 'cut', 'sure'] as const)
    await expect((await openCard(page, id)).locator('.card-body section').first()).toBeVisible();
  await stripSettles(page);
  await goToPlace(page, 'Strips');
  await expect(page.locator('.strip > header')).toBeVisible();
  await goToPlace(page, 'Explore');
  await exploreSettles(page);
  for (const part of PARTS) await expect((await openPart(page, part)).locator('.panel-parts')).toBeVisible();
  await goToPlace(page, 'Shelf');
  await expect(page.locator('.job-card')).toHaveCount(1);
  await chooseInMenu(page, 'Share link');
  await expect(page.getByLabel('Link to this job')).toHaveValue(/#job=5\./);
  const link = await page.getByLabel('Link to this job').inputValue();

  await goToPlace(page, 'Customer');
  await expect(page.locator('.customer-scene canvas')).toHaveCount(2);
  for (const [button, ending] of [
    ['Save as PDF', 'sheet.pdf'],
    ['Save a measuring sheet', 'measuring-sheet-mm.pdf'],
    ['Take away', null],
    ['Save picture', 'closed.png'],
    ['Save model', 'glb'],
  ] as const) {
    if (ending === null) {
      await page.getByRole('button', { name: button }).click();
      continue;
    }
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(new RegExp(`${ending.replace('.', '\\.')}$`));
    expect(readFileSync(await download.path()).length).toBeGreaterThan(1000);
  }
  const second = await context.newPage();
  await second.goto(link);
  await openCard(second, 'book');
  await expect(second.getByLabel('Width', { exact: true })).toHaveValue('151 mm');
  expect(faults).toEqual([]);
});

test('a new edition waits, says so, and comes only when asked for and with no other window at work', async ({
  context,
  site,
}) => {
  const page = await visit(context, site);
  const [first] = await editions(page);
  await openExample(page, 'choir book');
  const other = await visit(context, site);

  const worker = join(site.folder, 'sw.js');
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/"mark":"[^"]+"/, '"mark":"next"'));
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  const note = page.getByText('A newer version of Coverwright is ready.');
  await expect(note).toBeVisible();
  await page.reload();
  // A reload alone does not bring it either.
  await expect(note).toBeVisible();
  expect(await editions(page)).toContain(first);

  await page.getByRole('button', { name: 'Update now' }).click();
  await expect(page.getByText('Close the other Coverwright windows')).toBeVisible();
  expect(await editions(page)).toContain(first);
  await other.close();
  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Update now' }).click()]);
  await expect(jobName(page)).toHaveText('Choir book');
  await expect.poll(() => editions(page)).toEqual([first!.replace(/\S+$/, 'next')]);
  await expect(note).toBeHidden();
});

test('a cache that was emptied is filled again as soon as the page is used, and then serves without a network', async ({
  context,
  site,
}) => {
  const page = await visit(context, site);
  const count = () =>
    page.evaluate(async () => {
      const names = await caches.keys();
      const kept = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return kept.flat().length;
    });
  const all = await count();
  expect(all).toBeGreaterThan(20);
  await page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));
  await page.reload();
  await expect.poll(count).toBe(all);
  await site.close();
  await page.reload();
  await expect(headline(page)).toBeVisible();
});

test('a cache emptied after a deploy is not filled with files of two versions', async ({ context, site }) => {
  const page = await visit(context, site);
  const [first] = await editions(page);
  const worker = join(site.folder, 'sw.js');
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/"mark":"[^"]+"/, '"mark":"next"'));
  await page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));
  await page.reload();
  // The new version is fetched whole, and waits; of the old one nothing is put together again.
  await expect.poll(() => editions(page)).toContain(first!.replace(/\S+$/, 'next'));
  const kept = await page.evaluate(async (name) => (await (await caches.open(name)).keys()).length, first!);
  expect(kept).toBe(0);
});

test('an edition that cannot be fetched whole leaves the one before in use', async ({ context, site }) => {
  const page = await visit(context, site);
  const worker = join(site.folder, 'sw.js');
  writeFileSync(
    worker,
    readFileSync(worker, 'utf8').replace(/"mark":"[^"]+","files":\[/, '"mark":"next","files":["./missing.js",'),
  );
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
  await page.waitForFunction(async () => (await navigator.serviceWorker.getRegistration())?.installing === null);
  await site.close();
  await page.reload();
  await expect(headline(page)).toBeVisible();
  await expect(page.getByText('A newer version')).toBeHidden();
});

test('the page can be installed: its manifest names icons that are there', async ({ page }) => {
  await page.goto('');
  const address = await page.locator('link[rel=manifest]').evaluate((link) => (link as HTMLLinkElement).href);
  const manifest = await (await page.request.get(address)).json();
  expect(manifest).toMatchObject({ name: 'Coverwright', start_url: './', display: 'standalone' });
  for (const { src, sizes } of manifest.icons) {
    const icon = await page.request.get(new URL(src, address).href);
    expect(icon.ok()).toBe(true);
    const png = await icon.body();
    if (sizes !== 'any') expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes);
  }
});
