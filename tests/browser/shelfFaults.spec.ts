import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { expect, goToPlace, openCard, openExample, test } from './bench.ts';

const cards = (page: Page) => page.locator('.job-card');
const openShelf = (page: Page) => goToPlace(page, 'Shelf');

/** The width of the book, with its card unfolded. */
async function openWidth(page: Page): Promise<Locator> {
  return (await openCard(page, 'book')).getByLabel('Width', { exact: true });
}

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
  await (await openWidth(bench)).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await inDatabase(bench, 'putNumericName');
  await goToPlace(bench, 'Cover');
  await openShelf(bench);
  await expect(bench.getByText('One record of the shelf cannot be read as a job')).toBeVisible();
  await expect(bench.getByText('name cannot be read')).toBeVisible();
  await expect(cards(bench)).toHaveCount(1);
  // Nothing in it is a job, so that there is nothing to put back.
  await expect(bench.getByRole('button', { name: 'Put its job back' })).toHaveCount(0);
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
  // The shelf comes after the first paint.
  await openShelf(bench);
  await expect(bench.getByText('Nothing is kept yet.')).toBeVisible();
  await inDatabase(bench, 'emptied');
  await bench.reload();
  await openExample(bench, 'choir book');
  await (await openWidth(bench)).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await expect(bench.getByRole('alert')).toBeHidden();
});

/** The quick copy as it reaches the disk late: an older state of the job that the shelf has, in a browser without a journal. */
async function ageQuickCopy(page: Page, change: { readonly isSaved: boolean; readonly width: number }): Promise<void> {
  await page.addInitScript(() => Object.defineProperty(navigator, 'locks', { value: undefined }));
  await page.evaluate(({ isSaved, width }) => {
    const KEY = 'coverwright.open-job.v1';
    interface Kept {
      readonly document: { readonly book: object };
      readonly place: { readonly revision: number };
    }
    const newer: Kept = JSON.parse(localStorage.getItem(KEY) ?? '');
    const kept = {
      ...newer,
      document: { ...newer.document, book: { ...newer.document.book, width_mm: width } },
      typed: {},
      place: { ...newer.place, revision: newer.place.revision - 1, isSaved },
      mark: 1,
    };
    // Written last, when the page is left.
    window.addEventListener('pagehide', () => {
      sessionStorage.clear();
      localStorage.setItem(KEY, JSON.stringify(kept));
    });
  }, change);
}

/** Saves two states of one job, so that there is an older one. */
async function keepTwoStates(page: Page): Promise<void> {
  await openExample(page, 'choir book');
  for (const typed of ['151', '152']) {
    await (await openWidth(page)).fill(typed);
    await openShelf(page);
    await expect(cards(page).filter({ hasText: `${typed} mm ×` })).toHaveCount(1);
  }
}

async function editsWithoutFork(page: Page): Promise<void> {
  await (await openWidth(page)).fill('155');
  await openShelf(page);
  await expect(cards(page)).toHaveText([/155 mm ×/]);
  await expect(page.getByText(/window has|job of its own/)).toBeHidden();
}

test('a start with an older quick copy opens what the shelf has, and an edit goes on with the same job', async ({
  bench,
}) => {
  await keepTwoStates(bench);
  await ageQuickCopy(bench, { isSaved: true, width: 151 });
  await bench.reload();
  await expect(await openWidth(bench)).toHaveValue('152 mm');
  await expect(bench.getByRole('button', { name: 'Show it' })).toBeHidden();
  await editsWithoutFork(bench);
});

test('the journal brings back what is later than the quick copy, as it was typed, with undo and redo', async ({
  bench,
}) => {
  await keepTwoStates(bench);
  for (const typed of ['153', '154']) {
    await (await openWidth(bench)).fill(typed);
    await (await openWidth(bench)).blur();
  }
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await openShelf(bench);
  await expect(cards(bench)).toHaveText([/153 mm ×/]);
  await bench.evaluate(() => localStorage.clear());
  await bench.goto('about:blank');
  // As after a kill: a window of its own.
  const page = await bench.context().newPage();
  await bench.close();
  await page.goto('');
  await expect(await openWidth(page)).toHaveValue('153');
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(await openWidth(page)).toHaveValue('154');
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  for (const before of ['153', '152', '151']) {
    await undo.click();
    await expect(await openWidth(page)).toHaveValue(before);
  }
  await editsWithoutFork(page);
});

test('an entry that had not reached the shelf is offered beside the later state, and can be gone on with', async ({
  bench,
}) => {
  await keepTwoStates(bench);
  await ageQuickCopy(bench, { isSaved: false, width: 153 });
  await bench.reload();
  await expect(await openWidth(bench)).toHaveValue('152 mm');
  await bench.getByRole('button', { name: 'Show it' }).click();
  await expect(await openWidth(bench)).toHaveValue('153 mm');
  await editsWithoutFork(bench);
});

test('a shelf that answers late: its later state is offered, and an edit meanwhile parts nothing', async ({
  bench,
}) => {
  await keepTwoStates(bench);
  await ageQuickCopy(bench, { isSaved: true, width: 151 });
  await bench.addInitScript(() => {
    const open = IDBFactory.prototype.open;
    const wait = new Promise((resolve) => setTimeout(resolve, 6000));
    // The request is made at once, and tells late.
    IDBFactory.prototype.open = function (...words) {
      const request = open.apply(this, words);
      const listen = request.addEventListener.bind(request);
      request.addEventListener = (type: string, listener: EventListenerOrEventListenerObject) => {
        if (type !== 'success') return listen(type, listener);
        listen(type, (event) => void wait.then(() => (listener as EventListener).call(request, event)));
      };
      return request;
    };
  });
  await bench.reload();
  await expect(await openWidth(bench)).toHaveValue('151 mm');
  await expect(bench.getByText('The shelf has another state of Choir book than the one shown')).toBeVisible();
  await bench.getByRole('button', { name: 'Show it' }).click();
  await expect(await openWidth(bench)).toHaveValue('152 mm');
  await editsWithoutFork(bench);
});

test('a shelf that the browser cannot read is told as that, keeps the open job, and is begun anew only when asked', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  await (await openWidth(bench)).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await bench.addInitScript(() => {
    const { open, deleteDatabase } = IDBFactory.prototype;
    const error = new DOMException('Internal error opening backing store for indexedDB.open.', 'UnknownError');
    IDBFactory.prototype.open = function () {
      const request = open.call(this, 'another');
      Object.defineProperty(request, 'error', { value: error });
      request.addEventListener = (type: string, listener: EventListenerOrEventListenerObject) => {
        if (type === 'error') setTimeout(() => (listener as EventListener)(new Event(type)));
      };
      return request;
    };
    IDBFactory.prototype.deleteDatabase = function (name) {
      IDBFactory.prototype.open = open;
      return deleteDatabase.call(this, name);
    };
  });
  await bench.reload();
  await expect(await openWidth(bench)).toHaveValue('151');
  await (await openWidth(bench)).fill('152');
  await expect(bench.getByRole('alert')).toContainText('The browser cannot read the shelf');
  await openShelf(bench);
  await expect(bench.getByRole('alert')).toContainText('The browser cannot read the shelf');
  await expect(bench.getByText('No cover on the shelf can be read.')).toBeVisible();
  await bench.getByRole('button', { name: 'Begin a new shelf' }).click();
  await expect(bench.getByText('the old shelf is deleted for good')).toBeVisible();
  await bench.getByRole('button', { name: 'Delete the old shelf' }).click();
  await expect(cards(bench)).toHaveText([/152 mm ×/]);
  await expect(bench.getByRole('alert')).toBeHidden();
  await expect(bench.getByText('The browser has deleted covers')).toBeHidden();
  await editsWithoutFork(bench);
});

test('what the browser has deleted, what it does not promise and what another window has left is told', async ({
  bench,
}) => {
  await bench.addInitScript(() => {
    StorageManager.prototype.persisted = async () => false;
    StorageManager.prototype.persist = async () => 'promises' in window;
  });
  await openExample(bench, 'choir book');
  await (await openWidth(bench)).fill('151');
  await openShelf(bench);
  await expect(cards(bench)).toHaveCount(1);
  await bench.evaluate(
    () =>
      new Promise((resolve) => {
        indexedDB.deleteDatabase('coverwright').onsuccess = resolve;
      }),
  );
  await bench.reload();
  await expect(
    bench.getByText(/The browser has deleted covers.* The shelf held 1 on .*, and holds none now\./),
  ).toBeVisible();
  // The open job is put back by itself.
  await expect(cards(bench)).toHaveText([/151 mm ×/]);
  await bench.getByRole('button', { name: 'Close this note' }).click();
  await editsWithoutFork(bench);
  await expect(bench.getByText('This browser may delete the shelf')).toBeVisible();
  await bench.evaluate(() => Object.assign(window, { promises: true }));
  await bench.getByRole('button', { name: 'Ask the browser to keep it' }).click();
  await expect(bench.getByText('The browser has promised to keep the shelf')).toBeVisible();

  // Another window's last entry reaches only its journal.
  const other = await bench.context().newPage();
  await other.goto('');
  const width = await openWidth(other);
  await other.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...words) {
      if (this.name === 'jobs') throw new DOMException('gone', 'AbortError');
      return put.apply(this, words);
    };
  });
  await width.fill('158');
  await expect(other.getByRole('alert')).toContainText('gone');
  await other.close();
  await bench.reload();
  await expect(bench.getByText('The browser has deleted covers')).toBeHidden();
  await expect(bench.getByText('Another window was closed with a state of Choir book')).toBeVisible();
  await bench.getByRole('button', { name: 'Show it' }).click();
  await openShelf(bench);
  await expect(cards(bench)).toHaveText([/158 mm ×/]);
});
