// How many React components one key press in a measure field renders, counted in the built page by the hook that React
// offers to its developer tools.
//
// `at once` counts what is rendered before the page is next painted, `later` what lags and what workers' answers bring,
// `parts` the components that rendered most.

import { chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import config from '../playwright.config.ts';
import { chooseBrowser } from '../scripts/chromium.mjs';
import { freshBuild } from '../scripts/freshBuild.mjs';
import { withoutDrawingContext } from '../tests/browser/webGl.ts';
import { defined } from '../tests/defined.ts';
import { nth } from '../tests/nth.ts';

const BOOKS = ['tide ledger', 'choir book'];
const FIELD = 'form [data-path="book.height_mm"]';
/** Rest after which the strip's answer and every curve is there, ms. */
const REST = 6000;
const KEYS = ['Backspace', '5', 'Backspace', '7'];

interface Counts {
  /** Renders by commit. */
  commits: { renders: number; key: boolean }[];
  names: Record<string, number>;
}

/** What of a React fiber is read here; https://github.com/facebook/react, packages/react-reconciler/src/ReactFiber.js. */
interface Fiber {
  readonly tag: number;
  readonly flags: number;
  readonly type: unknown;
  readonly child: Fiber | null;
  readonly sibling: Fiber | null;
  readonly alternate: Fiber | null;
}

await freshBuild();
const { CHROMIUM_PATH } = { ...process.env, ...chooseBrowser() };
const server = await preview({
  logLevel: 'error',
  preview: { host: '127.0.0.1', port: Number(process.env.PORT), open: false },
});
const browser = await chromium.launch({ ...config.use?.launchOptions, executablePath: CHROMIUM_PATH || undefined });
const rows: Record<string, object> = {};
try {
  for (const scene of ['3D', 'no WebGL'] as const) {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
    await page.addInitScript(countRenders);
    if (scene === 'no WebGL') await page.addInitScript(withoutDrawingContext);
    await page.goto(nth(defined(server.resolvedUrls).local, 0));
    for (const book of BOOKS) rows[`${book}, ${scene}`] = await measure(page, book);
    await page.close();
  }
} finally {
  await browser.close();
  await server.close();
}
console.log('Component renders a key press in the height of the book, means');
console.table(rows);

async function measure(page: Page, book: string): Promise<object> {
  await page.getByRole('button', { name: book, exact: true }).click();
  const field = page.locator(FIELD);
  await field.fill(`${Number.parseInt(await field.inputValue(), 10)}.25`);
  await field.press('End');
  await page.waitForTimeout(2 * REST);
  await page.evaluate(() => window.startCount());
  for (const key of KEYS) {
    await page.keyboard.press(key);
    await page.waitForTimeout(REST);
  }
  const { commits, names } = await page.evaluate(() => window.counts);
  const mean = (wanted: Counts['commits']): number =>
    Math.round(wanted.reduce((sum, { renders }) => sum + renders, 0) / KEYS.length);
  const parts = Object.entries(names).sort((a, b) => b[1] - a[1]);
  if (process.env.PARTS) console.log(book, Object.fromEntries(parts.slice(0, 60)));
  return {
    renders: mean(commits),
    'at once': mean(commits.filter(({ key }) => key)),
    later: mean(commits.filter(({ key }) => !key)),
    commits: commits.length / KEYS.length,
  };
}

declare global {
  interface Window {
    counts: Counts;
    startCount: () => void;
    __REACT_DEVTOOLS_GLOBAL_HOOK__: object;
  }
}

/** In the page: counts the components that each commit of React has rendered. */
function countRenders(): void {
  /** Function, class, forwarded and memoised components; `PerformedWork` of ReactFiberFlags.js. */
  const components = new Set([0, 1, 11, 14, 15]);
  const performedWork = 1;
  let isKey = false;
  window.startCount = () => {
    window.counts = { commits: [], names: {} };
  };
  window.startCount();
  window.addEventListener(
    'keydown',
    () => {
      isKey = true;
      requestAnimationFrame(() => {
        isKey = false;
      });
    },
    { capture: true },
  );
  const nameOf = (type: unknown): string => {
    const { displayName, name, render, type: inner } = (type ?? {}) as Record<string, unknown>;
    return String(displayName ?? name ?? (render as { name?: string })?.name ?? (inner ? nameOf(inner) : '?'));
  };
  const count = (fiber: Fiber): number => {
    const before = fiber.alternate;
    let renders = 0;
    if (components.has(fiber.tag) && (fiber.flags & performedWork) !== 0) {
      renders++;
      const name = nameOf(fiber.type);
      window.counts.names[name] = (window.counts.names[name] ?? 0) + 1;
    }
    // Where the children are the same objects, nothing below was rendered and the flags are those of an earlier commit.
    if (before === null || fiber.child !== before.child)
      for (let child = fiber.child; child !== null; child = child.sibling) renders += count(child);
    return renders;
  };
  window.__REACT_DEVTOOLS_GLOBAL_HOOK__ = {
    supportsFiber: true,
    isDisabled: false,
    renderers: new Map(),
    inject: () => 1,
    checkDCE() {},
    onCommitFiberRoot(_id: number, root: { readonly current: Fiber }) {
      window.counts.commits.push({ renders: count(root.current), key: isKey });
    },
    onPostCommitFiberRoot() {},
    onCommitFiberUnmount() {},
  };
}
