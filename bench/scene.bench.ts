// What a frame of the scene takes of the page: script, draw calls, triangles, textures, while opening and making are dragged and
// the book is turned; and how soon the first frame is there.
//
// Without a graphics card the processor draws: frames a second and the first frame are then those of software drawing. Script
// is the page's own part by the wall, so other programs add to it: the median counts.

import { chromium } from '@playwright/test';
import { preview } from 'vite';
import config from '../playwright.config.ts';
import { chooseBrowser } from '../scripts/chromium.mjs';
import { freshBuild } from '../scripts/freshBuild.mjs';
import { chooseLook, openExample, scenesAreDrawn } from '../tests/browser/bench.ts';
import { countDrawing, type Drawn, takeDrawn } from '../tests/browser/webGl.ts';
import { defined } from '../tests/defined.ts';
import { nth } from '../tests/nth.ts';
import { calibrationMs } from './calibration.ts';
import { quantile } from './pageTrace.ts';

const LOOKS = process.env.LOOKS?.split(',') ?? ['light', 'full'];
const STEPS = 20;
/** From one step to the next, ms. */
const PAUSE = 100;

await freshBuild();
const { CHROMIUM_PATH } = { ...process.env, ...chooseBrowser() };
const server = await preview({
  logLevel: 'error',
  preview: { host: '127.0.0.1', port: Number(process.env.PORT), open: false },
});
const browser = await chromium.launch({ ...config.use?.launchOptions, executablePath: CHROMIUM_PATH || undefined });
const rows: Record<string, object> = {};
try {
  for (const look of LOOKS) {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
    await page.addInitScript(chooseLook, look);
    await page.addInitScript(countDrawing);
    // A page in the background keeps its look, however slow its frames are.
    await page.addInitScript(() => Object.defineProperty(document, 'hidden', { get: () => true }));
    await page.goto(nth(defined(server.resolvedUrls).local, 0));
    await scenesAreDrawn(page);
    const first = await page.evaluate(() => performance.now());
    await openExample(page, 'choir book');
    await page.waitForTimeout(3000);
    const during = async (name: string, step: (i: number) => Promise<void>): Promise<void> => {
      await page.evaluate(takeDrawn);
      const start = Date.now();
      for (let i = 0; i < STEPS; i++) {
        await step(i);
        await page.waitForTimeout(PAUSE);
      }
      rows[`${look}, ${name}`] = figures(await page.evaluate(takeDrawn), (Date.now() - start) / 1000, first);
    };
    for (const name of ['Open the book', 'Making']) {
      const slider = page.getByRole('slider', { name, exact: true });
      const furthest = Number(await slider.getAttribute('max'));
      await during(name, (i) => slider.fill(String(Math.round((100 * furthest * (i + 1)) / STEPS) / 100)));
    }
    await page.getByRole('application').focus();
    await during('turned', () => page.keyboard.press('ArrowLeft'));
    await page.close();
  }
} finally {
  await browser.close();
  await server.close();
}
console.table(rows);
console.log(`calibration loop ${calibrationMs().toFixed(1)} ms`);

function figures({ frames, textures }: Drawn, seconds: number, first: number): object {
  const of = (share: number, what: keyof Drawn['frames'][number]): number =>
    quantile(
      frames.map((frame) => frame[what]),
      share,
    );
  return {
    'script, ms': Number(of(0.5, 'script').toFixed(2)),
    'draw calls': of(1, 'calls'),
    triangles: Math.round(of(1, 'triangles')),
    'textures, MB': Number((textures / 1e6).toFixed(1)),
    'frames a second': Number((frames.length / seconds).toFixed(1)),
    'first frame, s': Number((first / 1000).toFixed(1)),
  };
}
