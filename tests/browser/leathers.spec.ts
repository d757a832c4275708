import type { Locator, Page } from '@playwright/test';
import { expectAccessible } from './accessibility.ts';
import { expect, goToPlace, headline, openCard, openExample, test } from './bench.ts';

const tiles = (page: Page) => page.locator('.leather-tile');
const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });

const leather = (name: string, more: object = {}) => ({
  format: 'coverwright-leather',
  version: 1,
  name,
  min_mm: 1.6,
  max_mm: 2,
  ...more,
});

/** Brings leathers in from a file. */
async function bring(page: Page, leathers: readonly object[]): Promise<void> {
  await goToPlace(page, 'Leathers');
  await page.getByLabel('File of leathers').setInputFiles({
    name: 'leathers.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ format: 'coverwright-leathers', version: 1, leathers })),
  });
}

/** Presses Tab until something is in focus. */
async function tabTo(target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let i = 0; i < 200; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await target.page().keyboard.press('Tab');
  }
  throw new Error(`Tab does not lead to ${target}`);
}

test('a hide is bought, tested, used for a cover and learned from, by keyboard, on a telephone’s width', async ({
  bench,
}) => {
  const { keyboard } = bench;
  const press = async (name: string | RegExp, within: Page | Locator = bench): Promise<void> => {
    await tabTo(within.getByRole('button', { name, exact: typeof name === 'string' }).first());
    await keyboard.press('Enter');
  };
  const type = async (entry: Locator, text: string, ends = 'Tab'): Promise<void> => {
    await tabTo(entry);
    await keyboard.press('Control+A');
    await keyboard.type(text);
    await keyboard.press(ends);
  };
  await bench.setViewportSize({ width: 390, height: 844 });
  const card = bench.locator('#card-leather');

  await test.step('bought', async () => {
    await goToPlace(bench, 'Leathers');
    await expect(bench.getByText('No leather is kept yet.')).toBeVisible();
    await press('New leather');
    await type(field(bench, 'Name'), 'Harness back');
    await type(field(bench, 'Weight'), '5-6 oz');
    await expect(bench.getByText('5-6 oz, vegetable tanned, medium')).toBeVisible();
    // Undo takes back the leather's own step, and none of the job's.
    await keyboard.press('Control+z');
    await expect(bench.getByText('4-5 oz, vegetable tanned, medium')).toBeVisible();
    await keyboard.press('Control+Shift+z');
    await expect(bench.getByText('5-6 oz, vegetable tanned, medium')).toBeVisible();
  });

  await test.step('taken for a job', async () => {
    await openCard(bench, 'leather');
    await press(/^Take one of your leathers/);
    await type(field(bench, 'Search your leathers'), 'harness 5-6');
    await press('Harness back', card);
    await expect(field(bench, 'Outside weight')).toHaveValue('5-6 oz');
    await expect(headline(bench)).toContainText('5 to 6 oz');
  });

  await test.step('read by callipers and tested by a fold: the job is told, and nothing changes unasked', async () => {
    await tabTo(card.getByRole('link', { name: 'Harness back' }));
    await keyboard.press('Enter');
    await expect(heading(bench, 'Harness back')).toBeVisible();
    for (const read of ['2.1', '2.25']) await type(field(bench, 'Thickness read'), read, 'Enter');
    await expect(bench.getByText('Thinnest 2.1 mm, thickest 2.25 mm')).toBeVisible();
    const fold = bench.getByRole('article', { name: 'Fold it, and bend it' });
    await tabTo(fold.locator('summary', { hasText: 'Enter what you read' }));
    await keyboard.press('Enter');
    await type(fold.getByLabel('Thickness of the strip').last(), '2.2');
    await type(fold.getByLabel('Over the fold'), '6.2', 'Enter');
    await expect(fold).toContainText('Bend ratio 0.41');
    await expect(bench.getByRole('region', { name: 'Jobs with this leather' })).toContainText('Tide ledger');
    await openCard(bench, 'leather');
    await expect(card.getByText('Outside weight: 5-6 oz, now 2.1-2.25 mm')).toBeVisible();
    await expect(card.getByText(/^Outside bend ratio: 0\.2, now 0\.[34]/)).toBeVisible();
    await expect(field(bench, 'Outside weight')).toHaveValue('5-6 oz');
    await press('Take the newer figures');
    await expect(field(bench, 'Outside weight')).toHaveValue('2.1-2.25 mm');
    await expect(card.getByText('better known now')).toHaveCount(0);
    // One step of undo, which brings the news back.
    await keyboard.press('Control+z');
    await expect(field(bench, 'Outside weight')).toHaveValue('5-6 oz');
    await press('Take the newer figures');
    await expect(field(bench, 'Outside weight')).toHaveValue('2.1-2.25 mm');
  });

  await test.step('the finished cover teaches the leather', async () => {
    await bench.goto('#workbench/outcome');
    for (const [edge, gap] of [
      ['front', '1.5'],
      ['back', '1.2'],
      ['head', '1'],
      ['tail', '1.3'],
    ] as const)
      await type(bench.locator(`[data-path="outcome.${edge}_mm"]`), gap);
    await press('Let it teach Harness back');
    await expect(bench.getByText('Harness back has learned from this cover.')).toBeVisible();
    await goToPlace(bench, 'Leathers');
    await tabTo(bench.getByRole('link', { name: 'Harness back' }));
    await keyboard.press('Enter');
    await expect(bench.getByRole('region', { name: 'Covers made of it' })).toContainText('Tide ledger');
  });
});

test('two windows on one leather: each is told of the other, and neither loses its work', async ({
  bench,
  context,
}) => {
  await bring(bench, [leather('Side')]);
  await bench.getByRole('link', { name: 'Side' }).click();
  await expect(heading(bench, 'Side')).toBeVisible();
  const other = await context.newPage();
  await other.goto(bench.url());
  await expect(heading(other, 'Side')).toBeVisible();

  await field(bench, 'Notes').fill('from the first window');
  await expect(other.getByText('Another window has changed this leather.')).toBeVisible();
  await field(other, 'Name').fill('Side, second window');
  await expect(other.getByText('What you did here is now a leather of its own.')).toBeVisible();
  await expect(other).not.toHaveURL(bench.url());
  await field(other, 'Notes').fill('from the second window');
  await other.goto('#leathers');
  await expect(tiles(other)).toHaveCount(2);
  await other.getByRole('link', { name: 'Side', exact: true }).click();
  await expect(field(other, 'Notes')).toHaveValue('from the first window');

  // The other way round, what the other window has is shown when asked for.
  await field(other, 'Notes').fill('later');
  await bench.getByRole('button', { name: 'Show what the other window has' }).click();
  await expect(field(bench, 'Notes')).toHaveValue('later');
});

test('5,000 leathers with 50 broken ones: the sound ones come in and are found, the others are told by their place', async ({
  bench,
}) => {
  const many = Array.from({ length: 5000 }, (_, i) =>
    leather(`Side ${i}`, i % 100 === 7 ? { min_mm: 9 } : { notes: i === 4321 ? 'smells of oak' : '' }),
  );
  await bring(bench, many);
  await expect(bench.getByText('4950 leathers added, 50 broken and left out.')).toBeVisible();
  await expect(bench.locator('.broken-jobs > li')).toHaveCount(50);
  await expect(tiles(bench)).toHaveCount(48);
  await field(bench, 'Search').fill('oak');
  await expect(bench.getByText('1 of 4950 leathers')).toBeVisible();
  await expect(tiles(bench)).toHaveText([/Side 4321/]);
});

test('a leather is copied for another hide, removed, put back, and gone for a job that took it', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await bring(bench, [leather('Side', { callipered_mm: [1.8], notes: 'lot 7' })]);
  const more = async (action: string) => {
    await tiles(bench)
      .filter({ has: heading(bench, 'Side') })
      .locator('summary')
      .click();
    await bench.getByRole('button', { name: `${action} Side`, exact: true }).click();
  };
  await more('Copy for another hide');
  await expect(tiles(bench)).toHaveText([/Side, copy/, /Side/]);
  const card = await openCard(bench, 'leather');
  await card.getByRole('button', { name: 'Take one of your leathers for the outside' }).click();
  await card.getByRole('button', { name: 'Side', exact: true }).click();
  await expect(card.getByRole('link', { name: 'Side' })).toBeVisible();
  await expect(field(bench, 'Outside weight')).toHaveValue('1.8 mm');

  await goToPlace(bench, 'Leathers');
  await more('Remove');
  await expect(tiles(bench)).toHaveCount(1);
  await openCard(bench, 'leather');
  // Removed for thirty days is gone for the job, which keeps what it took.
  await expect(card.getByText('It is no longer among your leathers.')).toBeVisible();
  await expect(field(bench, 'Outside weight')).toHaveValue('1.8 mm');
  await goToPlace(bench, 'Leathers');
  await bench.getByText('Removed leathers (1)').click();
  await bench.getByRole('button', { name: 'Put back Side' }).click();
  await expect(tiles(bench)).toHaveCount(2);
});

test('the leathers and one of them meet WCAG 2.2 AA', async ({ bench }) => {
  await bring(bench, [leather('Side', { colour: '#e9dcc3' }), leather('Broken', { min_mm: 9 })]);
  await expect(bench.getByText('1 broken and left out')).toBeVisible();
  await expectAccessible(bench);
  await bench.getByRole('link', { name: 'Side' }).click();
  await expect(heading(bench, 'Side')).toBeVisible();
  await field(bench, 'Weight').fill('thick');
  await expectAccessible(bench);
});

test('the fields of the leather stay where they are when the list of the own leathers comes late', async ({
  bench,
}) => {
  let letCome = (): void => {};
  const held = new Promise<void>((resolve) => {
    letCome = resolve;
  });
  await bench.route(/\/OwnLeather-[^/]*\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  const card = await openCard(bench, 'leather');
  const temper = card.getByRole('radio', { name: 'soft' });
  const before = await temper.boundingBox();
  const take = card.getByRole('button', { name: 'Take one of your leathers for the outside' });
  letCome();
  await expect(take).toBeEnabled();
  expect(await temper.boundingBox()).toEqual(before);
});
