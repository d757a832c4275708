import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expectAccessible } from './accessibility.ts';
import { expect, openCard, openDocument, openExample, setUnits, test } from './bench.ts';

const glass = (page: Page) => page.getByRole('slider', { name: /^Loupe on the/ });
const room = (page: Page, edge: string) => page.getByRole('button', { name: new RegExp(`^${edge} `, 'i') });

test('the room left is read at every edge, and pressed it is looked at: hatched, dimensioned, at each end of the leather', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const rows = bench.getByRole('region', { name: 'Room left' }).getByRole('button');
  await expect(rows).toHaveText([
    /^fore-edges\s+1\.1 to 2\.0 mm$/,
    /^head\s+0\.9 to 1\.1 mm$/,
    /^tail\s+0\.9 to 1\.1 mm$/,
  ]);
  await room(bench, 'head').click();
  await expect(glass(bench)).toBeFocused();
  await expect(glass(bench)).toHaveAccessibleName('Loupe on the head');
  await expect(glass(bench)).toHaveAttribute(
    'aria-valuetext',
    'gap 0.9 mm, thick leather, 85 % of the way from the spine',
  );
  await expect(glass(bench)).toHaveAccessibleDescription('Head and tail share the spare height.');
  await expect(glass(bench).locator('text')).toHaveText('gap 0.9 mm');

  await bench.getByRole('radio', { name: 'thin 1.1 mm' }).check();
  await expect(glass(bench).locator('text')).toHaveText('gap 1.1 mm');
  await setUnits(bench, 'in');
  await expect(glass(bench).locator('text')).toHaveText(/^gap \d+\/\d+ in$/);
});

test('the bars of the room left have one scale, where one says “overrun” too', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const card = await openCard(bench, 'cut');
  await card.getByLabel('Outside width').fill('370');
  const rows = bench.getByRole('region', { name: 'Room left' }).getByRole('button');
  await expect(rows.first()).toContainText('overrun');
  const bars = await rows.locator('svg').evaluateAll((all) =>
    all.map((bar) => {
      const { left, right } = bar.getBoundingClientRect();
      return [left, right].map(Math.round);
    }),
  );
  expect(bars).toEqual(bars.map(() => bars[0]));
});

test('by keys alone the loupe goes along its edge, from edge to edge, and away, and gives the focus back', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  const opener = bench.getByRole('button', { name: 'Look at the edges' });
  await opener.focus();
  await bench.keyboard.press('Enter');
  await expect(glass(bench)).toBeFocused();
  await expect(glass(bench)).toHaveAttribute('aria-orientation', 'vertical');
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '50');
  await bench.keyboard.press('ArrowUp');
  await bench.keyboard.press('ArrowUp');
  await bench.keyboard.press('ArrowDown');
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '55');
  await bench.keyboard.press('PageDown');
  await expect(glass(bench)).toHaveAccessibleName('Loupe on the head');
  await bench.keyboard.press('Home');
  await expect(glass(bench)).toHaveAttribute('aria-valuetext', /^no pocket, /);
  await expect(glass(bench)).toHaveAccessibleDescription('No pocket here: nothing stops the board.');
  await expect(glass(bench).locator('.gap-zone')).toHaveCount(0);
  await bench.keyboard.press('PageUp');
  await bench.keyboard.press('PageUp');
  await expect(glass(bench)).toHaveAccessibleName('Loupe on the tail');
  await bench.keyboard.press('Tab');
  await bench.keyboard.press('ArrowLeft');
  await expect(bench.getByRole('radio', { name: /^middle/ })).toBeFocused();
  await bench.keyboard.press('Escape');
  await expect(glass(bench)).toHaveCount(0);
  await expect(bench.getByRole('button', { name: 'Look at the edges' })).toBeVisible();
});

test('dragged, the loupe follows its edge and nothing else, and stops at its ends', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  await room(bench, 'fore-edges').click();
  await glass(bench).scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await glass(bench).boundingBox())!;
  const [middleX, middleY] = [x + width / 2, y + height / 2];
  await bench.mouse.move(middleX, middleY);
  await bench.mouse.down();
  await bench.mouse.move(middleX + 60, middleY, { steps: 3 });
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '50');
  await bench.mouse.move(middleX + 60, middleY - 40, { steps: 3 });
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '70');
  await bench.mouse.move(middleX, middleY - 400, { steps: 3 });
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '100');
  await bench.mouse.up();
  await bench.mouse.move(middleX, middleY, { steps: 3 });
  await expect(glass(bench)).toHaveAttribute('aria-valuenow', '100');
});

test('an overrun is crossed, in its own colour and word, and changes with the job while the loupe is open', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  await room(bench, 'fore-edges').click();
  await expect(glass(bench).locator('[data-overrun]')).toHaveCount(0);
  await openCard(bench, 'cut');
  await bench.getByLabel('Outside width', { exact: true }).fill('377');
  await expect(glass(bench).locator('[data-overrun] text')).toHaveText(/^overrun \d\.\d mm$/);
  await expect(room(bench, 'fore-edges')).toContainText('overrun up to');
  await expect(glass(bench)).toHaveAccessibleDescription('Too small: board and stop overlap.');
});

test('the leather is chosen wherever any of the leathers has a range, and not where none has', async ({ bench }) => {
  const job = JSON.parse(readFileSync('public/jobs/tide-ledger.json', 'utf8'));
  const open = async (name: string, outside: object, pocket: object): Promise<void> => {
    const leather = {
      ...job.leather,
      outside: { ...job.leather.outside, ...outside },
      pocket: { ...job.leather.pocket, ...pocket },
    };
    await openDocument(bench, { ...job, name, leather });
  };
  const ends = bench.getByRole('group', { name: 'Leather' }).getByRole('radio');
  const one = { min_mm: 1.8, max_mm: 1.8 };
  await bench.getByRole('button', { name: 'Look at the edges' }).click();
  await open('Pocket ranges', one, { min_mm: 1, max_mm: 1.4 });
  await expect(ends).toHaveCount(3);
  await open('Nothing ranges', one, one);
  await expect(ends).toHaveCount(0);
});

test('the loupe meets WCAG 2.2 AA, light and dark, and on a touch screen every control of it is 44 px high', async ({
  browser,
  baseURL,
}) => {
  const context = await browser.newContext({
    baseURL,
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.goto('');
  await room(page, 'tail').click();
  await expect(glass(page)).toBeVisible();
  const targets = page.locator('.look-at-edges').locator('button, label, [role=slider]');
  for (const box of await targets.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON())))
    expect([box, Math.min(box.width, box.height) >= 44]).toEqual([box, true]);
  await expectAccessible(page, '.look-at-edges');
  await context.close();
});
