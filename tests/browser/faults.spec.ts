import type { Page } from '@playwright/test';
import { expect, goToPlace, headline, jobName, openCard, openExample, openPart, test } from './bench.ts';

const KEY = 'coverwright.open-job.v1';

const width = async (page: Page) => (await openCard(page, 'book')).getByLabel('Width', { exact: true });

/** Reloads the page with something as the quick copy of the open job, and waits until it stands. */
async function reloadWith(page: Page, kept: string): Promise<void> {
  await page.evaluate(
    ([key, text]) =>
      window.addEventListener('pagehide', () => {
        sessionStorage.clear();
        localStorage.setItem(key!, text!);
      }),
    [KEY, kept],
  );
  await page.reload();
  await expect(jobName(page)).toBeEnabled();
}

test('an open job that was kept damaged stops nothing', async ({ bench }) => {
  // Without locks there is no journal, from which it would be made good.
  await bench.addInitScript(() => Object.defineProperty(navigator, 'locks', { value: undefined }));
  const markup = '<img src=x onerror="window.ran=1">';
  const CORRUPT = [
    '{"document":{"name":"Cut o',
    'null',
    '{"document":[],"typed":{}}',
    '{"document":{},"typed":{}}',
    JSON.stringify({ document: { version: 3, name: markup, book: 'thick', leather: [] }, typed: {}, mark: 'noon' }),
    JSON.stringify({ document: { version: 1e9, name: 7 }, typed: { 'book.width_mm': { text: markup, unit: 'mm' } } }),
    `{"document":{"version":3,"__proto__":{"name":"x"},"book":{"width_mm":1e999}},"typed":{},"place":{"id":"a","revision":1,"isSaved":true},"mark":9e15}`,
  ];
  for (const kept of CORRUPT) {
    await reloadWith(bench, kept);
    await expect(headline(bench), kept).not.toHaveText('');
    await expect(bench.getByText('Coverwright stopped')).toBeHidden();
  }
  expect(await bench.evaluate(() => 'ran' in window)).toBe(false);
  await openExample(bench, 'choir book');
  await (await width(bench)).fill('151');
  await bench.reload();
  await expect(await width(bench)).toHaveValue('151');
});

test('a clock that is fifty years off, in either direction, costs and forks nothing', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const choirBooks = bench.locator('.job-card').filter({ hasText: 'Choir book' });
  const years = [2026, 2076, 2026, 1976];
  for (const [i, year] of years.entries()) {
    await bench.clock.setSystemTime(new Date(`${year}-11-28T12:00:00Z`));
    await bench.reload();
    if (i > 0) await expect(await width(bench)).toHaveValue(new RegExp(`^${150 + i}`));
    await (await width(bench)).fill(`${151 + i}`);
    await (await width(bench)).blur();
    await goToPlace(bench, 'Shelf');
    await expect(choirBooks, `${year}`).toHaveText([new RegExp(`${151 + i} mm ×`)]);
    if (year !== 2076) continue;
    // Saved by the clock that is ahead, another job stays the last saved of all; the one gone on with is opened all the same.
    await openExample(bench, 'shore guide');
    await (await width(bench)).fill('160');
    await goToPlace(bench, 'Shelf');
    await expect(bench.locator('.job-card')).toHaveCount(2);
    await choirBooks.getByRole('button', { name: 'Open', exact: false }).first().click();
    await expect(jobName(bench)).toHaveText('Choir book');
  }
  await expect(bench.getByText(/window has|window was|job of its own|browser has deleted|another state/)).toHaveCount(
    0,
  );
  const undo = bench.getByRole('button', { name: 'Undo', exact: true });
  for (const before of ['153', '152']) {
    await undo.click();
    await expect(await width(bench)).toHaveValue(new RegExp(`^${before}`));
  }
});

test('with forced colours what is chosen still shows, and with reduced motion nothing moves', async ({ bench }) => {
  await bench.emulateMedia({ forcedColors: 'active', reducedMotion: 'no-preference' });
  /** Elements that would move. */
  const moving = () =>
    bench.evaluate(() =>
      [...document.querySelectorAll('*')]
        .filter((element) => {
          const { animationName, animationDuration, transitionDuration } = getComputedStyle(element);
          return /[1-9]/.test(transitionDuration) || (animationName !== 'none' && /[1-9]/.test(animationDuration));
        })
        .map(({ className }) => String(className)),
    );
  /** How the chosen one of some looks, and how the others do. */
  const looks = async (all: string) => {
    const found = bench.locator(all).filter({ visible: true });
    await expect(found.and(bench.locator('[aria-pressed="true"], [aria-current]'))).toHaveCount(1);
    return found.evaluateAll((elements) =>
      elements.map((element) => {
        // Not its colours: they are the ones that are forced.
        const { borderBottomWidth, outlineStyle, textDecorationLine, textDecorationThickness } =
          getComputedStyle(element);
        const isChosen = element.matches('[aria-pressed="true"], [aria-current]');
        return [
          isChosen,
          [borderBottomWidth, outlineStyle, textDecorationLine, textDecorationThickness].join(),
        ] as const;
      }),
    );
  };
  const expectShown = async (all: string): Promise<void> => {
    await expect(async () => {
      const found = await looks(all);
      const other = new Set(found.filter(([isChosen]) => !isChosen).map(([, look]) => look));
      for (const [isChosen, look] of found) if (isChosen) expect(other, all).not.toContain(look);
    }).toPass({ timeout: 45_000 });
  };
  await expectShown('nav[aria-label="Places"] a');
  await goToPlace(bench, 'Shelf');
  await expectShown('[aria-label="Order"] button');
  await openPart(bench, 'Supplies');
  await expectShown('nav[aria-label="Parts of the workbench"] a');
  await goToPlace(bench, 'Strips');
  await bench.locator('.strip-label').first().click();
  await expectShown('.strip-label');

  // What moves for others is what is asked for here.
  await expect.poll(moving).not.toEqual([]);
  await bench.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
  await expect.poll(moving).toEqual([]);
  await goToPlace(bench, 'Cover');
  await bench.getByRole('button', { name: 'Look at the edges' }).click();
  await expect(bench.locator('.loupe').first()).toBeVisible();
  await expect.poll(moving).toEqual([]);
});
