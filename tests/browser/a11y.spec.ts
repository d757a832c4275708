import type { Page } from '@playwright/test';
import { expectAccessible } from './accessibility.ts';
import {
  chooseInMenu,
  expect,
  exploreSettles,
  goToPlace,
  headline,
  openCard,
  openExample,
  openJobMenu,
  openPart,
  test,
} from './bench.ts';

const CARDS = ['book', 'leather', 'seam', 'cut', 'checks', 'sure'] as const;

/** Unfolds whatever is folded on the page as it is shown. */
async function unfoldAll(page: Page): Promise<void> {
  await page.locator('details').evaluateAll((all) => {
    for (const details of all) (details as HTMLDetailsElement).open = true;
  });
}

/** A cover that fails, with a figure that cannot be read. */
async function spoil(page: Page): Promise<void> {
  await openExample(page, 'choir book');
  await (await openCard(page, 'cut')).getByLabel('Outside width').fill('372');
  await (await openCard(page, 'book')).getByLabel('Height', { exact: true }).fill('tall');
  await expect(headline(page)).toHaveAttribute('data-verdict', 'fails');
}

test.describe('with the scene', () => {
  test.use({ look: 'unfilled' });

  test('the cover meets WCAG 2.2 AA, with every part unfolded and a cover that fails', async ({ bench }) => {
    await spoil(bench);
    for (const card of CARDS) await openCard(bench, card);
    await expect(bench.getByRole('application')).toBeVisible();
    await unfoldAll(bench);
    await expectAccessible(bench);
  });
});

test('so do the strips, Explore and parts of the workbench', async ({ bench }) => {
  test.slow();
  await spoil(bench);
  await goToPlace(bench, 'Strips');
  await bench.getByRole('button', { name: /^front overrun/ }).click();
  await expect(bench.locator('.tuner')).toContainText('front overrun');
  await expectAccessible(bench);
  await goToPlace(bench, 'Explore');
  await exploreSettles(bench);
  await unfoldAll(bench);
  await expectAccessible(bench);
  // All of them are judged at the width of a telephone (workbench.spec.ts).
  for (const part of ['Construction', 'Leather owned', 'Quote'] as const) {
    await expect((await openPart(bench, part)).locator('.panel-parts')).toBeVisible();
    await unfoldAll(bench);
    await expectAccessible(bench, '.workbench-panel');
  }
});

test('so do the menu of the job, the search and the new cover dialog', async ({ bench }) => {
  await openJobMenu(bench);
  await expectAccessible(bench);
  await bench.keyboard.press('Escape');
  await bench.getByRole('button', { name: 'Find', exact: true }).click();
  await expect(bench.getByRole('dialog').getByRole('option').first()).toBeVisible();
  await expectAccessible(bench, 'dialog');
  await bench.keyboard.press('Escape');
  await chooseInMenu(bench, 'New cover');
  await bench.getByRole('button', { name: 'Start this cover' }).click();
  await expect(bench.getByRole('dialog').getByLabel('Width')).toHaveAccessibleDescription(/Needed/);
  await expectAccessible(bench, 'dialog');
});

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('so do the cover, its cards, Explore and the new cover dialog', async ({ bench }) => {
    for (const card of CARDS) await openCard(bench, card);
    await expectAccessible(bench);
    await goToPlace(bench, 'Explore');
    await exploreSettles(bench);
    await expectAccessible(bench);
    await chooseInMenu(bench, 'New cover');
    await expect(bench.getByRole('dialog')).toBeVisible();
    await expectAccessible(bench, 'dialog');
  });
});
