import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { chooseInMenu, goToPlace, openCard, openPart } from './bench.ts';
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
