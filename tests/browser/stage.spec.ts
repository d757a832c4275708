import type { Page } from '@playwright/test';
import { defined } from '../defined.ts';
import { expect, headline, openCard, openExample, openJobMenu, stripSettles, test } from './bench.ts';

const stageView = (page: Page) => page.locator('.stage-view');
const section = (page: Page) => stageView(page).locator('.section-drawing');
const scene = (page: Page) => page.locator('.stage-scene .cover-scene[aria-busy="false"]');

/** Waits for the first finished frame; the processor may be what draws it. */
const drawn = (page: Page) => expect(scene(page)).toBeVisible({ timeout: 60_000 });

/** A tide ledger whose cover is so small that the book stays open almost flat: its section is high and narrow. */
async function openTooSmall(page: Page): Promise<void> {
  await openExample(page, 'tide ledger');
  const width = (await openCard(page, 'cut')).getByLabel('Outside width', { exact: true });
  await width.fill('370');
  await width.blur();
  await expect(headline(page)).toHaveAttribute('data-verdict', 'fails');
  // What is kept follows a moment later.
  await expect
    .poll(() => page.evaluate(() => JSON.stringify({ ...localStorage }).includes('370')), { timeout: 10_000 })
    .toBe(true);
}

test('without WebGL the section drawing of a cover that is too small stays within the stage', async ({ bench }) => {
  await openTooSmall(bench);
  for (const [width, height] of [
    [1440, 900],
    [390, 844],
  ] as const) {
    await bench.setViewportSize({ width, height });
    await bench.reload();
    await expect(bench.getByText('no WebGL 2')).toBeVisible();
    const [stage, drawing] = [
      defined(await stageView(bench).boundingBox()),
      defined(await section(bench).boundingBox()),
    ];
    expect(drawing.height).toBeLessThanOrEqual(stage.height);
    expect(drawing.width).toBeLessThanOrEqual(stage.width);
    expect(stage.height).toBeLessThanOrEqual(height);
    expect(stage.height).toBeGreaterThan(200);
  }
});

interface Start {
  /** Sum of what the browser calls layout shift. */
  shift: number;
  /** Frames in which the stage showed neither section nor finished scene. */
  empty: number;
  frames: number;
}

/** Watches, frame by frame as they are painted, what the page does while it starts. */
const watchStart = (page: Page) =>
  page.addInitScript(() => {
    const start: Start = { shift: 0, empty: 0, frames: 0 };
    Object.assign(window, { start });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { value: number })[]) start.shift += entry.value;
    }).observe({ type: 'layout-shift', buffered: true });
    const isShown = (selector: string): boolean =>
      document.querySelector(selector)?.checkVisibility({ visibilityProperty: true }) ?? false;
    const look = (): void => {
      requestAnimationFrame(look);
      if (document.querySelector('.stage-view') === null) return;
      start.frames++;
      if (!isShown('.stage-view .section-drawing') && !isShown('.cover-scene[aria-busy="false"]')) start.empty++;
    };
    requestAnimationFrame(look);
  });

test.describe('with the scene', () => {
  test.use({ look: 'light' });

  test('the stage is never empty at the start, and nothing jumps', async ({ bench }) => {
    await watchStart(bench);
    for (const [width, height] of [
      [1440, 900],
      [1024, 768],
      [390, 844],
    ] as const) {
      await bench.setViewportSize({ width, height });
      await bench.reload();
      await drawn(bench);
      await stripSettles(bench);
      const start = await bench.evaluate(() => ({ ...(window as unknown as { start: Start }).start }));
      expect(start.frames).toBeGreaterThan(5);
      expect.soft(start.empty, `frames with an empty stage at ${width} px`).toBe(0);
      expect(start.shift, `layout shift at ${width} px`).toBeLessThan(0.02);
      await expect(section(bench)).toHaveCount(0);
    }
  });

  test('another look of the scene keeps the section in sight until it is drawn', async ({ bench }) => {
    // The full look of a wide stage takes the processor seconds a frame.
    await bench.setViewportSize({ width: 390, height: 500 });
    await watchStart(bench);
    await bench.reload();
    await drawn(bench);
    const menu = await openJobMenu(bench);
    await menu.getByLabel('Picture', { exact: true }).selectOption('full');
    await bench.keyboard.press('Escape');
    await expect(scene(bench).locator('canvas')).toBeVisible();
    await expect(section(bench)).toHaveCount(0);
    expect(await bench.evaluate(() => (window as unknown as { start: Start }).start.empty)).toBe(0);
  });
});

test('the strip from head to tail stays in its frame as it comes and as the window changes', async ({ bench }) => {
  await bench.addInitScript(() => {
    const most = { over: Number.NEGATIVE_INFINITY };
    Object.assign(window, { most });
    let watched: Element | null = null;
    const look = (): void => {
      requestAnimationFrame(look);
      const frame = document.querySelector('.upright-frame');
      if (watched === frame || frame?.firstElementChild == null) return;
      watched = frame;
      // Made after the strip's own observer, so asked after it, when nothing more is drawn before the frame is painted.
      new ResizeObserver(() => {
        const drawn = frame.firstElementChild?.getBoundingClientRect();
        if (drawn) most.over = Math.max(most.over, drawn.bottom - frame.getBoundingClientRect().bottom);
      }).observe(frame);
    };
    requestAnimationFrame(look);
  });
  await bench.goto('#strips');
  for (const [width, height] of [
    [1440, 900],
    [1024, 768],
    [390, 844],
  ] as const) {
    await bench.setViewportSize({ width, height });
    await bench.reload();
    await expect(bench.locator('.upright').getByRole('slider').first()).toBeVisible();
    await bench.setViewportSize({ width, height: 0.75 * height });
    await bench.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 50))));
    const over = await bench.evaluate(() => (window as unknown as { most: { over: number } }).most.over);
    expect(over, `px of the strip beyond its frame at ${width} px`).toBeLessThan(1);
    // It was looked at.
    expect(over).toBeGreaterThan(Number.NEGATIVE_INFINITY);
  }
});
