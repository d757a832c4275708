import type { CDPSession, Locator, Page } from '@playwright/test';
import { expect, goToPlace, scenesAreDrawn, sliderValue, steadyMiddle, test } from './bench.ts';

/** Of a telephone with a notch, held upright and on its side, px. */
const UPRIGHT = { width: 390, height: 844, insets: { top: 0, right: 0, bottom: 34, left: 0 } };
const ON_ITS_SIDE = { width: 844, height: 390, insets: { top: 0, right: 47, bottom: 21, left: 47 } };

const onTelephone = { viewport: { width: UPRIGHT.width, height: UPRIGHT.height }, hasTouch: true, isMobile: true };

async function boxOf(what: Locator) {
  const { x, y, width, height } = (await what.boundingBox())!;
  return { left: x, right: x + width, top: y, bottom: y + height };
}

/** Moves two fingers on either side of a place to other distances from it, px. */
async function moveFingers(session: CDPSession, { x, y }: { x: number; y: number }, ways: readonly number[]) {
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', way?: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: way === undefined ? [] : [-way, way].map((dx, id) => ({ x: x + dx, y, id })),
    });
  await touch('touchStart', ways[0]);
  for (const way of ways) await touch('touchMove', way);
  await touch('touchEnd');
}

/** How far apart the dimensions in the picture stand, px: the closer the eye, the farther. */
const spread = (page: Page): Promise<number> =>
  page.locator('.cover-scene-marks .dimension').evaluateAll((lines) => {
    const places = lines.map((line) => line.getBoundingClientRect()).filter(({ width, height }) => width + height > 0);
    const reach = (of: readonly number[]): number => Math.max(...of) - Math.min(...of);
    return Math.hypot(reach(places.map(({ x }) => x)), reach(places.map(({ y }) => y)));
  });

/** The same once the eye, which glides, stands still. */
async function steadySpread(page: Page): Promise<number> {
  let last = Number.NaN;
  await expect(async () => {
    const before = await spread(page);
    await page.waitForTimeout(300);
    last = await spread(page);
    expect(last).toBe(before);
  }).toPass();
  return last;
}

test.describe('in the picture of the scene', () => {
  test.use({ ...onTelephone, look: 'unfilled' });

  test('two fingers look from farther away and from closer, and the page is not enlarged', async ({ bench }) => {
    await scenesAreDrawn(bench);
    const session = await bench.context().newCDPSession(bench);
    const middle = await steadyMiddle(bench.locator('.cover-scene canvas'));
    const before = await steadySpread(bench);
    expect(before).toBeGreaterThan(50);
    await moveFingers(session, middle, [60, 50, 40, 30]);
    await expect.poll(() => spread(bench)).not.toBe(before);
    const away = await steadySpread(bench);
    expect(away).toBeLessThan(0.9 * before);
    await moveFingers(session, middle, [30, 40, 50, 60, 70, 80]);
    await expect.poll(() => spread(bench)).not.toBe(away);
    expect(await steadySpread(bench)).toBeGreaterThan(1.2 * away);
    expect(await bench.evaluate(() => visualViewport?.scale)).toBe(1);
  });
});

test('a pen moves a line of the strips', async ({ bench }) => {
  await goToPlace(bench, 'Strips');
  const seam = bench.locator('.fore-edge-detail .handle').nth(1);
  const { x, y } = await steadyMiddle(seam.locator('.handle-tab'));
  const before = await sliderValue(seam)();
  const session = await bench.context().newCDPSession(bench);
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', dx: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: x + dx,
      y,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      pointerType: 'pen',
      force: 0.5,
    });
  await pen('mousePressed', 0);
  for (const dx of [8, 16, 24, 32]) await pen('mouseMoved', dx);
  await pen('mouseReleased', 32);
  await expect.poll(sliderValue(seam)).not.toBe(before);
});

test.describe('on a telephone with a notch', () => {
  test.use(onTelephone);

  test('what is pressed and read stands clear of its camera and rounded corners', async ({ bench }) => {
    const session = await bench.context().newCDPSession(bench);
    for (const { width, height, insets } of [UPRIGHT, ON_ITS_SIDE]) {
      await session.send('Emulation.setSafeAreaInsetsOverride', { insets });
      await bench.setViewportSize({ width, height });
      const isClear = async (what: Locator) => {
        const { left, right, bottom } = await boxOf(what);
        return left >= insets.left && right <= width - insets.right && bottom <= height - insets.bottom;
      };
      for (const what of [
        bench.getByRole('heading', { name: 'Coverwright' }),
        bench.getByRole('button', { name: 'Find' }),
        bench.locator('.headline'),
        ...(height > width ? await bench.locator('.thumb-row > *').all() : []),
      ])
        await expect.poll(() => isClear(what)).toBe(true);
    }
  });

  test('a keyboard that lies over the page leaves field, verdict and way on in sight', async ({ bench: page }) => {
    // WebKit's keyboard moves and shortens the part in sight without telling the layout.
    await page.addInitScript(() => {
      const seen = Object.assign(new EventTarget(), { scale: 1, offsetTop: 0, height: innerHeight });
      Object.defineProperty(window, 'visualViewport', { value: seen });
      Object.assign(window, {
        cover: (offsetTop: number, height: number) => {
          Object.assign(seen, { offsetTop, height });
          seen.dispatchEvent(new Event('resize'));
        },
      });
    });
    await page.reload();
    await expect(page.locator('.thumb-row')).toBeVisible();
    const cover = ([offsetTop, height]: readonly [number, number]) =>
      page.evaluate(
        ([top, high]) => (window as unknown as { cover: (top: number, high: number) => void }).cover(top!, high!),
        [offsetTop, height],
      );
    const seen = [60, 430] as const;
    await page.getByRole('button', { name: 'A cover for your book' }).tap();
    const dialog = page.getByRole('dialog', { name: 'New cover' });
    await dialog.getByRole('button', { name: 'Next' }).tap();
    await cover(seen);
    const isSeen = async (what: Locator) => {
      const { top, bottom } = await boxOf(what);
      return top >= seen[0] && bottom <= seen[0] + seen[1];
    };
    for (const what of [dialog.getByRole('textbox'), dialog.getByRole('button', { name: 'Next' })])
      await expect.poll(() => isSeen(what)).toBe(true);
  });
});

test('the wide page is as high as the part of the window that is left it', async ({ bench }) => {
  for (const height of [900, 620]) {
    await bench.setViewportSize({ width: 1280, height });
    await expect.poll(async () => (await boxOf(bench.locator('.page'))).bottom).toBe(height);
  }
});
