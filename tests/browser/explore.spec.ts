import type { Page } from '@playwright/test';
import { expect, exploreSettles, goToPlace, headline, openCard, openExample, test } from './bench.ts';

/** Gives the tide ledger an outside that is too narrow to close. */
async function openTooNarrow(page: Page): Promise<void> {
  await openExample(page, 'tide ledger');
  await (await openCard(page, 'cut')).getByLabel('Outside width', { exact: true }).fill('376');
  await expect(headline(page)).toHaveAttribute('data-verdict', 'fails');
}

test.describe('Explore', () => {
  test('opens on how much a heavier leather needs at the fore-edge, part by part', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    await goToPlace(bench, 'Explore');
    await expect(bench.getByLabel('change with')).toHaveValue('leather.outside');
    await expect(bench.getByLabel('How does')).toHaveValue('foreEdgeAllowance');
    await expect(bench.locator('.explore-reading output')).toContainText(
      'fore-edge allowance 12.08 mm (6.35 edge margin, 2.76 seam to stop, 1.98 folds at the spine, 0.98 ease)',
    );
    await expect(bench.locator('.explore-plot')).toContainText('folds at the spine');
  });

  test('is read by keyboard, and what is read goes into the job and comes back with undo', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    await goToPlace(bench, 'Explore');
    const reader = bench.getByRole('slider', { name: 'Read along Outside weight' });
    await exploreSettles(bench);
    await reader.focus();
    await bench.keyboard.press('End');
    await expect(reader).toHaveAttribute('aria-valuetext', '3.15 mm');
    await expect(bench.locator('.explore-reading output')).toContainText('At 3.15 mm');
    await bench.getByRole('button', { name: 'Put 3.15 mm into the job' }).press('Enter');
    const weight = (await openCard(bench, 'leather')).locator('[data-path="leather.outside"]');
    await expect(weight).toHaveValue('2.75-3.15 mm');
    await bench.keyboard.press('Control+z');
    await expect(weight).toHaveValue('4-5 oz');
  });

  test('draws the limits of the fit and a second job over the first, with a table of both', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    await goToPlace(bench, 'Explore');
    await bench.getByLabel('change with').selectOption('ease.head_mm');
    await bench.getByLabel('How does').selectOption('head');
    await bench.getByLabel('Lay over').selectOption('choir-book');
    const plot = bench.locator('.explore-plot');
    for (const words of ['fails below', 'fits above', 'this job', 'thin', 'thick', 'Choir book'])
      await expect(plot).toContainText(words);
    await bench.getByText('The same in figures').click();
    const table = bench.getByRole('table', { name: /^Head gap/ });
    await expect(table.getByRole('columnheader')).toHaveText([
      /Head ease/,
      'Thin',
      'Middle',
      'Thick',
      /Choir book/,
      'Cover',
    ]);
    await expect(table.getByRole('row', { name: /this job/ })).toHaveCount(1);
  });

  test('finds the smallest change that makes a failing cover fit, and one press makes it', async ({ bench }) => {
    await openTooNarrow(bench);
    await goToPlace(bench, 'Explore');
    await expect(bench.locator('.chance')).toHaveText('In 2,000 trials it closes in 1 of 100 and fits in 1 of 100.');
    const change = bench.locator('.must-change li', { hasText: 'Outside width' });
    await expect(change).toContainText('Outside width 382 mm, 6 mm more.');
    await change.getByRole('button').click();
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fits');
    await expect(bench.locator('.must-change')).toContainText('every check fits');
  });
});

test.describe('measuring', () => {
  test('the picture marks the measure that is being typed, and no other', async ({ bench }) => {
    await openExample(bench, 'choir book');
    const fold = (await openCard(bench, 'book')).locator('.card-body summary');
    await expect(fold.first()).toBeVisible();
    for (const summary of await fold.all()) await summary.click();
    const caption = bench.locator('.measure-picture figcaption:not(:empty)');
    const marked = bench.locator('.measure-picture .measure.active');
    for (const [path, words] of [
      ['book.width_mm', 'Width 150 mm'],
      ['book.spine.rise_mm', 'Rise 9 mm'],
      ['book.cornerRadius_mm', 'Edge radius at spine 0 mm'],
      ['book.measured.closedWrap_mm', 'Paper strip round the book'],
      ['book.measured.openFlatWidth_mm', 'Open flat, drawn to a smaller scale'],
    ] as const) {
      await bench.locator(`[data-path="${path}"]`).focus();
      await expect(caption).toHaveText(words);
      await expect(marked).toHaveCount(1);
    }
    await bench.locator('[data-path="book.foldBack_deg"]').focus();
    await expect(marked).toHaveCount(0);
    await expect(caption).toHaveCount(0);
  });

  test('a tape that disagrees is told beside it, with what would explain it', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    const book = await openCard(bench, 'book');
    const check = book.getByRole('list', { name: 'Cross-check of the measures' });
    await expect(check).toBeHidden();
    await book.getByText('Measured round the book').click();
    const tape = book.locator('[data-path="book.measured.closedWrap_mm"]');
    await tape.fill('358');
    await expect(check).toContainText('Agreement of the measures fits');
    await tape.fill('366');
    await expect(check).toContainText(/Agreement of the measures contradict each other8 mm \(within ±1\.27 mm\)/);
    await check.getByRole('button', { name: /^Make this change/ }).click();
    await expect(check).not.toContainText('contradict');
  });
});

test('on a wide screen the cover is as tall as the window, only its cards scroll', async ({ bench }) => {
  await openTooNarrow(bench);
  for (const card of ['book', 'leather', 'seam', 'cut', 'checks', 'sure'] as const) {
    const opened = await openCard(bench, card);
    for (const summary of await opened.locator('summary').filter({ visible: true }).all())
      await summary.evaluate((each) => (each.parentElement as HTMLDetailsElement).setAttribute('open', ''));
  }
  const cards = bench.locator('.cards');
  for (const width of [1024, 1440, 2560]) {
    await bench.setViewportSize({ width, height: 800 });
    const height = () => bench.evaluate(() => document.documentElement.scrollHeight);
    await expect.poll(height, `at ${width} px`).toBe(800);
    await cards.evaluate((each) => each.scrollTo(0, 0));
    await cards.hover();
    // What the cards hold may still come.
    await expect(async () => {
      await bench.mouse.wheel(0, 100_000);
      const [top, rest] = await cards.evaluate(({ scrollTop, scrollHeight, clientHeight }) => [
        scrollTop,
        scrollHeight - clientHeight - scrollTop,
      ]);
      expect(top).toBeGreaterThan(0);
      expect(rest).toBeLessThan(1);
    }, `at ${width} px`).toPass();
    // A wheel at the end of the cards moves nothing else.
    expect(await bench.evaluate(() => window.scrollY)).toBe(0);
  }
});
