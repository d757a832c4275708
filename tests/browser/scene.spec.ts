import type { Page } from '@playwright/test';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { chooseLook, expect, openExample, openJobMenu, scenesAreDrawn, test } from './bench.ts';
import { countDrawing, takeDrawn, withoutPixels } from './webGl.ts';

const scene = (page: Page) => page.getByRole('application');

/** Waits for the picture to be there and to stop changing. */
async function settled(page: Page): Promise<Buffer> {
  await expect(scene(page).locator('canvas')).toBeVisible();
  await scenesAreDrawn(page);
  let last = await scene(page).screenshot();
  for (let i = 0, alike = 0; i < 60; i++) {
    await page.waitForTimeout(250);
    const now = await scene(page).screenshot();
    alike = now.equals(last) ? alike + 1 : 0;
    last = now;
    if (alike === 3) return now;
  }
  throw new Error('The scene never comes to rest.');
}

/** Waits for another picture than the one before: a scene that has not begun to change looks as if it had settled. */
async function settledAnew(page: Page, before: Buffer): Promise<Buffer> {
  let now = before;
  await expect
    .poll(async () => {
      now = await settled(page);
      return now.equals(before);
    })
    .toBe(false);
  return now;
}

/** Share of a picture that has the brown of leather: much more red than blue. */
const leatherShare = (page: Page, picture: Buffer): Promise<number> =>
  page.evaluate(
    async (url) => {
      const shown = new Image();
      shown.src = url;
      await shown.decode();
      const context = new OffscreenCanvas(shown.width, shown.height).getContext('2d')!;
      context.drawImage(shown, 0, 0);
      const { data } = context.getImageData(0, 0, shown.width, shown.height);
      let brown = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i]! - data[i + 2]! > 45) brown++;
      return brown / (data.length / 4);
    },
    `data:image/png;base64,${picture.toString('base64')}`,
  );

test.beforeEach(async ({ page }) => {
  test.slow();
  await page.emulateMedia({ reducedMotion: 'reduce' });
  // The plain look: the processor draws here, and the full look takes it a second a frame.
  await page.addInitScript(chooseLook, 'light');
});

test('the cover is drawn, and nothing is fetched from elsewhere', async ({ page, baseURL }) => {
  const elsewhere: string[] = [];
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && !url.startsWith(baseURL!)) elsewhere.push(url);
  });
  await page.goto('/');
  expect(await leatherShare(page, await settled(page))).toBeGreaterThan(0.05);
  expect(elsewhere).toEqual([]);
});

test('keys choose viewpoints, turn and zoom, and focus shows', async ({ page }) => {
  await page.goto('/');
  const first = await settled(page);
  await scene(page).focus();
  await page.keyboard.press('3');
  await expect(scene(page)).toHaveAccessibleName(/seen from spine/);
  const spine = await settledAnew(page, first);
  await page.keyboard.press('ArrowLeft');
  const turned = await settledAnew(page, spine);
  await page.keyboard.press('+');
  await settledAnew(page, turned);
  await expect(scene(page)).toHaveCSS('outline-style', 'solid');
});

test('fit marks carry words and numbers, apart from one another and inside the picture', async ({ page }) => {
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 800 });
    await page.goto('/');
    await settled(page);
    const labels = scene(page).locator('svg text');
    await expect.poll(() => labels.count()).toBeGreaterThan(2);
    for (const words of await labels.allTextContents())
      expect(words).toMatch(/(gap|overrun|spare wrap|leather off by|stand open) .*\d/);
    const frame = defined(await scene(page).boundingBox());
    const boxes = await scene(page)
      .locator('svg rect:visible')
      .evaluateAll((rects) => rects.map((rect) => rect.getBoundingClientRect().toJSON() as DOMRect));
    expect(boxes.length).toBeGreaterThan(1);
    for (const [i, a] of boxes.entries()) {
      expect(a.left).toBeGreaterThanOrEqual(frame.x);
      expect(a.right).toBeLessThanOrEqual(frame.x + frame.width);
      for (const b of boxes.slice(i + 1)) {
        expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
      }
    }
  }
});

/** Reads pixels of a picture, each [red, green, blue]. */
const pixelsAt = (page: Page, picture: Buffer, places: readonly (readonly [number, number])[]): Promise<number[][]> =>
  page.evaluate(
    async ([url, at]) => {
      const shown = new Image();
      shown.src = url;
      await shown.decode();
      const context = new OffscreenCanvas(shown.width, shown.height).getContext('2d')!;
      context.drawImage(shown, 0, 0);
      return at.map(([x, y]) => [...context.getImageData(Math.round(x), Math.round(y), 1, 1).data.slice(0, 3)]);
    },
    [`data:image/png;base64,${picture.toString('base64')}`, places] as const,
  );

/** Marks that are shown, by what their labels say. */
const shownLabels = (page: Page): Promise<string[]> =>
  scene(page)
    .locator('g[data-edge]:visible text')
    .allTextContents()
    .then((texts) => texts.sort());

test('near an edge the board shows through the leather, and the gap beyond it is an unbroken zone', async ({
  page,
}) => {
  await page.goto('/');
  await settled(page);
  await scene(page).focus();
  await page.keyboard.press('6');
  const picture = await settled(page);
  const frame = defined(await scene(page).boundingBox());
  const mark = scene(page).locator('g[data-edge="frontForeEdge"]:visible');
  const line = defined(defined(await mark.locator('.dimension').getAttribute('d')).match(/-?[\d.]+/g)).map(Number);
  const [x, y] = [(nth(line, 0) + nth(line, 2)) / 2, (nth(line, 1) + nth(line, 3)) / 2];
  // Along the edge on either side of the dimension, clear of labels.
  const labels = await scene(page)
    .locator('g:visible > rect')
    .evaluateAll((rects) => rects.map((rect) => rect.getBoundingClientRect().toJSON() as DOMRect));
  const isFree = (row: number): boolean =>
    labels.every(({ left, right, top, bottom }) => {
      const [at, high] = [frame.x + x, frame.y + row];
      // A label has a frame and a pale border.
      return at + 16 < left || at - 56 > right || high < top - 6 || high > bottom + 6;
    });
  const rows = Array.from({ length: 60 }, (_, k) => (k < 30 ? y + 20 + 3 * k : y - 20 - 3 * (k - 30))).filter(isFree);
  expect(rows.length).toBeGreaterThan(40);
  expect(rows.every((row) => row > 0 && row < frame.height)).toBe(true);
  /** Of each row, whether a pixel at one of these distances from the edge is as asked. */
  const rowsWith = async (
    away: readonly number[],
    isWanted: (rgb: readonly number[]) => boolean,
  ): Promise<boolean[]> => {
    const places = rows.flatMap((row) => away.map((by) => [x + by, row] as const));
    const wanted = (await pixelsAt(page, picture, places)).map(isWanted);
    return rows.map((_, i) => wanted.slice(i * away.length, (i + 1) * away.length).includes(true));
  };
  // Neither leather nor thread is bluer than it is red; the cloth of the board is nearly grey.
  const near = Array.from({ length: 15 }, (_, k) => k - 7);
  expect(await rowsWith(near, ([red = 0, , blue = 0]) => blue > red + 15)).not.toContain(false);
  const beside = Array.from({ length: 9 }, (_, k) => -2 - k);
  expect(await rowsWith(beside, ([red = 0, , blue = 0]) => Math.abs(red - blue) < 25)).not.toContain(false);
  expect(await rowsWith([-40, -30], ([red = 0, , blue = 0]) => red - blue < 25)).not.toContain(true);
});

for (const colorScheme of ['light', 'dark'] as const)
  test(`the back is lit as the front is, and nothing that is turned away is labelled there, ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.goto('/');
    await settled(page);
    await scene(page).focus();
    // Labels over the leather would be measured with it.
    await page.locator('.cover-scene-marks').evaluate((marks) => {
      (marks as SVGElement).style.opacity = '0';
    });
    const lit = async (key: string): Promise<number> => {
      await page.keyboard.press(key);
      const picture = await settled(page);
      const { width, height } = defined(await scene(page).boundingBox());
      const places = Array.from(
        { length: 100 },
        (_, k) => [width * (0.42 + 0.16 * ((k % 10) / 9)), height * (0.35 + 0.2 * (Math.floor(k / 10) / 9))] as const,
      );
      const pixels = await pixelsAt(page, picture, places);
      return pixels.flat().reduce((sum, value) => sum + value, 0) / pixels.flat().length;
    };
    const front = await lit('6');
    expect(await shownLabels(page)).toEqual([
      expect.stringMatching(/^front fore-edge: gap/),
      expect.stringMatching(/^head: gap/),
      expect.stringMatching(/^tail: gap/),
    ]);
    expect(await lit('7')).toBeGreaterThan(0.75 * front);
    expect(await shownLabels(page)).toEqual([
      expect.stringMatching(/^back fore-edge: gap/),
      expect.stringMatching(/^head: gap/),
      expect.stringMatching(/^tail: gap/),
    ]);
  });

test('looking inside a closed book opens it', async ({ page }) => {
  await page.goto('/');
  await settled(page);
  await scene(page).focus();
  await page.keyboard.press('8');
  await expect(scene(page)).toHaveAccessibleName(/open 120 degrees, seen from inside/);
  const button = (name: string) => page.getByRole('group', { name: 'Look from' }).getByRole('button', { name });
  await page.getByRole('slider', { name: 'Open the book', exact: true }).fill('0');
  await expect(scene(page)).toHaveAccessibleName(/in its cover, closed/);
  await button('inside').click();
  await expect(scene(page)).toHaveAccessibleName(/open 120 degrees/);
});

test('a lost drawing context is reported, and its return brings the picture back', async ({ page }) => {
  await page.goto('/');
  await settled(page);
  const loss = await scene(page)
    .locator('canvas')
    .evaluateHandle((canvas: HTMLCanvasElement) => canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!);
  await loss.evaluate((extension) => extension.loseContext());
  await expect(page.getByText('taken the drawing context away')).toBeVisible();
  await loss.evaluate((extension) => extension.restoreContext());
  await expect(page.getByText('taken the drawing context away')).toHaveCount(0);
  await settled(page);
});

test('slow frames choose the plain look once; who then asks for the full one keeps it', async ({ page }) => {
  // Frames of the full look are slow by themselves where the processor draws; here they are only as slow as is asked.
  await page.addInitScript(withoutPixels);
  await page.addInitScript(() => {
    localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: 'full' }));
    const soon = window.requestAnimationFrame.bind(window);
    const frames = { count: 0 };
    Object.assign(window, { frames });
    window.requestAnimationFrame = (draw) =>
      soon(() =>
        setTimeout(() => {
          frames.count++;
          draw(performance.now());
        }, 150),
      );
  });
  const frames = () => page.evaluate(() => (window as unknown as { frames: { count: number } }).frames.count);
  await page.goto('');
  await expect(page.getByText('Drawing was slow on this machine')).toBeVisible({ timeout: 300_000 });
  await openJobMenu(page);
  const picture = page.getByLabel('Picture', { exact: true });
  await expect(picture).toHaveValue('light');
  const before = await frames();
  await picture.selectOption('full');
  // The full look is measured again and then draws no more: two frames to warm up, and three of five decide a median.
  await expect
    .poll(async () => {
      const drawn = await frames();
      await page.waitForTimeout(1000);
      return drawn >= before + 5 && drawn === (await frames());
    })
    .toBe(true);
  await expect(picture).toHaveValue('full');
});

test('a frame of the largest example takes at most 60 draw calls, wherever the making and the opening stand', async ({
  page,
}) => {
  await page.addInitScript(withoutPixels);
  await page.addInitScript(countDrawing);
  await page.goto('');
  await openExample(page, 'choir book');
  await scenesAreDrawn(page);
  const most = { calls: 0, triangles: 0, textures: 0 };
  for (const name of ['Open the book', 'Making']) {
    const slider = page.getByRole('slider', { name, exact: true });
    const furthest = Number(await slider.getAttribute('max'));
    for (const share of [0, 0.3, 0.6, 1]) {
      await slider.fill(String(Math.round(share * furthest * 100) / 100));
      await page.waitForTimeout(300);
      const { frames, textures } = await page.evaluate(takeDrawn);
      for (const { calls, triangles } of frames) {
        most.calls = Math.max(most.calls, calls);
        most.triangles = Math.max(most.triangles, Math.round(triangles));
      }
      most.textures = textures;
    }
  }
  console.log(`draw calls ${most.calls}, triangles ${most.triangles}, textures ${(most.textures / 1e6).toFixed(1)} MB`);
  expect(most.calls).toBeGreaterThan(0);
  expect(most.calls).toBeLessThanOrEqual(60);
});

test('where drawing is slow, what moves has fewer pixels, and all of them once it stands still', async ({ page }) => {
  await page.addInitScript(withoutPixels);
  // Every frame takes the driver 120 ms.
  await page.addInitScript(() => {
    const gl = WebGL2RenderingContext.prototype;
    const [fence, wait] = [gl.fenceSync, gl.clientWaitSync];
    const made = new WeakMap<WebGLSync, number>();
    gl.fenceSync = function (this: WebGL2RenderingContext, ...how: Parameters<typeof fence>) {
      const sync = fence.apply(this, how);
      if (sync) made.set(sync, performance.now());
      return sync;
    };
    gl.clientWaitSync = function (this: WebGL2RenderingContext, ...how: Parameters<typeof wait>) {
      const isDone = performance.now() > (made.get(how[0]) ?? 0) + 120;
      return isDone ? wait.apply(this, how) : this.TIMEOUT_EXPIRED;
    };
  });
  await page.goto('');
  await scenesAreDrawn(page);
  await page.waitForTimeout(500);
  const canvas = scene(page).locator('canvas');
  const width = () => canvas.evaluate((canvas) => (canvas as HTMLCanvasElement).width);
  const whole = await width();
  await scene(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(width).toBeLessThan(0.6 * whole);
  await expect.poll(width).toBe(whole);
});

test.describe('over the picture', () => {
  test.use({ look: 'unfilled' });

  test('the loupe is held over the picture: pointed at it shows, pressed it stays, and its line ends on the edge', async ({
    bench,
  }) => {
    await scenesAreDrawn(bench);
    const stage = bench.getByRole('region', { name: 'The cover on the book' });
    await bench.getByRole('button', { name: /^fore-edges /i }).click();
    const glass = stage.getByRole('slider', { name: 'Loupe on the front fore-edge' });
    await expect(glass).toBeFocused();
    const end = stage.locator('.loupe-leader circle');
    await expect(end).toBeVisible();
    const { x, y, width, height } = (await end.boundingBox())!;
    await bench.keyboard.press('Escape');
    await expect(glass).toHaveCount(0);
    // What the line pointed at is the edge: there the pointer finds it.
    await bench.mouse.move(x + width / 2, y + height / 2);
    await expect(glass).toBeVisible();
    await expect(glass).toHaveAttribute('aria-valuenow', /^(49|50|51)$/);
    await bench.mouse.move(40, 600);
    await expect(glass).toHaveCount(0);
    await bench.mouse.click(x + width / 2, y + height / 2);
    await bench.mouse.move(40, 600);
    await expect(glass).toBeFocused();
    await expect(end).toBeVisible();
  });
});
