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

/** Time between an edit and the kill, ms: before the shelf is written (0.3 s), about then, and long after. */
const MOMENTS = [60, 150, 300, 600, 700, 800, 1200, 2500, 4500, 7000];

/** Moments of the kills: each twice, or a sample of those after which the old copy on disk was once believed. */
const kills = proofSize(20, 2);
const moments = Array.from({ length: kills }, (_, i) =>
  isWholeProof ? nth(MOMENTS, i % MOMENTS.length) : nth([2500, 700], i),
);

/** The browser keeps what a page stores at hand for some seconds before it reaches the disk. */
const UNTIL_ON_DISK = 12_000;

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

test(`after ${kills} kills of the browser no older measure is shown without an offer of the newer, and no job is forked`, async ({
  baseURL,
}) => {
  test.setTimeout(kills * 120_000);
  const mortal = new Mortal();
  const table: (string | number)[][] = [];
  try {
    let page = await mortal.start(baseURL!);
    await openExample(page, 'choir book');
    await openCard(page, 'book');
    await width(page).fill('149');
    await page.waitForTimeout(UNTIL_ON_DISK);
    for (const [i, moment] of moments.entries()) {
      const typed = 150 + i;
      await width(page).fill(String(typed));
      await page.waitForTimeout(moment);
      if (moment >= SURELY_SAVED) await expect.poll(() => onShelf(page)).toEqual([typed]);
      await mortal.kill();

      page = await mortal.start(baseURL!);
      await openCard(page, 'book');
      await expect(width(page)).not.toHaveValue('');
      // Before anything else happens: what a maker sees first.
      const shown = Number.parseFloat(await width(page).inputValue());
      const shelf = await onShelf(page);
      const isOffered = await page.getByRole('button', { name: 'Show it' }).isVisible();
      table.push([i + 1, moment, typed, shown, shelf.join(' '), isOffered ? 'offered' : '']);
      expect(shelf, `one job after kill ${i + 1}`).toHaveLength(1);
      // What was typed last, or else what the shelf has: nothing that either has overtaken.
      const isLatest = shown === typed || shown === shelf[0];
      expect(isLatest || isOffered, `killed ${moment} ms after ${typed}, shown ${shown}, shelf ${shelf}`).toBe(true);
      if (moment >= SURELY_SAVED) expect(shown).toBe(typed);

      // An edit goes on with the same job, and no window is blamed for it.
      await width(page).fill(`${typed}.5`);
      await expect.poll(() => onShelf(page)).toEqual([typed + 0.5]);
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
