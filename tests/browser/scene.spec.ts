import { expect, type Page, test } from '@playwright/test';

const scene = (page: Page) => page.getByRole('application');

/** Waits for the picture to be there and to stop changing. */
async function settled(page: Page): Promise<Buffer> {
  await expect(scene(page).locator('canvas')).toBeVisible({ timeout: 30_000 });
  let last = await scene(page).screenshot();
  for (let i = 0, alike = 0; i < 60; i++) {
    await page.waitForTimeout(400);
    const now = await scene(page).screenshot();
    alike = now.equals(last) ? alike + 1 : 0;
    last = now;
    if (alike === 3) return now;
  }
  throw new Error('The scene never comes to rest.');
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
  test.setTimeout(120_000);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  // The plain look: the processor draws here, and the full look takes it a second a frame.
  await page.addInitScript(() => localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: 'light' })));
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
  const spine = await settled(page);
  expect(spine.equals(first)).toBe(false);
  await page.keyboard.press('ArrowLeft');
  const turned = await settled(page);
  expect(turned.equals(spine)).toBe(false);
  await page.keyboard.press('+');
  expect((await settled(page)).equals(turned)).toBe(false);
  expect(await scene(page).evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid');
});

test('fit marks carry words and numbers, apart from one another and inside the picture', async ({ page }) => {
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 800 });
    await page.goto('/');
    await settled(page);
    const labels = scene(page).locator('svg text');
    expect(await labels.count()).toBeGreaterThan(2);
    for (const words of await labels.allTextContents()) expect(words).toMatch(/(gap|overrun|slack|stand open) .*\d/);
    const frame = (await scene(page).boundingBox())!;
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

test('without WebGL the page says so and shows the section instead', async ({ page }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await page.goto('/');
  await expect(page.getByText('no WebGL 2')).toBeVisible({ timeout: 30_000 });
  await expect(scene(page)).toHaveCount(0);
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
  await page.addInitScript(() => {
    localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: 'full' }));
    const soon = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (draw) => soon(() => setTimeout(() => draw(performance.now()), 150));
  });
  await page.goto('');
  await expect(page.getByText('Drawing was slow on this machine')).toBeVisible({ timeout: 60_000 });
  await page.getByText('Cross-section and display').click();
  const plain = page.getByLabel('Plain look, for slow machines');
  await expect(plain).toBeChecked();
  await plain.uncheck();
  // The full look takes its measure anew: two frames to warm up, and five.
  await page.waitForTimeout(12_000);
  await expect(plain).not.toBeChecked();
});
