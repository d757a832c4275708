import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect, type Page, test } from '@playwright/test';
import config from '../../playwright.config.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { isWholeProof, proofSize } from '../proof/proofSize.ts';
import { openCard, openExample } from './bench.ts';
import { withoutWebGl } from './webGl.ts';

/**
 * Time between an edit and the kill, ms: before and within the write of the journal, before the shelf is written (0.3 s), about
 * then, and long after.
 */
const MOMENTS = [0, 2, 5, 10, 20, 60, 150, 300, 600, 800, 2500, 7000];

/** Moments of the kills: each twenty times, or a sample of those after which the old copy on disk was once believed. */
const kills = proofSize(20 * MOMENTS.length, 2);
const moments = Array.from({ length: kills }, (_, i) =>
  isWholeProof ? nth(MOMENTS, i % MOMENTS.length) : nth([60, 700], i),
);

/** After so long the step is in the journal, ms after the edit, also where other programs keep the machine busy. */
const SURELY_IN_JOURNAL = 600;

/** After so long a kill waits for a save that is still to come, as on a busy machine; ms after the edit. */
const SURELY_SAVED = 2500;

const { launchOptions } = defined(config.use);

// A trace cannot be fetched from a browser that was killed.
test.use({ trace: 'off' });

/** A browser of its own over one profile, which can be killed as by a power cut. */
class Mortal {
  private process: ChildProcess | null = null;
  readonly profile = mkdtempSync(join(tmpdir(), 'profile-'));

  async start(baseURL: string): Promise<Page> {
    const port = join(this.profile, 'DevToolsActivePort');
    rmSync(port, { force: true });
    const program = launchOptions?.executablePath ?? chromium.executablePath();
    const own = [`--user-data-dir=${this.profile}`, '--remote-debugging-port=0', '--headless', 'about:blank'];
    // A group of its own, so that all its processes die at once.
    this.process = spawn(program, [...(launchOptions?.args ?? []), ...own], { detached: true, stdio: 'ignore' });
    await expect.poll(() => existsSync(port) && readFileSync(port, 'utf8').includes('\n')).toBe(true);
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(port, 'utf8').split('\n')[0]}`);
    const [context] = browser.contexts();
    await context!.addInitScript(withoutWebGl);
    const page = await context!.newPage();
    await page.goto(baseURL);
    return page;
  }

  async kill(): Promise<void> {
    const child = this.process;
    if (child?.pid === undefined || child.exitCode !== null) return;
    const gone = new Promise((resolve) => child.once('exit', resolve));
    process.kill(-child.pid, 'SIGKILL');
    await gone;
    this.process = null;
  }
}

const width = (page: Page) => page.getByLabel('Width', { exact: true });

/** Widths of the jobs that stand on the shelf, read past the page. */
const onShelf = (page: Page): Promise<readonly number[]> =>
  page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open('coverwright'));
    const jobs = await done(database.transaction('jobs').objectStore('jobs').getAll());
    database.close();
    return jobs.map(({ document }) => document.book.width_mm as number);
  });

/** Whether the journal's open step has a width, read past the page. */
const isInJournal = (page: Page, mm: number): Promise<boolean> =>
  page.evaluate(async (wanted) => {
    const done = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await done(indexedDB.open('coverwright'));
    const [head] = await done(database.transaction('journals').objectStore('journals').getAll());
    const step = await done(database.transaction('steps').objectStore('steps').get([head.window, head.at]));
    database.close();
    return JSON.parse(step.document).book.width_mm === wanted;
  }, mm);

/** The width that the field shows, mm. */
const shownWidth = async (page: Page): Promise<number> => Number.parseFloat(await width(page).inputValue());

test(`after ${kills} kills of the browser the newest edit on disk is shown, undo and redo work, and no job is forked`, async ({
  baseURL,
}) => {
  test.setTimeout(kills * 120_000);
  const mortal = new Mortal();
  const table: (string | number)[][] = [];
  try {
    let page = await mortal.start(baseURL!);
    await openExample(page, 'choir book');
    await openCard(page, 'book');
    let before = 149;
    await width(page).fill(String(before));
    await width(page).blur();
    await expect.poll(() => onShelf(page)).toEqual([before]);
    await expect.poll(() => isInJournal(page, before)).toBe(true);
    for (const [i, moment] of moments.entries()) {
      const typed = 150 + i / 2;
      await width(page).fill(String(typed));
      if (moment > 0) await page.waitForTimeout(moment);
      if (!isWholeProof) await expect.poll(() => isInJournal(page, typed)).toBe(true);
      if (moment >= SURELY_SAVED) await expect.poll(() => onShelf(page)).toEqual([typed]);
      await mortal.kill();

      page = await mortal.start(baseURL!);
      await openCard(page, 'book');
      await expect(width(page)).not.toHaveValue('');
      // Before anything else happens: what a maker sees first.
      const shown = await shownWidth(page);
      const shelf = await onShelf(page);
      const isOffered = await page.getByRole('button', { name: 'Show it' }).isVisible();
      table.push([i + 1, moment, typed, shown, shelf.join(' '), isOffered ? 'offered' : '']);
      expect(shelf, `one job after kill ${i + 1}`).toHaveLength(1);
      const where = `killed ${moment} ms after ${typed}, shown ${shown}, shelf ${shelf}`;
      // Only an edit that no store has yet can be missing, and then the one before it is shown.
      if (shown !== typed) {
        expect(moment, where).toBeLessThan(SURELY_IN_JOURNAL);
        expect([shown, shelf], where).toEqual([before, [before]]);
      }

      const undo = page.getByRole('button', { name: 'Undo', exact: true });
      if (shown === typed) {
        await undo.click();
        await expect.poll(() => shownWidth(page), where).toBe(before);
        await page.getByRole('button', { name: 'Redo' }).click();
        await expect.poll(() => shownWidth(page), where).toBe(typed);
      } else await expect(undo).toBeVisible();

      // An edit goes on with the same job, and no window is blamed for it.
      before = typed + 0.25;
      await width(page).fill(String(before));
      await width(page).blur();
      await expect.poll(() => onShelf(page)).toEqual([before]);
      await expect.poll(() => isInJournal(page, before)).toBe(true);
      await expect(page.getByText(/window has|job of its own/)).toBeHidden();
    }
  } finally {
    await mortal.kill();
    rmSync(mortal.profile, { recursive: true, force: true });
    console.info(
      ['kill, ms after the edit, typed, shown, on the shelf, note', ...table.map((row) => row.join(', '))].join('\n'),
    );
  }
});
