import type { Locator, Page } from '@playwright/test';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { patched } from '../../src/core/job/jobDocument.ts';
import { defined } from '../defined.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, openDocument, openExample, openPart, renameJob, test } from './bench.ts';

/** The making mode, entered by its address as by a link. */
async function openSteps(page: Page): Promise<Locator> {
  await page.evaluate(() => {
    window.location.hash = '#workbench/steps';
  });
  const mode = page.locator('.making-steps');
  await expect(mode.locator('h2')).toBeFocused();
  return mode;
}

const done = (mode: Locator): Locator => mode.locator('.steps-bar .main');
const list = (mode: Locator): Locator => mode.getByRole('navigation', { name: 'All steps' });
const ticked = (mode: Locator): Locator => list(mode).getByRole('button', { name: /, done/ });

test.use({ viewport: { width: 1440, height: 900 } });

test('each step has its number, a picture drawn from the job and one filled button, up to the end', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const work = await openPart(bench, 'Order of work');
  await work.getByRole('link', { name: 'Work step by step' }).click();
  const mode = bench.locator('.making-steps');
  const count = 10;
  await expect(list(mode).locator('ol button')).toHaveCount(count);
  for (let i = 1; i <= count; i++) {
    await expect(mode.getByText(`Step ${i} of ${count}`)).toBeVisible();
    await expect(mode.locator('h2')).toHaveText(new RegExp(`^${i}\\. `));
    for (const picture of await mode.locator('.step-picture svg').all()) await expect(picture).toBeVisible();
    expect(await mode.locator('.step-picture svg path').count()).toBeGreaterThan(1);
    await expect(mode.locator('.main')).toHaveCount(1);
    await expect(mode.locator('.main')).toHaveText(i < count ? 'Done, next' : 'Done');
    await done(mode).click();
  }
  await expect(mode.locator('h2')).toHaveText(`All ${count} steps are done`);
  await expect(ticked(mode)).toHaveCount(count);
  await mode.getByRole('link', { name: 'Leave' }).click();
  await expect(bench).toHaveURL(/#workbench\/work$/);
});

test('the page of the order of work shows every step as a card with its picture, and each caution in full once', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const work = await openPart(bench, 'Order of work');
  const cards = work.locator('.work-cards > li');
  await expect(cards).toHaveCount(10);
  for (const card of await cards.all()) await expect(card.getByRole('img').first()).toBeVisible();
  const card = (name: string): Locator => cards.filter({ has: bench.getByRole('heading', { name }) });
  await expect(card('Measure and draft').getByText('cut away from the hand')).toBeVisible();
  await expect(card('Assemble').getByText('vapour of solvent cement is flammable')).toBeVisible();
  await expect(card('Cut the leather').getByText('cut away from the hand')).toBeHidden();
  await card('Cut the leather').locator('summary').click();
  await expect(card('Cut the leather').getByText('cut away from the hand')).toBeVisible();
  await expect(work.getByText(/laser/i)).toHaveCount(0);
  await expectAccessible(bench, '.work-cards');
});

test('a step that cannot be done says so, with its figure', async ({ bench }) => {
  const document = patched(EXAMPLE_JOBS[0].document, [
    { path: 'pockets.depth_mm', value: 160 },
    { path: 'book.foldBack_deg', value: 60 },
  ]);
  await openDocument(bench, { ...document, name: 'Deep pockets' });
  const mode = await openSteps(bench);
  await bench.keyboard.press('9');
  await expect(mode.locator('.step-trouble')).toHaveText(/have to bend back 8\d degrees, more than the 60 degrees/);
});

test('a caution is written out where it is first due, and opened by its sign afterwards', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  const knife = mode.getByText('cut away from the hand');
  await expect(knife).toBeVisible();
  await bench.keyboard.press('3');
  await expect(mode.locator('h2')).toHaveText('3. Cut the leather');
  await expect(knife).toBeHidden();
  await mode.locator('summary', { hasText: 'Knife and straight-edge' }).click();
  await expect(knife).toBeVisible();
});

/** Today as the page prints it. */
const today = (page: Page): Promise<string> =>
  page.evaluate(() => new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium' }).format(new Date()));

test('ticks with their day and the step that was left survive a reload, undo and a new name', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  const day = await today(bench);
  for (let i = 0; i < 3; i++) await done(mode).click();
  await expect(ticked(mode)).toHaveText([/^1\. /, /^2\. /, new RegExp(`^3\\. Cut the leather, done ${day}$`)]);
  // Taking an edit back takes back no work.
  await mode.getByRole('link', { name: 'Leave' }).click();
  const work = bench.locator('.workbench-panel');
  await work.locator('summary', { hasText: 'Your order' }).click();
  await work.getByRole('radio', { name: 'after cementing' }).check();
  await expect(work.locator('.work-cards > li')).toHaveCount(11);
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(work.locator('.work-cards > li')).toHaveCount(10);
  await openSteps(bench);
  await bench.reload();
  await expect(mode.getByText('Step 4 of 10')).toBeVisible();
  await expect(ticked(mode)).toHaveCount(3);
  // Jobs that are equal are one on the shelf, and the next one will have the first ticks of this.
  await bench.keyboard.press('1');
  await mode.getByRole('button', { name: 'Take the tick away' }).click();
  await expect(ticked(mode)).toHaveCount(2);
  await bench.keyboard.press('3');
  await expect(mode.locator('.step-text')).toContainText(`Done ${day}.`);

  // The example itself is as it was: the ticked one stands on the shelf.
  await openExample(bench, 'tide ledger');
  await openSteps(bench);
  await expect(mode.getByText('Step 1 of 10')).toBeVisible();
  await expect(ticked(mode)).toHaveCount(0);

  for (let i = 0; i < 4; i++) await done(mode).click();
  await renameJob(bench, 'Harbour ledger');
  await expect
    .poll(() => bench.evaluate(() => localStorage.getItem('coverwright.steps.v1')))
    .toMatch(/"key":"shelf:[^"]+","at":"punch"/);
  await bench.reload();
  await expect(mode.getByText('Step 5 of 10')).toBeVisible();
  await expect(ticked(mode)).toHaveCount(4);

  await mode.getByRole('button', { name: 'Start again' }).click();
  await mode.getByRole('button', { name: 'Keep the ticks' }).click();
  await expect(ticked(mode)).toHaveCount(4);
  await mode.getByRole('button', { name: 'Start again' }).click();
  await mode.getByRole('button', { name: 'Start again from step 1' }).click();
  await expect(ticked(mode)).toHaveCount(0);
  await expect(mode.getByText('Step 1 of 10')).toBeVisible();
});

test('ticks go with the job in its file, and stand on its page', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const document = await bench.evaluate(
    () => JSON.parse(localStorage.getItem('coverwright.open-job.v1') ?? '').document,
  );
  await openDocument(bench, { ...document, name: 'From a file', made: { measure: null, cut: '2026-03-05' } });
  const work = await openPart(bench, 'Order of work');
  const cards = work.locator('.work-cards > li');
  await expect(cards.filter({ hasText: 'Done 5 Mar 2026.' })).toContainText('Cut the leather');
  await expect(cards.filter({ hasText: 'Done.' })).toContainText('Measure and draft');
  const mode = await openSteps(bench);
  await expect(ticked(mode)).toHaveText([/, done$/, /, done 5 Mar 2026$/]);
  await expect(mode.locator('h2')).toHaveText('2. Card trial');
});

test('ticks that an earlier version kept in the browser come into the job, without a day', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  await bench.evaluate(() => {
    const said = { figures: {}, words: '' };
    const jobs = [{ key: 'name:Tide ledger', at: 'edges', done: { measure: said, cut: said } }];
    localStorage.setItem('coverwright.steps.v1', JSON.stringify({ jobs }));
  });
  await bench.reload();
  const mode = await openSteps(bench);
  await expect(mode.locator('h2')).toHaveText(/^4\. /);
  await expect(ticked(mode)).toHaveText([/^1\. .*, done/, /^3\. .*, done/]);
  await bench.keyboard.press('1');
  await mode.getByRole('button', { name: 'Take the tick away' }).click();
  await expect(ticked(mode)).toHaveCount(1);
  await bench.reload();
  await expect(ticked(mode)).toHaveText([/^3\. /]);
});

test('a step that is done in one window is done in the other, and both go on with one job', async ({
  bench,
  context,
}) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  await done(mode).click();
  const kept = (): Promise<string | null> => bench.evaluate(() => localStorage.getItem('coverwright.open-job.v1'));
  await expect.poll(kept).toContain('"isSaved":true');
  const other = await context.newPage();
  await other.goto('#workbench/steps');
  const theirs = other.locator('.making-steps');
  await expect(ticked(theirs)).toHaveCount(1);
  await done(mode).click();
  await expect(ticked(theirs)).toHaveCount(2);
  await other.keyboard.press('3');
  await done(theirs).click();
  await expect(ticked(mode)).toHaveCount(3);
  for (const page of [bench, other]) await expect(page.getByText(/Another window|job of its own/)).toHaveCount(0);
});

test.describe('the order of work', () => {
  /** Names of the steps, in their order. */
  const names = (work: Locator): Locator => work.locator('.work-cards h4');
  const unfold = (work: Locator): Promise<void> => work.locator('summary', { hasText: 'Your order' }).click();

  test('is chosen in the panel, by keyboard too, is followed by the quote and survives a reload', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    const work = await openPart(bench, 'Order of work');
    await expect(names(work)).toHaveCount(10);
    await unfold(work);
    await work.getByRole('radio', { name: 'after cementing' }).check();
    await expect(names(work)).toHaveText([
      /Measure/,
      /Card trial/,
      /Cut the leather/,
      /Skive/,
      /Cement the layers/,
      /Assemble/,
      /Cut the slits/,
      /Lace/,
      /Burnish edges and dress/,
      /Load/,
      /Close/,
    ]);
    await expect(work.locator('.work-cards')).toContainText('Scribe the seam line 6.35 mm from the edge.');
    await work.getByRole('checkbox', { name: 'Dye the leather' }).focus();
    await bench.keyboard.press('Space');
    await expect(names(work).filter({ hasText: 'Dye the leather' })).toHaveCount(1);
    // Dye is dried and sealed, unless the maker says otherwise.
    for (const step of ['Dry the leather', 'Dress the leather'])
      await expect(work.getByRole('checkbox', { name: step })).toBeChecked();
    await work.getByRole('checkbox', { name: 'Dry the leather' }).uncheck();
    await expect(names(work).filter({ hasText: 'Dry the leather' })).toHaveCount(0);
    await work.getByLabel('Corners clipped by').fill('3');
    await expect(work.locator('.work-cards')).toContainText('mark 3 mm along both edges');
    await expect(names(work)).toHaveCount(13);

    const quote = await openPart(bench, 'Quote');
    await expect(quote.getByRole('rowheader', { name: 'Dye the leather' })).toBeVisible();
    await expect(quote.getByRole('rowheader', { name: 'Dry the leather' })).toHaveCount(0);
    await quote.locator('summary', { hasText: 'Working time' }).click();
    await expect(quote.getByLabel('Dye', { exact: true })).toBeVisible();

    await bench.reload();
    await openPart(bench, 'Order of work');
    await expect(names(work)).toHaveCount(13);
  });

  test('is taken back by undo, a choice at a time', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    const work = await openPart(bench, 'Order of work');
    await unfold(work);
    await work.getByRole('checkbox', { name: 'Dye the leather' }).check();
    await work.getByRole('radio', { name: 'after cementing' }).check();
    await expect(names(work)).toHaveCount(14);
    const undo = bench.getByRole('button', { name: 'Undo', exact: true });
    await undo.click();
    await expect(work.getByRole('radio', { name: 'before joining' })).toBeChecked();
    await expect(names(work)).toHaveCount(13);
    await undo.click();
    await expect(work.getByRole('checkbox', { name: 'Dye the leather' })).not.toBeChecked();
    await expect(names(work)).toHaveCount(10);
  });

  test('refuses a clip that leaves too little, and says how much is allowed', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    const work = await openPart(bench, 'Order of work');
    await unfold(work);
    await work.getByLabel('Corners clipped by').fill('9');
    await expect(work.getByText(/it must be at most 8\.2 mm/)).toBeVisible();
  });

  test('fits a telephone, and meets WCAG 2.2 AA', async ({ bench }) => {
    await bench.setViewportSize({ width: 390, height: 844 });
    await openExample(bench, 'tide ledger');
    const work = await openPart(bench, 'Order of work');
    await work.getByRole('button', { name: 'Change the order' }).click();
    await expect(work.getByRole('radio', { name: 'before joining' })).toBeFocused();
    const wide = await bench.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await expectAccessible(bench, '.workbench-panel form');
  });
});

test('a done step that has changed says so and what, and the step that was left is found by its name', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  for (let i = 0; i < 6; i++) await done(mode).click();
  await expect(mode.locator('h2')).toHaveText('7. Lace the seam');
  await mode.getByRole('link', { name: 'Leave' }).click();
  const construction = await openPart(bench, 'Construction');
  await construction.getByRole('radio', { name: 'a strap' }).check();
  await openSteps(bench);
  // Fitting the strap comes before.
  await expect(mode.locator('h2')).toHaveText('8. Lace the seam');
  const changed = mode.getByRole('status').getByRole('button', { name: '3. Cut the leather' });
  await expect(mode.getByRole('status')).toContainText('Changed since done:');
  await changed.click();
  await expect(mode.locator('.step-changed')).toHaveText(/Changed since you did it:\s*Closure strap: .* mm, new\./);
  await expectAccessible(bench, '.making-steps');
  await mode.getByRole('button', { name: 'Done again, next' }).click();
  await expect(changed).toHaveCount(0);
  await expect(ticked(mode)).toHaveCount(6);
});

test('keys work while the focus is in the mode: arrows move, a digit goes to its step, Enter marks it as done', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  const title = mode.locator('h2');
  await bench.keyboard.press('ArrowRight');
  await expect(title).toHaveText(/^2\./);
  await bench.keyboard.press('ArrowLeft');
  await bench.keyboard.press('ArrowLeft');
  await expect(title).toHaveText(/^1\./);
  await bench.keyboard.press('0');
  await expect(title).toHaveText(/^10\./);
  await expect(ticked(mode)).toHaveCount(0);
  await bench.keyboard.press('5');
  await expect(title).toHaveText(/^5\./);
  await bench.keyboard.press('Enter');
  await expect(title).toHaveText(/^6\./);
  await expect(ticked(mode)).toHaveText([/^5\. /]);
  // On a button Enter presses the button, and nothing else.
  await mode.getByRole('button', { name: 'Back' }).focus();
  await bench.keyboard.press('Enter');
  await expect(title).toHaveText(/^5\./);
  await expect(ticked(mode)).toHaveCount(1);
  await mode.getByRole('button', { name: 'Take the tick away' }).click();
  await expect(ticked(mode)).toHaveCount(0);
});

test.describe('with a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  /** Drags a finger over the page. */
  async function swipe(page: Page, by: { x: number; y: number }): Promise<void> {
    const session = await page.context().newCDPSession(page);
    const [x, y] = [200, 400];
    const at = (share: number) => [{ x: x + share * by.x, y: y + share * by.y }];
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
    for (const share of [0.25, 0.5, 0.75, 1])
      await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(share) });
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }

  test('a swipe across goes to the next step and back, one down only scrolls', async ({ bench }) => {
    await openExample(bench, 'tide ledger');
    const mode = await openSteps(bench);
    await swipe(bench, { x: -120, y: 10 });
    await expect(mode.locator('h2')).toHaveText(/^2\./);
    await swipe(bench, { x: -30, y: -150 });
    await swipe(bench, { x: 120, y: 0 });
    await expect(mode.locator('h2')).toHaveText(/^1\./);
    await expect(ticked(mode)).toHaveCount(0);
  });

  test('every control is large and in sight: upright, across, zoomed and with large letters', async ({ bench }) => {
    await openExample(bench, 'choir book');
    const mode = await openSteps(bench);
    for (const [width, height, letters] of [
      [390, 844, '100%'],
      [844, 390, '100%'],
      [390, 844, '200%'],
      [320, 256, '100%'],
    ] as const) {
      await bench.setViewportSize({ width, height });
      await bench.evaluate((size) => {
        document.documentElement.style.fontSize = size;
      }, letters);
      for (const key of ['1', '3', '7', '9']) {
        await mode.locator('h2').focus();
        await bench.keyboard.press(key);
        await expect(mode.locator('h2')).toHaveText(new RegExp(`^${key}\\.`));
        const wide = await bench.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(wide, `${width} x ${height}, step ${key}`).toBeLessThanOrEqual(0);
        for (const control of await mode.locator('button:visible, a:visible, summary:visible').all()) {
          const { height: tall } = defined(await control.boundingBox());
          expect(tall, (await control.textContent()) ?? '').toBeGreaterThanOrEqual(56);
        }
        // Without a scroll.
        for (const name of ['Back', /^Done/])
          await expect(mode.locator('.steps-bar').getByRole('button', { name })).toBeInViewport({ ratio: 1 });
      }
      await mode.getByRole('button', { name: 'All steps' }).click();
      await list(mode).getByRole('button', { name: '2. Card trial' }).click();
      await expect(mode.locator('h2')).toHaveText('2. Card trial');
      await expect(list(mode)).toBeHidden();
    }
  });
});

/** Puts a screen lock in the place of the browser's that can be watched and refused. */
const watchedLock = (isRefused: boolean): void => {
  const asked = { held: 0, requests: 0 };
  Object.assign(window, { asked });
  Object.defineProperty(navigator, 'wakeLock', {
    value: {
      request: async () => {
        asked.requests++;
        if (isRefused) throw new DOMException('refused', 'NotAllowedError');
        asked.held++;
        const lock = Object.assign(new EventTarget(), {
          released: false,
          release: async () => {
            if (lock.released) return;
            lock.released = true;
            asked.held--;
            lock.dispatchEvent(new Event('release'));
          },
        });
        document.addEventListener('visibilitychange', () => document.hidden && lock.release());
        return lock;
      },
    },
  });
};

const asked = (page: Page) => page.evaluate(() => (window as unknown as { asked: unknown }).asked);

test('the screen is kept awake while the mode is open, again once the page is seen again, and not afterwards', async ({
  bench,
}) => {
  await bench.addInitScript(watchedLock, false);
  await bench.reload();
  expect(await asked(bench)).toEqual({ held: 0, requests: 0 });
  const mode = await openSteps(bench);
  await expect.poll(() => asked(bench)).toMatchObject({ held: 1 });
  for (const [state, held] of [
    ['hidden', 0],
    ['visible', 1],
    ['visible', 1],
  ] as const) {
    await bench.evaluate((now) => {
      Object.defineProperty(document, 'visibilityState', { value: now, configurable: true });
      Object.defineProperty(document, 'hidden', { value: now === 'hidden', configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
    await expect.poll(() => asked(bench)).toMatchObject({ held });
  }
  await expect(mode.getByText('This browser lets the screen sleep.')).toBeHidden();
  await mode.getByRole('link', { name: 'Leave' }).click();
  await expect.poll(() => asked(bench)).toMatchObject({ held: 0 });
});

test('a browser that refuses to keep the screen awake, or to keep the ticks, is named', async ({ bench }) => {
  await bench.addInitScript(watchedLock, true);
  await bench.reload();
  const mode = await openSteps(bench);
  await expect(mode.getByText('This browser lets the screen sleep.')).toBeVisible();
  await bench.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await done(mode).click();
  await expect(mode.getByText('This browser does not keep where you stop.')).toBeVisible();
  await expect(ticked(mode)).toHaveCount(1);
});

test('a job that is renamed after the page was loaded again keeps its ticks', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const mode = await openSteps(bench);
  for (let i = 0; i < 2; i++) await done(mode).click();
  await bench.reload();
  await expect(ticked(mode)).toHaveCount(2);
  await renameJob(bench, 'Mill ledger');
  await expect
    .poll(() => bench.evaluate(() => localStorage.getItem('coverwright.steps.v1')))
    .toMatch(/"key":"shelf:[^"]+","at":"cut"/);
  await expect(ticked(mode)).toHaveCount(2);
});
