import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expectAccessible } from './accessibility.ts';
import {
  chooseInMenu,
  elsewherePage,
  expect,
  goToPlace,
  headline,
  jobName,
  openCard,
  openExample,
  test,
} from './bench.ts';

const width = (page: Page) => page.getByLabel('Width', { exact: true });
const height = (page: Page) => page.getByLabel('Height', { exact: true });
const cards = (page: Page) => page.locator('.job-card');

const openShelf = async (page: Page): Promise<void> => {
  await goToPlace(page, 'Shelf');
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
};
async function onCard(page: Page, name: string, action: string): Promise<void> {
  const card = cards(page).filter({ has: page.getByRole('heading', { name, exact: true }) });
  if (action !== 'Open') await card.locator('summary', { hasText: 'More' }).click();
  await card.getByRole('button', { name: action }).click();
}

/** Puts a changed example on the shelf. */
async function keep(page: Page, name: string, typed: string): Promise<void> {
  await openExample(page, name);
  await openCard(page, 'book');
  await width(page).fill(typed);
  await openShelf(page);
  await expect(cards(page).filter({ hasText: `${Number(typed)} mm ×` })).toHaveCount(1);
  await openCard(page, 'book');
}

/** Widths of the jobs in the browser's database, mm; none while the page has not laid it out. */
const savedWidths = (page: Page) =>
  page.evaluate(async () => {
    if (!(await indexedDB.databases()).some(({ name }) => name === 'coverwright')) return [];
    const settled = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await settled(indexedDB.open('coverwright'));
    const jobs = await settled(database.transaction('jobs').objectStore('jobs').getAll());
    database.close();
    return jobs.map(({ document }) => document.book.width_mm as number);
  });

test('a changed job stands on the shelf with its picture; an untouched example does not', async ({ bench }) => {
  await openExample(bench, 'shore guide');
  await openShelf(bench);
  await expect(bench.getByText('Nothing is kept yet.')).toBeVisible();
  await openCard(bench, 'book');
  await keep(bench, 'choir book', '151');
  await keep(bench, 'tide ledger', '160');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(2);
  await expect(bench.getByRole('img', { name: 'Cover of Choir book on the shelf' })).toBeVisible();
  // Asked once something was kept; whether it promises is the browser's affair.
  await expect(bench.getByText(/^(The browser has promised to keep|This browser may delete) the shelf/)).toBeVisible();

  await bench.getByLabel('Search').fill('choir 151');
  await expect(cards(bench)).toHaveCount(1);
  await onCard(bench, 'Choir book', 'Open');
  await expect(bench).toHaveURL(/#cover$/);
  await expect(width(bench)).toHaveValue('151 mm');
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(jobName(bench)).toHaveText('Tide ledger');
});

test('a copy is a job of its own; a removed job comes back as it was', async ({ bench }) => {
  await keep(bench, 'choir book', '151');
  await openShelf(bench);
  await onCard(bench, 'Choir book', 'Copy to a new job');
  await expect(jobName(bench)).toHaveText('Choir book, copy');
  await width(bench).fill('155');
  await openShelf(bench);
  await expect(cards(bench)).toHaveText([/Choir book, copy155 mm/, /Choir book151 mm/]);

  await onCard(bench, 'Choir book', 'Remove');
  await expect(cards(bench)).toHaveCount(1);
  await bench.getByRole('button', { name: 'Put it back' }).click();
  await expect(cards(bench)).toHaveCount(2);

  await onCard(bench, 'Choir book', 'Remove');
  await openCard(bench, 'book');
  await bench.reload();
  await openShelf(bench);
  await bench.getByText('Removed jobs (1)').click();
  await bench.getByRole('button', { name: 'Put back Choir book' }).click();
  await expect(cards(bench)).toHaveCount(2);
});

test('going on after a removal was taken back goes on with the same job', async ({ bench }) => {
  await keep(bench, 'choir book', '151');
  await openShelf(bench);
  await onCard(bench, 'Choir book', 'Remove');
  await bench.getByRole('button', { name: 'Put it back' }).click();
  await openCard(bench, 'book');
  await width(bench).fill('152');
  await openShelf(bench);
  await expect(cards(bench)).toHaveText([/152 mm/]);
});

test('an earlier version opens as a job of its own, beside the job as it stands', async ({ bench }) => {
  await bench.clock.install();
  await bench.reload();
  await openExample(bench, 'choir book');
  await openCard(bench, 'book');
  for (const typed of ['151', '152']) {
    await width(bench).fill(typed);
    await bench.clock.runFor('01:00');
    // The clock is the test's, but the database takes time of its own.
    await expect.poll(() => savedWidths(bench)).toEqual([Number(typed)]);
    await bench.clock.fastForward('10:00');
  }
  await openShelf(bench);
  await expect(cards(bench)).toHaveText([/152 mm/]);
  await onCard(bench, 'Choir book', 'Versions');
  await bench.getByRole('button', { name: /^Open as a job of its own/ }).click();
  await expect(width(bench)).toHaveValue('151 mm');
  await expect(jobName(bench)).toHaveText(/^Choir book, as of /);
  await bench.clock.runFor('01:00');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(2);
  await expect(cards(bench).filter({ hasText: '152 mm' })).toHaveCount(1);
});

test('two windows on one job: each is told of the other, and neither loses its work', async ({ bench, context }) => {
  await keep(bench, 'choir book', '151');
  const other = await context.newPage();
  await other.goto('');
  await openCard(other, 'book');
  await expect(width(other)).toHaveValue('151');
  await openShelf(other);
  await expect(cards(other)).toHaveCount(1);
  await openCard(other, 'book');

  await width(bench).fill('152');
  await expect(other.getByText('Another window has changed this job.')).toBeVisible();
  await height(other).fill('221');
  await expect(other.getByText('is now a job of its own')).toBeVisible();
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(2);
  await expect(cards(bench).filter({ hasText: '152 mm × 220 mm' })).toHaveCount(1);
  await expect(cards(bench).filter({ hasText: '151 mm × 221 mm' })).toHaveCount(1);
  await openCard(bench, 'book');

  // From here on they are two jobs, and each window keeps its own through a reload.
  await height(other).fill('222');
  await openShelf(other);
  await expect(cards(other)).toHaveCount(2);
  await bench.reload();
  await other.reload();
  await openCard(bench, 'book');
  await openCard(other, 'book');
  await expect(width(bench)).toHaveValue('152');
  await expect(height(other)).toHaveValue('222');
});

test('a window takes over what another has saved, and undo brings its own state back', async ({ bench, context }) => {
  await keep(bench, 'choir book', '151');
  const other = await context.newPage();
  await other.goto('');
  await openCard(other, 'book');
  await width(bench).fill('152');
  await other.getByRole('button', { name: 'Show what the other window has' }).click();
  await expect(width(other)).toHaveValue('152 mm');
  await height(other).fill('221');
  await expect(bench.getByText('Another window has changed this job.')).toBeVisible();
  await other.getByRole('button', { name: 'Undo', exact: true }).click();
  await other.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(width(other)).toHaveValue('151');
});

test('a window killed while it saves loses nothing saved before, and the bench comes back as typed', async ({
  context,
  bench,
}) => {
  const doomed = await context.newPage();
  await doomed.goto('');
  await keep(doomed, 'choir book', '151');
  await width(doomed).fill('152');
  // The shelf is written 0.3 s after the last key.
  await doomed.waitForTimeout(290);
  await doomed.goto('chrome://crash').catch(() => {});

  const next = await context.newPage();
  await next.goto('');
  await openCard(next, 'book');
  await expect(width(next)).toHaveValue('152');
  await openShelf(next);
  await expect(cards(next).filter({ hasText: 'Choir book' })).toHaveText(/152 mm/);
  await expect(cards(next)).toHaveCount(1);
  await expect(jobName(bench)).toHaveText('Tide ledger');
});

test('a full shelf says so, and what was saved before stays', async ({ bench }) => {
  await keep(bench, 'choir book', '151');
  await bench.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await width(bench).fill('152');
  await expect(bench.getByRole('alert')).toContainText('no room left');
  await bench.reload();
  await openCard(bench, 'book');
  await expect(width(bench)).toHaveValue('152');
});

test('a browser that opens no storage says so, and the bench works', async ({ page }) => {
  await page.addInitScript(() => {
    const refuse = (): never => {
      throw new DOMException('denied', 'SecurityError');
    };
    IDBFactory.prototype.open = refuse;
    for (const store of ['localStorage', 'sessionStorage']) Object.defineProperty(window, store, { get: refuse });
  });
  await page.goto('');
  await expect(page.getByText('does not keep the open job')).toBeVisible();
  await openExample(page, 'choir book');
  await openCard(page, 'book');
  await width(page).fill('372');
  await expect(headline(page)).not.toHaveText('');
  await openShelf(page);
  await expect(page.getByRole('alert').first()).toContainText('private window');
});

const tideLedger = JSON.parse(readFileSync('public/jobs/tide-ledger.json', 'utf8'));

test('a file of 5,000 jobs with 50 broken ones: the sound ones come in, the others are told by their place', async ({
  bench,
}) => {
  const jobs = Array.from({ length: 5000 }, (_, i) => ({
    ...tideLedger,
    name: `Ledger ${i + 1}`,
    book: { ...tideLedger.book, width_mm: i % 100 === 7 ? -1 : 100 + (i % 100) },
  }));
  const file = { name: 'all.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(jobs)) };
  await openShelf(bench);
  const input = bench.getByLabel('File of jobs');
  await input.setInputFiles(file);
  const report = bench.getByRole('status').filter({ hasText: 'all.json' });
  await expect(report).toContainText('4950 jobs added, 50 broken and left out');
  await expect(report.getByRole('listitem')).toHaveCount(50);
  await expect(report.getByRole('listitem').first()).toContainText('Entry 8 Ledger 8Width: ');
  await expect(bench.getByText('4950 jobs', { exact: true })).toBeVisible();
  await bench.getByLabel('Search').fill('Ledger 4321');
  await expect(cards(bench)).toHaveCount(1);

  await input.setInputFiles(file);
  await expect(report).toContainText('0 jobs added, 4950 jobs passed over');
  await input.setInputFiles({ ...file, name: 'broken.json', buffer: Buffer.from('{"format":') });
  await expect(bench.getByRole('status').filter({ hasText: 'broken.json' })).toContainText('1 broken');
  await expect(cards(bench)).toHaveCount(1);
});

test('an exported shelf comes back whole', async ({ bench, browser, baseURL }) => {
  await keep(bench, 'choir book', '151');
  await keep(bench, 'shore guide', '119');
  await openShelf(bench);
  const [download] = await Promise.all([
    bench.waitForEvent('download'),
    bench.getByRole('button', { name: 'Export all' }).click(),
  ]);
  const elsewhere = await elsewherePage(browser, baseURL);
  await elsewhere.goto('');
  await openShelf(elsewhere);
  await elsewhere.getByLabel('File of jobs').setInputFiles(await download.path());
  await expect(cards(elsewhere)).toHaveCount(2);
  await expect(cards(elsewhere).filter({ hasText: '119 mm ×' })).toHaveCount(1);
  await elsewhere.close();
});

test('the shelf and its notes meet WCAG 2.2 AA', async ({ bench }) => {
  await keep(bench, 'choir book', '151');
  await chooseInMenu(bench, 'Share link');
  await expect(bench.locator('.share-note')).toBeVisible();
  await expectAccessible(bench, '.share-note');
  await openShelf(bench);
  await onCard(bench, 'Choir book', 'Versions');
  await onCard(bench, 'Choir book', 'Copy to a new job');
  await openShelf(bench);
  await onCard(bench, 'Choir book', 'Remove');
  await bench.getByLabel('File of jobs').setInputFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from('[{}]'),
  });
  await expect(bench.getByText('broken.json')).toBeVisible();
  await expectAccessible(bench);
});
