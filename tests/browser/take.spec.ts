import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { validateBytes } from 'gltf-validator';
import { ALL_FORMATS, BufferSource, Input } from 'mediabunny';
import { PNG } from 'pngjs';
import { expectAccessible } from './accessibility.ts';
import { expect, scenesAreDrawn, test } from './bench.ts';

/** Opens the place where pictures, models and films are taken away. */
async function openTake(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Take away' }).click();
  await expect(page.getByRole('dialog', { name: 'Take it away' })).toBeVisible();
}

async function saved(page: Page, button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

const said = (page: Page) => page.getByRole('dialog').getByRole('status');

test('models are saved as GLB, packed and not, and as USDZ', async ({ bench }) => {
  test.slow();
  await openTake(bench);
  const sizes: number[] = [];
  for (const [file, called, told] of [
    ['GLB, packed', 'tide-ledger.glb', ['UNSUPPORTED_EXTENSION']],
    ['GLB, not packed', 'tide-ledger-plain.glb', []],
  ] as const) {
    await bench.getByLabel('File', { exact: true }).selectOption(file);
    const { name, bytes } = await saved(bench, 'Save model');
    expect(name).toBe(called);
    const { issues } = await validateBytes(new Uint8Array(bytes));
    expect([issues.numErrors, issues.numWarnings]).toEqual([0, 0]);
    expect(issues.messages.map(({ code }) => code).filter((code) => code !== 'UNUSED_OBJECT')).toEqual(told);
    sizes.push(bytes.length);
  }
  expect(sizes[0]).toBeLessThan(3_000_000);
  expect(sizes[1]).toBeGreaterThan(2 * sizes[0]!);
  await bench.getByLabel('File', { exact: true }).selectOption('USDZ');
  const { name, bytes } = await saved(bench, 'Save model');
  expect(name).toBe('tide-ledger.usdz');
  expect(bytes.toString('latin1', 30, 40)).toBe('cover.usda');
});

test('without a 3D view a picture says why there is none; keys reach everything, and it meets WCAG 2.2 AA', async ({
  bench,
}) => {
  await bench.getByRole('button', { name: 'Take away' }).focus();
  await bench.keyboard.press('Enter');
  const dialog = bench.getByRole('dialog', { name: 'Take it away' });
  await expect(dialog.getByLabel('Size', { exact: true })).toBeFocused();
  await bench.keyboard.press('Tab');
  await bench.keyboard.press('Enter');
  await expect(said(bench)).toContainText('There is no 3D view');
  await expectAccessible(bench);
  for (const width of [390, 320]) {
    await bench.setViewportSize({ width, height: 700 });
    const { x, width: wide } = (await dialog.boundingBox())!;
    expect([x >= 0, x + wide <= width]).toEqual([true, true]);
  }
  await bench.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(bench.getByRole('button', { name: 'Take away' })).toBeFocused();
  // The search leads to it by what is looked for.
  await bench.keyboard.press('/');
  await bench.keyboard.type('glb');
  await bench.keyboard.press('Enter');
  await expect(dialog).toBeVisible();
});

test('a browser without a video encoder says so in place of the button', async ({ bench }) => {
  await bench.addInitScript(() => Reflect.deleteProperty(window, 'VideoEncoder'));
  await bench.reload();
  await openTake(bench);
  await expect(bench.getByText('This browser cannot make films')).toBeVisible();
  await expect(bench.getByRole('button', { name: 'Save film' })).toHaveCount(0);
  await expect(bench.getByRole('button', { name: 'Save picture' })).toBeEnabled();
});

test.describe('with the cover drawn', () => {
  test.use({ look: 'light', viewport: { width: 390, height: 700 } });

  test('a picture is the same in tiles as in one piece, and its edges are smooth in the plain look', async ({
    bench,
  }) => {
    test.slow();
    await scenesAreDrawn(bench);
    await openTake(bench);
    const whole = await saved(bench, 'Save picture');
    // A graphics card that draws no more than 300 pixels at once: tiles of 100.
    await bench.evaluate(() => {
      const own = WebGL2RenderingContext.prototype.getParameter;
      WebGL2RenderingContext.prototype.getParameter = function (this: WebGL2RenderingContext, name: number) {
        return name === this.MAX_RENDERBUFFER_SIZE ? 300 : Reflect.apply(own, this, [name]);
      };
    });
    const tiled = await saved(bench, 'Save picture');
    const [one, many] = [PNG.sync.read(whole.bytes), PNG.sync.read(tiled.bytes)];
    expect(whole.name).toBe(`tide-ledger-${one.width}.png`);
    expect([many.width, many.height]).toEqual([one.width, one.height]);
    expect(one.width).toBeGreaterThan(300);
    // The offset of a tile is rounded in the projection: a sample on an edge may fall to the other side, here and there.
    let [off, onSeam, inRest] = [0, 0, 0];
    for (let j = 0; j < one.height; j++)
      for (let i = 0; i < one.width; i++) {
        const at = 4 * (j * one.width + i);
        const most = Math.max(...[0, 1, 2].map((c) => Math.abs(one.data[at + c]! - many.data[at + c]!)));
        off = Math.max(off, most);
        const isSeam = [i, j].some((k) => k % 100 === 0 || k % 100 === 99);
        if (most > 2) isSeam ? onSeam++ : inRest++;
      }
    console.info(`tiles: largest difference ${off} of 255, ${onSeam} pixels at seams, ${inRest} elsewhere`);
    expect(onSeam + inRest).toBeLessThan((one.width * one.height) / 1000);
    expect(onSeam).toBeLessThan(20);

    // Along the cover's outline a pixel lies between the bench and the leather, not on one of the two.
    const red = (i: number, j: number): number =>
      one.data[4 * (j * one.width + i)]! - one.data[4 * (j * one.width + i) + 2]!;
    let [rows, smooth] = [0, 0];
    for (let j = 0; j < one.height; j++) {
      const i = Array.from({ length: one.width - 3 }, (_, k) => k).find((k) => red(k + 2, j) - red(k, j) > 30);
      if (i === undefined || i === 0) continue;
      rows++;
      const [before, edge, after] = [red(i, j), red(i + 1, j), red(i + 2, j)];
      if (edge > before + 5 && edge < after - 5) smooth++;
    }
    console.info(`outline: ${smooth} of ${rows} rows smooth`);
    expect(rows).toBeGreaterThan(50);
    expect(smooth / rows).toBeGreaterThan(0.6);
  });

  test('the bench of a film is lit as that of the view, and a film that is stopped leaves no file', async ({
    bench,
  }) => {
    test.slow();
    await scenesAreDrawn(bench);
    await openTake(bench);
    await bench.evaluate(() => {
      const own = CanvasRenderingContext2D.prototype.drawImage;
      CanvasRenderingContext2D.prototype.drawImage = function (this: CanvasRenderingContext2D, ...how: unknown[]) {
        Reflect.apply(own, this, how);
        const { data } = this.getImageData(0, 0, this.canvas.width, this.canvas.height);
        let grey = 0;
        for (let i = 0; i < data.length; i += 4)
          if (data[i]! < 160 && data[i]! - data[i + 2]! < 25 && data[i]! > 60) grey++;
        Object.assign(window, { grey: grey / (data.length / 4) });
      };
    });
    await bench.getByLabel('Shows').selectOption('The making, 20 s');
    await bench.getByLabel('Size of the film').selectOption('640 × 360');
    let files = 0;
    bench.on('download', () => files++);
    await bench.getByRole('button', { name: 'Save film' }).click();
    const grey = () => bench.evaluate(() => (window as unknown as { grey?: number }).grey);
    await expect.poll(grey, { timeout: 60_000 }).toBeDefined();
    // Round the cut pieces a shadow falls on little of the bench.
    expect(await grey()).toBeLessThan(0.03);
    await bench.getByRole('button', { name: 'Stop' }).click();
    await expect(said(bench)).toHaveText('The film was stopped; nothing is saved.', { timeout: 30_000 });
    expect(files).toBe(0);
  });
});

test.describe('with the scene at work', () => {
  test.use({ look: 'unfilled' });

  test('a picture of 4K is saved, and one of 8K is stopped without a file', async ({ bench }) => {
    test.slow();
    await scenesAreDrawn(bench);
    await openTake(bench);
    await bench.getByLabel('Size', { exact: true }).selectOption({ index: 1 });
    const { bytes } = await saved(bench, 'Save picture');
    const { width, height } = PNG.sync.read(bytes);
    expect(Math.max(width, height)).toBe(3840);
    await bench.getByLabel('Size', { exact: true }).selectOption({ index: 2 });
    let files = 0;
    bench.on('download', () => files++);
    await bench.getByRole('button', { name: 'Save picture' }).click();
    await expect(bench.getByRole('progressbar')).toHaveAttribute('value');
    await bench.getByRole('button', { name: 'Stop' }).click();
    await expect(said(bench)).toHaveText('The picture was stopped; nothing is saved.');
    await expect(bench.getByRole('button', { name: 'Save picture' })).toBeEnabled();
    expect(files).toBe(0);
  });

  test('where memory is short a picture says so and what to do, and the view goes on', async ({ bench }) => {
    await scenesAreDrawn(bench);
    await openTake(bench);
    await bench.evaluate(() => {
      Object.defineProperty(WebGL2RenderingContext.prototype, 'drawingBufferWidth', { get: () => 64 });
    });
    await bench.getByRole('button', { name: 'Save picture' }).click();
    await expect(said(bench)).toContainText(/no memory left for \d+ × \d+ pixels. Choose a smaller size/);
  });

  test('a film of one turn has its length, its frames and its size, in a file that the browser itself reads', async ({
    bench,
    context,
  }) => {
    test.slow();
    await scenesAreDrawn(bench);
    await openTake(bench);
    await bench.getByLabel('Shows').selectOption('One turn, 4 s');
    await bench.getByLabel('Size of the film').selectOption('640 × 360');
    const { name, bytes } = await saved(bench, 'Save film');
    expect(name).toMatch(/^tide-ledger-turn\.(mp4|webm)$/);
    const input = new Input({ source: new BufferSource(new Uint8Array(bytes)), formats: ALL_FORMATS });
    const track = (await input.getPrimaryVideoTrack())!;
    expect((await track.computePacketStats()).packetCount).toBe(96);
    // The page itself may play nothing.
    const elsewhere = await context.newPage();
    const read = await elsewhere.evaluate(
      async (address) => {
        const video = document.createElement('video');
        video.src = address;
        await new Promise((come, fail) => {
          video.onloadedmetadata = come;
          video.onerror = () => fail(new Error(video.error?.message));
        });
        return [video.duration, video.videoWidth, video.videoHeight];
      },
      `data:video/${name.endsWith('mp4') ? 'mp4' : 'webm'};base64,${bytes.toString('base64')}`,
    );
    expect(Math.abs(read[0]! - 4)).toBeLessThan(0.05);
    expect(read.slice(1)).toEqual([640, 360]);
  });

  test('a size that the browser does not encode is refused with the reason', async ({ bench }) => {
    await bench.addInitScript(() => {
      VideoEncoder.isConfigSupported = async (config) => ({ supported: false, config });
    });
    await bench.reload();
    await scenesAreDrawn(bench);
    await openTake(bench);
    await bench.getByRole('button', { name: 'Save film' }).click();
    await expect(said(bench)).toContainText(
      'This browser encodes no film of 1280 × 720 pixels. Choose a smaller size.',
    );
  });
});
