import type { Page } from '@playwright/test';
import {
  chooseLook,
  expect,
  goToPlace,
  headline,
  holdWorkers,
  openCard,
  openExample,
  openPart,
  stripSettles,
  test,
} from './bench.ts';
import { withoutPixels } from './webGl.ts';

/** Puts workers in place of the browser's that do not work: one that cannot start, dies at once, never answers, or answers nonsense. */
function spoilWorkers(how: string): void {
  class Spoilt extends EventTarget {
    onmessage: ((event: MessageEvent) => void) | null = null;
    onerror: ((event: Event) => void) | null = null;
    constructor() {
      super();
      if (how === 'forbidden') throw new DOMException('not allowed', 'SecurityError');
      if (how === 'dead') setTimeout(() => this.onerror?.(new Event('error')));
    }
    postMessage({ number: to }: { number: number }): void {
      if (how !== 'wrong') return;
      for (const data of [
        { to, heard: true },
        { to, answer: { thin: Number.NaN } },
      ])
        setTimeout(() => this.onmessage?.(new MessageEvent('message', { data })));
    }
    terminate(): void {}
  }
  window.Worker = Spoilt as unknown as typeof Worker;
}

/** Puts the page's clock forward until something is there, as long as a maker might wait. */
const inTime = (page: Page, text: RegExp | string) =>
  expect(async () => {
    await page.clock.runFor(10_000);
    await expect(page.getByText(text).first()).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 60_000 });

/** Puts the page's clock forward until the page says of nothing that it is on its way. */
const nothingWaits = (page: Page) =>
  expect(async () => {
    await page.clock.runFor(10_000);
    await expect(page.getByText(/being (worked|laid) out|being fetched/i)).toHaveCount(0, { timeout: 1000 });
  }).toPass({ timeout: 60_000 });

const WHY = {
  forbidden: 'did not start or did not answer',
  dead: 'did not start or did not answer',
  mute: 'did not start or did not answer',
  wrong: 'answered with something that cannot be right',
};

for (const [how, why] of Object.entries(WHY)) {
  test(`workers that are ${how} are told in plain words, nothing is on its way for ever, and the rest works`, async ({
    page,
  }) => {
    test.slow();
    await page.addInitScript(spoilWorkers, how);
    await page.addInitScript(chooseLook, 'light');
    await page.addInitScript(withoutPixels);
    await page.clock.install();
    await page.goto('');
    await inTime(page, `The springy model has no answer for this cover: the worker that does it ${why}`);
    // The scene does by itself what its worker was to do.
    await expect(async () => {
      await page.clock.fastForward(1_000);
      await expect(page.locator('.stage-scene canvas')).toBeVisible({ timeout: 5000 });
    }).toPass();

    await goToPlace(page, 'Explore');
    await inTime(page, /Part of this could not be worked out/);
    await nothingWaits(page);
    await expect(page.getByText(/Part of this could not/)).toHaveCount(1);

    const leather = await openPart(page, 'Leather owned');
    await leather.getByRole('radio', { name: 'a rectangle' }).check();
    await inTime(page, `The pieces could not be laid out: the worker that does it ${why}`);
    await nothingWaits(page);

    // What needs no worker goes on, and an edit brings no false hope.
    await (await openCard(page, 'book')).getByLabel('Width', { exact: true }).fill('151');
    await expect(page.getByText('The springy model has no answer')).toBeVisible();
    await expect(headline(page)).not.toHaveText('');
    await nothingWaits(page);

    // Half a minute of two turning covers drawn frame by frame would be long in coming.
    if (how === 'mute') return;
    await goToPlace(page, 'Customer');
    await page.getByRole('button', { name: 'Take away' }).click();
    await page.getByRole('button', { name: 'Save model' }).click();
    await inTime(page, /The model could not be made/);
  });
}

test('a worker that comes back is used again at a press', async ({ page }) => {
  await page.addInitScript(() => {
    const own = window.Worker;
    let isSpoilt = true;
    window.Worker = class extends own {
      constructor(...words: ConstructorParameters<typeof Worker>) {
        if (isSpoilt) throw new DOMException('not allowed', 'SecurityError');
        super(...words);
      }
    };
    window.addEventListener('mended', () => {
      isSpoilt = false;
    });
  });
  await page.goto('');
  const note = page.getByText('The springy model has no answer');
  await expect(note).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('mended')));
  await page.getByRole('button', { name: 'Try it again' }).click();
  await expect(note).toBeHidden();
});

test('what the workers say late moves neither the button of the verdict nor the field in hand', async ({ bench }) => {
  const letWorkers = await holdWorkers(bench);
  for (const width of [1440, 390])
    for (const example of ['tide ledger', 'choir book', 'shore guide']) {
      await bench.setViewportSize({ width, height: 844 });
      await bench.reload();
      await openExample(bench, example);
      const field = (await openCard(bench, 'cut')).getByLabel('Outside width', { exact: true });
      await field.focus();
      const places = async () => [await field.boundingBox(), await bench.locator('.verdict .main').boundingBox()];
      const before = await places();
      expect(before).not.toContain(null);
      await expect(bench.locator('section[data-strip="solved"]')).toHaveCount(0);
      await letWorkers();
      await stripSettles(bench);
      expect(await places(), `${example} at ${width} px`).toEqual(before);
    }
});
