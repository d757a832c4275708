import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from '@playwright/test';
import { chooseInMenu, goToPlace, headline, jobName, openCard, openExample, openPart, stripSettles } from './bench.ts';
import { expect, type Site, test } from './site.ts';
import { withoutWebGl } from './webGl.ts';

const width = (page: Page) => page.getByLabel('Width', { exact: true });

async function openBench(page: Page, address: string): Promise<void> {
  await page.addInitScript(withoutWebGl);
  await page.goto(address);
  await openCard(page, 'book');
  await width(page).fill('151');
}

/** Puts a new version in place, whose files all have other names. */
function deploy({ folder }: Site): void {
  const assets = join(folder, 'assets');
  const names = readdirSync(assets);
  const texts = [...names.map((name) => join(assets, name)), join(folder, 'index.html'), join(folder, 'sw.js')];
  for (const path of texts.filter((name) => /\.(js|css|html)$/.test(name))) {
    const renamed = names.reduce((text, name) => text.replaceAll(name, `next-${name}`), readFileSync(path, 'utf8'));
    writeFileSync(path, renamed);
  }
  for (const name of names) renameSync(join(assets, name), join(assets, `next-${name}`));
}

test('a tab open past a deploy says that a new version is there, and a reload goes on with the work', async ({
  page,
  site,
}) => {
  await openBench(page, site.address);
  await openPart(page, 'Template');
  deploy(site);
  await openPart(page, 'Supplies');
  await expect(page.getByText('A new version of Coverwright is there')).toBeVisible();
  await expect(page.getByText('The supplies could not be shown: a part of Coverwright could not be')).toBeVisible();
  await expect(page.getByText(/dynamically imported|http:/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Reload the page' }).click();
  // The place in the address is gone on with too.
  await expect(page.getByRole('heading', { name: 'Supplies' })).toBeVisible();
  await expect(page.locator('.workbench-panel .panel-parts')).toBeVisible();
  await expect(page.getByText('A new version')).toBeHidden();
  await openCard(page, 'book');
  await expect(width(page)).toHaveValue('151');
});

test('without a network what is not here yet is told, nothing else goes, and it comes when the network is back', async ({
  page,
  site,
}) => {
  await openBench(page, site.address);
  await site.close();
  const away = page.getByText('A part of Coverwright could not be fetched: the network is away');
  await chooseInMenu(page, 'New cover');
  await expect(away).toBeVisible();
  await goToPlace(page, 'Explore');
  await expect(
    page.getByText('The place Explore could not be shown: a part of Coverwright could not be'),
  ).toBeVisible();
  await expect(away).toBeVisible();
  await openCard(page, 'book');
  await width(page).fill('152');
  await expect(page.getByText('Coverwright stopped')).toBeHidden();
  await site.reopen();
  await page.getByRole('button', { name: 'Reload the page' }).click();
  await openCard(page, 'book');
  await expect(width(page)).toHaveValue('152');
  await goToPlace(page, 'Explore');
  await expect(page.locator('.explore-plot svg')).toBeVisible();
  await goToPlace(page, 'Shelf');
  await expect(page.locator('.job-card')).toHaveCount(1);
});

test('a part that never comes is not said to be fetched for ever', async ({ page, site }) => {
  await page.route(/CutSizes-.*\.js|CoverScene-.*\.js/, () => {});
  await page.clock.install();
  await page.goto(site.address);
  await openCard(page, 'cut');
  await expect(async () => {
    await page.clock.runFor(5_000);
    await expect(page.getByText('The card “Cut” has not come yet.')).toBeVisible({ timeout: 1000 });
    await expect(page.getByText('The three-dimensional view has not come yet.')).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  await expect(page.getByText('is being fetched')).toHaveCount(0);
});

test('opened as a file, the page says that it needs a server, and how to get one', async ({ page }) => {
  await page.goto(pathToFileURL('dist/index.html').href);
  const said = page.getByText('Coverwright has not started.');
  await expect(said).toBeVisible();
  await expect(said).toContainText('opened as a file');
  // On a server it is not seen while the scripts are on their way, and stays where they are not let in.
  await page.route(/\.js$/, (route) => route.abort());
  await page.goto('');
  await expect(said).toHaveCSS('animation', /10s.*backwards.*not-started/);
});

test.describe('in a folder of a server', () => {
  test.use({ under: '/tools/covers/', serviceWorkers: 'allow' });

  test('all is fetched from there: workers, letters, papers, the link and what works without a network', async ({
    page,
    site,
  }) => {
    const failed: string[] = [];
    page.on('response', (response) => {
      if (!response.ok() || !response.url().startsWith(site.address)) failed.push(response.url());
    });
    page.on('console', (message) => {
      if (message.type() === 'error') failed.push(message.text());
    });
    await openBench(page, site.address);
    await expect(page.getByText('Coverwright has not started.')).toHaveCount(0);
    await openExample(page, 'choir book');
    await stripSettles(page);
    // The letters of a print.
    await expect
      .poll(() => page.evaluate(() => [...document.fonts].filter(({ status }) => status === 'loaded').length))
      .toBeGreaterThan(1);
    const template = await openPart(page, 'Template');
    const [paper] = await Promise.all([
      page.waitForEvent('download'),
      template.getByRole('button', { name: /PDF/ }).first().click(),
    ]);
    expect(readFileSync(await paper.path(), 'latin1')).toMatch(/^%PDF-/);
    await chooseInMenu(page, 'Share link');
    const link = page.getByLabel('Link to this job');
    await expect(link).toHaveValue(/#job=5\./);
    const address = await link.inputValue();
    expect(address.slice(0, address.indexOf('#'))).toBe(site.address);
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.scriptURL ?? ''))
      .toBe(`${site.address}sw.js`);
    await site.close();
    expect(failed).toEqual([]);
    await page.goto(address);
    await expect(jobName(page)).toHaveText('Choir book');
    await page.reload();
    await expect(headline(page)).toBeVisible();
  });
});
