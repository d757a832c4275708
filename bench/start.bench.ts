// How the page starts: first paint, the verdict in words, the cards, and the long tasks of the main thread until it rests. Wall
// times on a processor four times slower (SLOW=1 for this one), `own` and `cpu` by the thread's own clock. AGAINST=DIR measures another
// built page (its `dist`) in turn with this one.

import { type Browser, chromium } from '@playwright/test';
import { preview } from 'vite';
import config from '../playwright.config.ts';
import { chooseBrowser } from '../scripts/chromium.mjs';
import { freshBuild } from '../scripts/freshBuild.mjs';
import { withoutWebGl } from '../tests/browser/webGl.ts';
import { defined } from '../tests/defined.ts';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { quantile, type Trace, traced } from './pageTrace.ts';

const RUNS = Number(process.env.RUNS ?? 5);
const SLOW = Number(process.env.SLOW ?? 4);
/** Longest task that leaves the page answering, ms. */
const LONG = 50;
/** Time in which the page comes to rest, without the scene and with it, ms. */
const REST = { 'no WebGL': 5000, '3D': 15_000 };
const SCREENS = {
  wide: { width: 1440, height: 900 },
  telephone: { width: 412, height: 823 },
};

await freshBuild();
const { CHROMIUM_PATH } = { ...process.env, ...chooseBrowser() };
const serve = (outDir?: string) =>
  preview({
    logLevel: 'error',
    ...(outDir && { build: { outDir } }),
    preview: { host: '127.0.0.1', port: Number(process.env.PORT ?? 0), open: false },
  });
const servers = new Map([['this', await serve()]]);
if (process.env.AGAINST) servers.set('other', await serve(process.env.AGAINST));
const browser = await chromium.launch({
  ...config.use?.launchOptions,
  executablePath: CHROMIUM_PATH || undefined,
});
const rows: Record<string, Record<string, string>> = {};
try {
  for (const scene of ['no WebGL', '3D'] as const) {
    if (scene === '3D' && process.env.SCENE === 'none') continue;
    for (const [screen, viewport] of Object.entries(SCREENS)) {
      const found = new Map([...servers.keys()].map((name) => [name, [] as Awaited<ReturnType<typeof start>>[]]));
      for (let run = 0; run < RUNS; run++)
        for (const [name, server] of servers)
          found.get(name)?.push(await start(browser, nth(defined(server.resolvedUrls).local, 0), viewport, scene));
      for (const [name, runs] of found)
        rows[`${screen}, ${scene}, ${name}`] = Object.fromEntries(
          Object.keys(nth(runs, 0)).map((figure) => [
            figure,
            quantile(
              runs.map((run) => run[figure as keyof typeof run]),
              0.5,
            ).toFixed(0),
          ]),
        );
    }
  }
} finally {
  await browser.close();
  for (const server of servers.values()) await server.close();
}
console.log(`\nStart of the page, processor ${SLOW} x slower, ms, medians of ${RUNS}`);
console.table(rows);
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);

async function start(on: Browser, url: string, viewport: { width: number; height: number }, scene: keyof typeof REST) {
  const context = await on.newContext({ viewport, serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    if (scene === 'no WebGL') await page.addInitScript(withoutWebGl);
    await page.addInitScript(markParts);
    const session = await context.newCDPSession(page);
    if (SLOW > 1) await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
    const trace = await traced(session, async () => {
      await page.goto(url);
      // The tracing needs an event of the page to know its thread by; it does not count as the maker's.
      await page.evaluate(() => document.dispatchEvent(new Event('measured')));
      await page.waitForTimeout(REST[scene]);
    });
    const at = await page.evaluate(() => {
      const marks = performance.getEntriesByType('mark').map(({ name, startTime }) => [name, startTime] as const);
      const [paint] = performance.getEntriesByName('first-contentful-paint');
      return { paint: paint?.startTime ?? Number.NaN, ...Object.fromEntries(marks) } as Record<
        'paint' | 'verdict' | 'cards',
        number
      >;
    });
    return { paint: at.paint, verdict: at.verdict, cards: at.cards, ...tasksOf(trace) };
  } finally {
    await context.close();
  }
}

/** In the page: marks when verdict and cards have reached the screen. */
function markParts(): void {
  const awaited = new Map([
    ['verdict', '.headline'],
    ['cards', '.card-said'],
  ]);
  new MutationObserver(() => {
    for (const [name, selector] of awaited) {
      if (document.querySelector(selector) === null) continue;
      awaited.delete(name);
      // The task after the frame that draws it.
      requestAnimationFrame(() => setTimeout(() => performance.mark(name)));
    }
  }).observe(document, { subtree: true, childList: true });
}

function tasksOf({ tasks }: Trace) {
  const long = tasks.map(({ dur }) => dur / 1000).filter((dur) => dur > LONG);
  return {
    'long tasks': long.length,
    longest: Math.max(...tasks.map(({ dur }) => dur / 1000)),
    'longest, own': Math.max(...tasks.map(({ tdur }) => tdur / 1000)),
    blocked: long.reduce((sum, dur) => sum + dur - LONG, 0),
    cpu: tasks.reduce((sum, { tdur }) => sum + tdur / 1000, 0),
  };
}
