// What the scene costs where the processor draws in place of a graphics card, in the built page, in the plain look.
//
// `frames a second` are those of a camera that turns without a pause. `script` is the page's own time in a frame, with React and
// the folding of the cover in `with tasks`, both by the thread's clock, which stops while other programs have the processor.
// `first frame` is the time from the start of loading until the scene is drawn, by the wall; AGAINST=DIR is another built page to
// measure in turn with this one, so that a busy hour falls on both alike.

import { type Browser, chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import config from '../playwright.config.ts';
import { chooseBrowser } from '../scripts/chromium.mjs';
import { freshBuild } from '../scripts/freshBuild.mjs';
import { chooseLook, openExample } from '../tests/browser/bench.ts';
import { countDrawing, type Drawn, takeDrawn } from '../tests/browser/webGl.ts';
import { defined } from '../tests/defined.ts';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { quantile, traced } from './pageTrace.ts';

const BOOK = process.env.BOOK ?? 'choir book';
const LOOK = process.env.LOOK ?? 'light';
/** First frames measured of each built page. */
const RUNS = Number(process.env.RUNS ?? 5);
/** Time in which the camera turns, ms, and steps of a dragged slider. */
const TURNING = 6000;
const DRAG_STEPS = 60;

await freshBuild();
const { CHROMIUM_PATH } = { ...process.env, ...chooseBrowser() };
const browser = await chromium.launch({ ...config.use?.launchOptions, executablePath: CHROMIUM_PATH || undefined });
try {
  const own = await serve();
  console.log(`${BOOK}, ${LOOK} look`);
  console.table(await frames(browser, own.address));
  const pages = {
    'this build': own,
    ...(process.env.AGAINST && { [process.env.AGAINST]: await serve(process.env.AGAINST) }),
  };
  console.log(`First frame of the scene, s, of ${RUNS} runs in turn`);
  console.table(await firstFrames(browser, pages));
  for (const { close } of Object.values(pages)) await close();
} finally {
  await browser.close();
}
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);

interface Served {
  readonly address: string;
  readonly close: () => Promise<void>;
}

async function serve(outDir?: string): Promise<Served> {
  const server = await preview({
    logLevel: 'error',
    ...(outDir && { build: { outDir } }),
    preview: { host: '127.0.0.1', open: false },
  });
  return { address: nth(defined(server.resolvedUrls).local, 0), close: () => server.close() };
}

async function openPage(on: Browser): Promise<Page> {
  const page = await on.newPage({
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
    reducedMotion: 'reduce',
  });
  await page.addInitScript(chooseLook, LOOK);
  return page;
}

/** Waits for a scene that a busy machine takes its time for. */
async function isDrawn(page: Page): Promise<void> {
  await page.waitForSelector('.cover-scene[aria-busy="false"]', { timeout: 120_000 });
}

/** What frames cost while the camera turns and while each slider is dragged. */
async function frames(on: Browser, address: string): Promise<Record<string, object>> {
  const page = await openPage(on);
  await page.addInitScript(countDrawing);
  await page.goto(address);
  await openExample(page, BOOK);
  await isDrawn(page);
  await page.waitForTimeout(3000);
  const session = await page.context().newCDPSession(page);
  const rows: Record<string, object> = {};
  const measure = async (name: string, act: () => Promise<void>): Promise<void> => {
    await page.evaluate(takeDrawn);
    const trace = await traced(session, act);
    const drawn = await page.evaluate(takeDrawn);
    const tasks = trace.tasks.reduce((sum, { tdur }) => sum + tdur, 0) / 1000;
    const scripts = trace.sceneFrames.map(({ tdur }) => tdur / 1000).sort((a, b) => b - a);
    rows[name] = {
      frames: drawn.frames.length,
      // The callbacks that found nothing to draw are the shortest.
      ...figures(drawn, scripts.slice(0, drawn.frames.length)),
      'with tasks, mean': (tasks / drawn.frames.length).toFixed(1),
    };
  };
  let pace = 0;
  await measure('the camera turns', async () => {
    // The trace knows the page by an event.
    await page.mouse.click(5, 5);
    pace = await page.evaluate(turn, TURNING);
  });
  for (const slider of ['Making', 'Open the book']) {
    const handle = page.getByRole('slider', { name: slider, exact: true });
    const { x, y, width, height } = defined(await handle.boundingBox());
    await measure(slider, async () => {
      await page.mouse.move(x + 4, y + height / 2);
      await page.mouse.down();
      for (let i = 1; i <= DRAG_STEPS; i++) {
        await page.mouse.move(x + 4 + ((width - 8) * i) / DRAG_STEPS, y + height / 2);
        await page.waitForTimeout(60);
      }
      await page.mouse.up();
      await page.waitForTimeout(2000);
    });
  }
  await page.close();
  console.log(`frames a second while the camera turns: ${pace.toFixed(1)}`);
  return rows;
}

function figures({ frames, textures }: Drawn, scripts: readonly number[]): object {
  const most = (of: (frame: Drawn['frames'][number]) => number): number => Math.max(0, ...frames.map(of));
  return {
    'script, median': quantile(scripts, 0.5).toFixed(1),
    'script, p95': quantile(scripts, 0.95).toFixed(1),
    'draw calls': most(({ calls }) => calls),
    triangles: Math.round(most(({ triangles }) => triangles)),
    'textures, MB': (textures / 1e6).toFixed(1),
  };
}

/** In the page: turns the camera with every frame, and gives the frames a second that have also been drawn. */
async function turn(time: number): Promise<number> {
  const scene = document.querySelector('.cover-scene')!;
  const context = scene.querySelector('canvas')!.getContext('webgl2')!;
  const pixel = new Uint8Array(4);
  const start = performance.now();
  let count = 0;
  while (performance.now() - start < time) {
    scene.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
    await new Promise(requestAnimationFrame);
    await new Promise(requestAnimationFrame);
    // Waits until the frame is filled.
    context.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, pixel);
    count++;
  }
  return (1000 * count) / (performance.now() - start);
}

/** Medians of the time to the first frame of the scene, s. */
async function firstFrames(on: Browser, pages: Record<string, Served>): Promise<Record<string, object>> {
  const times: Record<string, number[]> = Object.fromEntries(Object.keys(pages).map((name) => [name, []]));
  for (let run = 0; run < RUNS; run++)
    for (const [name, { address }] of Object.entries(pages)) {
      const page = await openPage(on);
      await page.addInitScript(() => {
        new MutationObserver((_, observer) => {
          if (!document.querySelector('.cover-scene[aria-busy="false"]')) return;
          observer.disconnect();
          performance.mark('scene drawn');
        }).observe(document, { subtree: true, childList: true, attributes: true });
      });
      await page.goto(address);
      await isDrawn(page);
      const time = await page.evaluate(() => performance.getEntriesByName('scene drawn')[0]!.startTime);
      times[name]!.push(time / 1000);
      await page.close();
    }
  return Object.fromEntries(
    Object.entries(times).map(([name, all]) => [
      name,
      { median: quantile(all, 0.5).toFixed(2), runs: all.map((time) => time.toFixed(2)).join(' ') },
    ]),
  );
}
