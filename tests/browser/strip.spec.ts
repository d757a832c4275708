import type { Locator, Page } from '@playwright/test';
import {
  expect,
  goToPlace,
  headline,
  holdWorkers,
  openCard,
  openExample,
  sliderValue,
  steadyMiddle,
  stripSettles,
  test,
} from './bench.ts';

const handle = (page: Page, part: string, name: string) =>
  page.locator(part).getByRole('slider', { name, exact: true });
const sizes = (page: Page) => page.locator('.strip > header');

/** Opens an example and goes to its strips. */
async function openStrips(page: Page, example: string): Promise<void> {
  await openExample(page, example);
  if (new URL(page.url()).hash !== '#strips') await goToPlace(page, 'Strips');
  await expect(page.locator('.strip, .upright').getByRole('slider').first()).toBeVisible();
}

/** Takes a handle by its tab and moves it; the button stays down. */
async function drag(page: Page, slider: Locator, [dx, dy]: readonly [number, number]): Promise<void> {
  const { x, y } = await steadyMiddle(slider.locator('.handle-tab'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps: 6 });
}

test('a tab dragged at the fore-edge widens the cover as it moves, over the untuned cover, in one step of undo', async ({
  bench,
}) => {
  await openStrips(bench, 'tide ledger');
  await expect(sizes(bench)).toContainText('outside 382.5 mm');
  await bench.getByRole('button', { name: /^front gap/ }).click();
  const ease = handle(bench, '.fore-edge-detail', 'fore-edge ease');
  await drag(bench, ease, [-72, 0]);
  await expect(ease).toHaveAttribute('aria-valuetext', /^[2-5]\.\d+ mm$/);
  // The button is still down: report, strip and field have moved with it.
  await expect(sizes(bench)).not.toContainText('382.5 mm');
  await expect(bench.locator('.check', { hasText: 'Fore-edges' })).toContainText(/Gap of [2-5]\.\d to/);
  const field = bench.locator('.tuner').getByLabel('Fore-edge ease', { exact: true });
  await expect.poll(async () => (await field.inputValue()) === `${await sliderValue(ease)()} mm`).toBe(true);
  await expect(bench.locator('.untuned-note')).toContainText('Untuned: outside 382.5 mm');
  await bench.mouse.up();
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(sizes(bench)).toContainText('outside 382.5 mm');
  await expect(bench.locator('.untuned-note')).toHaveCount(0);
});

test('Escape lets a dragged tab go back to where it was', async ({ bench }) => {
  await openStrips(bench, 'tide ledger');
  const cut = handle(bench, '.strip-drawing', 'outside width');
  await drag(bench, cut, [30, 0]);
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
  await bench.keyboard.press('Escape');
  await bench.mouse.up();
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fits');
  await expect(sizes(bench)).toContainText('outside 382.5 mm');
  await expect(bench.getByRole('button', { name: 'Redo', exact: true })).toHaveCount(0);
});

test('tabs go by the arrow keys, and Delete gives the field back to the tool', async ({ bench }) => {
  await openStrips(bench, 'choir book');
  const depth = handle(bench, '.strip-drawing', 'pocket depth');
  const before = await sliderValue(depth)();
  await depth.focus();
  await bench.keyboard.press('ArrowUp');
  await bench.keyboard.press('ArrowUp');
  await bench.keyboard.press('PageDown');
  await expect.poll(sliderValue(depth)).toBeCloseTo(before + 1 - 5, 6);
  await bench.keyboard.press('Delete');
  await expect.poll(sliderValue(depth)).toBe(before);

  const head = handle(bench, '.upright', 'head ease');
  await head.focus();
  await bench.keyboard.press('PageUp');
  await expect(bench.locator('.upright > header')).toContainText('237.5');
  await bench.getByRole('button', { name: 'Undo all tuning' }).click();
  await expect(bench.locator('.upright > header')).toContainText('outside 236.5 mm');
});

test('with a size of the maker’s own, the cut edge moves the size and the seam line the margin', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  await (await openCard(bench, 'cut')).getByLabel('Outside height', { exact: true }).fill('262');
  await goToPlace(bench, 'Strips');
  const upright = bench.locator('.upright');
  await expect(upright.locator('.end-detail').getByRole('slider', { name: 'outside height' }).first()).toBeVisible();
  const margin = handle(bench, '.upright', 'edge margin').first();
  const before = await sliderValue(margin)();
  await drag(bench, margin, [0, 20]);
  await bench.mouse.up();
  await expect.poll(sliderValue(margin)).toBeGreaterThan(before);
  await expect(upright.locator('header')).toContainText('outside 262 mm');
});

test('a stretch from head to tail lights up on the pattern, and is tuned where it is chosen', async ({ bench }) => {
  await openStrips(bench, 'tide ledger');
  const stop = bench.getByRole('button', { name: /^head stop/ });
  await stop.focus();
  await expect(bench.locator('.flat-pattern rect.lit').first()).toHaveAttribute('y', '6.35');
  const gap = bench.getByRole('button', { name: /^tail gap/ });
  await gap.click();
  await expect(gap).toHaveAttribute('aria-pressed', 'true');
  await bench.locator('.upright').getByLabel('Tail ease', { exact: true }).fill('2');
  await expect(gap).toHaveAccessibleName(/thick 2\.\d mm/);
});

test('what the workers say late does not move the strip under the hand', async ({ bench }) => {
  await bench.setViewportSize({ width: 390, height: 844 });
  const letWorkers = await holdWorkers(bench);
  await bench.goto('#strips');
  await bench.reload();
  await openStrips(bench, 'tide ledger');
  const tab = handle(bench, '.fore-edge-detail', 'fore-edge ease').locator('.handle-tab');
  await steadyMiddle(tab);
  const before = await tab.boundingBox();
  await expect(bench.locator('section[data-strip="solved"]')).toHaveCount(0);
  await letWorkers();
  await stripSettles(bench);
  expect(await tab.boundingBox()).toEqual(before);
});

test('nothing dragged makes the page scroll sideways', async ({ bench }) => {
  for (const width of [390, 1024]) {
    await bench.setViewportSize({ width, height: 844 });
    await openStrips(bench, 'tide ledger');
    await expect(bench.locator('.untuned-note')).toHaveCount(0);
    await drag(bench, handle(bench, '.fore-edge-detail', 'fore-edge ease'), [-60, 0]);
    await expect(bench.locator('.untuned-note')).toBeVisible();
    expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    await bench.mouse.up();
    expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
});
