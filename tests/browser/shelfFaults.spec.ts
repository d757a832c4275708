import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, openExample, test } from './bench.ts';

const cards = (page: Page) => page.locator('.job-card');
const openShelf = (page: Page) => page.getByRole('button', { name: 'Shelf', exact: true }).click();

/** Opens the shelf's database as another program could. */
const inDatabase = (page: Page, what: 'putNumericName' | 'emptied') =>
  page.evaluate(async (wanted) => {
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    if (wanted === 'emptied') {
      await done(indexedDB.deleteDatabase('coverwright'));
      (await done(indexedDB.open('coverwright', 1))).close();
      return;
    }
    const database = await done(indexedDB.open('coverwright'));
    const jobs = database.transaction('jobs', 'readwrite').objectStore('jobs');
    await done(jobs.put({ id: 'spoilt', revision: 1, name: 7, document: {}, savedAt: 1, removedAt: null }));
    database.close();
  }, what);

test('one spoilt record is set apart, exported as it stands and then deleted; the shelf works', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await bench.getByLabel('Width', { exact: true }).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await inDatabase(bench, 'putNumericName');
  await bench.getByRole('button', { name: 'Close the shelf' }).click();
  await openShelf(bench);
  await expect(bench.getByText('One record of the shelf cannot be read as a job')).toBeVisible();
  await expect(bench.getByText('name cannot be read')).toBeVisible();
  await expect(cards(bench)).toHaveCount(1);
  const [download] = await Promise.all([
    bench.waitForEvent('download'),
    bench.getByRole('button', { name: 'Export it as it stands' }).click(),
  ]);
  expect(JSON.parse(readFileSync(await download.path(), 'utf8'))).toMatchObject({ id: 'spoilt', name: 7 });
  await bench.getByRole('button', { name: 'Delete it' }).click();
  await expect(bench.getByText('cannot be read as a job')).toBeHidden();
  await expect(cards(bench)).toHaveCount(1);
});

test('a database without its stores is rebuilt, and the open job is kept in it', async ({ bench }) => {
  await expect(bench.getByRole('button', { name: 'Shelf', exact: true })).toBeVisible();
  await inDatabase(bench, 'emptied');
  await bench.reload();
  await openExample(bench, 'choir book');
  await bench.getByLabel('Width', { exact: true }).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await expect(bench.getByRole('alert')).toBeHidden();
});
