import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { nth } from '../nth.ts';
import {
  chooseInMenu,
  expect,
  goToPlace,
  headline,
  openDocument,
  openPart,
  PARTS,
  PLACES,
  setUnits,
  stripSettles,
  test,
} from './bench.ts';

const TELEPHONE = { width: 390, height: 844 };
/** Of the height, what the keyboard of a telephone leaves. */
const ABOVE_KEYBOARD = 508;
/** The same of a small one, or of a keyboard with a row of suggestions. */
const LOW_KEYBOARD = 400;
/** WCAG 2.2, 2.5.5 Target Size (Enhanced): 44 by 44 CSS pixels. */
const TARGET = 44;

const measureField = (page: Page, name: string): Locator => page.locator(`[data-path="book.${name}_mm"]`);
const MEASURES = ['width', 'height', 'thickness', 'boardThickness'] as const;

async function boxOf(what: Locator) {
  const { y, height } = (await what.boundingBox())!;
  return { top: y, bottom: y + height, height };
}

/** The choir book with an outside that is too narrow to close. */
async function tooSmall(page: Page): Promise<void> {
  const document = JSON.parse(await readFile('public/jobs/choir-book.json', 'utf8'));
  await openDocument(page, { ...document, pattern: { outsideWidth_mm: 370 } });
  await expect(headline(page)).toHaveAttribute('data-verdict', 'fails');
}

/** Whether a press in the middle of something reaches it. */
const isReached = (what: Locator): Promise<boolean> =>
  what.evaluate((element) => {
    const { x, y, width, height } = element.getBoundingClientRect();
    const hit = document.elementFromPoint(x + width / 2, y + height / 2);
    return hit !== null && (element.contains(hit) || hit.contains(element));
  });

test.describe('on a telephone', () => {
  test.use({ viewport: TELEPHONE, hasTouch: true, isMobile: true });

  test('the first screen holds the verdict, the picture and the four measures', async ({ bench }) => {
    await stripSettles(bench);
    await expect(measureField(bench, 'width')).toBeVisible();
    expect((await boxOf(bench.locator('.page-header'))).height).toBeLessThan(60);
    expect((await boxOf(bench.locator('.headline'))).height).toBeLessThan(2 * 24);
    expect((await boxOf(bench.locator('.next-thing'))).height).toBeLessThan(1.3 * TARGET);
    const picture = (await boxOf(bench.locator('.stage'))).height / TELEPHONE.height;
    expect(picture).toBeGreaterThan(0.35);
    expect(picture).toBeLessThan(0.45);
    const thumbs = await boxOf(bench.locator('.thumb-row'));
    expect(thumbs.bottom).toBe(TELEPHONE.height);
    for (const name of MEASURES) {
      expect(await isReached(measureField(bench, name)), name).toBe(true);
      expect((await boxOf(measureField(bench, name))).bottom, name).toBeLessThanOrEqual(thumbs.top);
    }
    const caption = await boxOf(bench.locator('.stage-view figcaption'));
    expect(caption.bottom).toBeLessThanOrEqual((await boxOf(bench.locator('.stage-controls'))).top + 1);
  });

  test('a remedy stands in one row with its button', async ({ bench }) => {
    await bench.locator('#card-cut > summary').tap();
    await bench.locator('[data-path="pattern.outsideWidth_mm"]').fill('370');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
    const row = bench.locator('.next-thing');
    await expect(row.getByRole('button', { name: 'Make this change' })).toBeVisible();
    expect((await boxOf(row)).height).toBeLessThan(1.5 * TARGET);
  });

  test('the verdict stays in sight while a measure is typed above the keyboard', async ({ bench }) => {
    await expect(measureField(bench, 'width')).toBeVisible();
    for (const name of MEASURES) {
      const field = measureField(bench, name);
      await bench.setViewportSize(TELEPHONE);
      await field.tap();
      await bench.setViewportSize({ ...TELEPHONE, height: ABOVE_KEYBOARD });
      await field.pressSequentially('1');
      await expect.poll(() => isReached(field)).toBe(true);
      const said = await boxOf(bench.locator('.verdict-said'));
      expect(said.top).toBeGreaterThanOrEqual(0);
      expect(said.height).toBeLessThan(ABOVE_KEYBOARD / 3);
      expect((await boxOf(field)).top).toBeGreaterThanOrEqual(said.bottom);
    }
  });

  test('whoever chooses inches first is still offered a cover for the own book', async ({ bench }) => {
    await setUnits(bench, 'in');
    await expect(bench.getByRole('button', { name: 'A cover for your book' })).toBeVisible();
  });

  test('a failing verdict is said in two lines, and what the picture allows beside its run', async ({ bench }) => {
    await tooSmall(bench);
    expect((await boxOf(headline(bench))).height).toBeLessThan(2.5 * 23);
    const run = bench.locator('.run', { hasText: 'Open the book' });
    await expect(run.locator('output')).toHaveText(/^stays open/);
    expect((await boxOf(run.locator('output'))).height).toBeLessThan(2 * 15);
  });

  test('a wrong entry stays in sight above the keyboard', async ({ bench }) => {
    const field = measureField(bench, 'width');
    await field.tap();
    await bench.setViewportSize({ ...TELEPHONE, height: LOW_KEYBOARD });
    await field.fill('9000');
    await expect(bench.locator('.issue-list')).toBeVisible();
    const issue = field.locator('xpath=..').locator('.issue');
    await expect(issue).toBeInViewport({ ratio: 1 });
    expect(await isReached(field)).toBe(true);
  });

  test('the note of a link leaves the header its row', async ({ bench }) => {
    await chooseInMenu(bench, 'Share link');
    const note = bench.locator('.page-header [role="status"]');
    await expect(note).toBeVisible();
    const find = await boxOf(bench.getByRole('button', { name: 'Find' }));
    expect(find.bottom).toBeLessThanOrEqual((await boxOf(note)).top);
  });

  test('the part of the workbench that is open is named in sight', async ({ bench }) => {
    await bench.goto('#workbench/quote');
    await expect(bench.getByRole('link', { name: 'Quote', exact: true })).toBeInViewport({ ratio: 1 });
  });

  test('the first step draws the book closed though its cover does not close', async ({ bench }) => {
    await tooSmall(bench);
    await bench.goto('#workbench/steps');
    const text = bench.locator('.step-picture').getByText('150 mm', { exact: true });
    await expect(text).toBeVisible();
    const { x, width } = (await text.boundingBox())!;
    const picture = (await bench.locator('.step-picture svg').boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(picture.x);
    expect(x + width).toBeLessThanOrEqual(picture.x + picture.width);
  });

  test('the loupe under the room left comes into sight whole', async ({ bench }) => {
    await bench.getByRole('button', { name: 'Look at the edges' }).tap();
    const close = bench.locator('.loupe').getByRole('button', { name: 'Close' });
    await expect(close).toBeVisible();
    await expect.poll(() => isReached(close)).toBe(true);
    const thumbs = await boxOf(bench.locator('.thumb-row'));
    expect((await boxOf(close)).bottom).toBeLessThanOrEqual(thumbs.top);
  });

  test('the number pad has keys for fractions where inches are typed', async ({ bench }) => {
    const field = measureField(bench, 'height');
    await field.tap();
    await expect(field).toHaveAttribute('inputmode', 'decimal');
    await expect(bench.getByRole('button', { name: '3/8', exact: true })).toHaveCount(0);
    await setUnits(bench, 'in');
    await field.tap();
    await field.fill('9');
    await bench.getByRole('button', { name: '3/8', exact: true }).tap();
    await expect(field).toHaveValue('9 3/8');
    await expect(field).toBeFocused();
    await expect(headline(bench)).toBeVisible();
    // At the caret, not at the end.
    await field.evaluate((input: HTMLInputElement) => input.setSelectionRange(0, 1));
    await bench.getByRole('button', { name: '/', exact: true }).tap();
    await expect(field).toHaveValue('/ 3/8');
    await measureField(bench, 'width').tap();
    await expect(measureField(bench, 'width')).toBeFocused();
    await expect(bench.getByRole('button', { name: '3/8', exact: true })).toHaveCount(1);
  });

  test('every control of every place is a target for a finger', async ({ bench }) => {
    test.slow();
    const small: string[] = [];
    const look = async (place: string): Promise<void> => {
      await bench.waitForTimeout(300);
      await bench.locator('details').evaluateAll((all) => {
        for (const details of all) (details as HTMLDetailsElement).open = true;
      });
      await bench.waitForTimeout(300);
      small.push(...(await bench.evaluate(smallTargets, TARGET)).map((each) => `${place}: ${each}`));
    };
    await stripSettles(bench);
    for (const place of PLACES.filter((each) => each !== 'Customer' && each !== 'Workbench')) {
      await goToPlace(bench, place);
      await look(place);
    }
    for (const part of PARTS) {
      await openPart(bench, part);
      await look(part);
    }
    await goToPlace(bench, 'Customer');
    await look('Customer');
    expect(small).toEqual([]);
  });
});

/** In the page: visible controls smaller than a target. A link within a sentence is as high as its line (2.5.5, inline). */
function smallTargets(least: number): string[] {
  const CONTROLS = 'button, a[href], input, select, textarea, summary, [role="slider"]';
  return [...document.querySelectorAll<HTMLElement>(CONTROLS)].flatMap((element) => {
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return [];
    if (element.closest('[inert]') !== null || element.matches('input[type="file"], .term')) return [];
    const pressed = element.matches('input[type="radio"], input[type="checkbox"]')
      ? (element.closest('label') ?? element)
      : element;
    // A handle is a line; its tab is the target, with what is put round it.
    const tab = pressed.querySelector('.handle-tab');
    const { width, height } =
      tab === null
        ? pressed.getBoundingClientRect()
        : (({ width, height }) => ({ width: Number.parseFloat(width), height: Number.parseFloat(height) }))(
            getComputedStyle(tab, '::after'),
          );
    if (width <= 1 || height <= 1 || (height >= least - 0.5 && width >= least - 0.5)) return [];
    const isInline =
      element.matches('a') &&
      element.parentElement?.matches('p, li') &&
      element.parentElement.textContent !== element.textContent;
    if (isInline) return [];
    // On the strips a label stands where its part is, to scale (2.5.5, essential); 24 px are left it (2.5.8).
    if (pressed.matches('.strip-label') && height >= 24 && width >= 24) return [];
    return [
      `${element.tagName.toLowerCase()}.${element.className} "${(element.getAttribute('aria-label') ?? element.textContent ?? '').slice(0, 40)}" ${Math.round(width)} x ${Math.round(height)}`,
    ];
  });
}

/** How long a press is held, ms. */
const LONG_PRESS = 800;

test('help and echo show at the field in use only, and are heard at every field', async ({ bench }) => {
  await bench.locator('#card-book > summary').click();
  const width = measureField(bench, 'width');
  const height = measureField(bench, 'height');
  const help = bench.getByText('Head to tail, over the board.');
  await expect(help).toBeHidden();
  await expect(height).toHaveAccessibleDescription(/Head to tail/);
  await height.click();
  await expect(help).toBeVisible();
  const echo = bench.getByText(/^understood: 9 1\/2 in/);
  await height.fill('9 1/2 in');
  await expect(echo).toBeVisible();
  // A press that takes a moment ends on the field where it began, though the help above it goes.
  const { x, y } = (await width.boundingBox())!;
  await bench.mouse.move(x + 20, y + 10);
  await bench.mouse.down();
  await bench.waitForTimeout(LONG_PRESS);
  await bench.mouse.up();
  await expect(width).toBeFocused();
  await expect(echo).toBeHidden();
  await expect(help).toBeHidden();
  await expect(height).toHaveAccessibleDescription(/understood: 9 1\/2 in = 241\.3 mm/);
  await height.focus();
  await expect(echo).toBeHidden();
  // A mouse needs no keys.
  await setUnits(bench, 'in');
  await height.focus();
  await expect(bench.getByRole('button', { name: '3/8', exact: true })).toHaveCount(0);
});

test('a press that follows another at once ends on what it began on', async ({ bench }) => {
  await bench.getByRole('button', { name: 'A cover for your book' }).click();
  const dialog = bench.getByRole('dialog', { name: 'New cover' });
  for (const [i, label] of ['Width', 'Height', 'Thickness', 'Leather weight'].entries())
    await dialog.getByRole('textbox', { name: label, exact: true }).fill(['150', '220', '31', '4-5 oz'][i]!);
  await dialog.getByRole('textbox', { name: 'Thickness', exact: true }).click();
  await dialog.getByRole('textbox', { name: 'Leather weight', exact: true }).click();
  const { x, y, width, height } = (await dialog.getByRole('button', { name: 'Start this cover' }).boundingBox())!;
  await bench.mouse.click(x + width / 2, y + height / 2);
  await expect(dialog).toBeHidden();
});

/** Counts what a maker does: figures typed and choices made, and buttons pressed. */
class Counted {
  inputs = 0;
  presses = 0;
  constructor(
    readonly page: Page,
    readonly by: 'mouse' | 'keyboard' | 'finger',
  ) {}

  async press(what: Locator): Promise<void> {
    this.presses++;
    // Some hands, and slow machines, hold a button down: what was below it must not have moved under it.
    if (this.by === 'mouse') await what.click({ delay: LONG_PRESS });
    else if (this.by === 'finger') await what.tap();
    else {
      await this.reach(what);
      await this.page.keyboard.press('Enter');
    }
  }

  /** Types a figure into a field, or into the one in focus. */
  async type(text: string, field: Locator | null): Promise<void> {
    this.inputs++;
    if (field !== null && this.by === 'keyboard') await this.reach(field);
    else if (field !== null) await field.click();
    await this.page.keyboard.type(text);
  }

  private async reach(what: Locator): Promise<void> {
    for (let i = 0; i < 60; i++) {
      if (await what.evaluate((element) => element === document.activeElement)) return;
      await this.page.keyboard.press('Tab');
    }
    await expect(what).toBeFocused();
  }
}

const FIGURES = ['150', '220', '31', '3', '4-5 oz'] as const;
const [MOST_INPUTS, MOST_PRESSES] = [9, 4];

async function newCover(page: Page, by: Counted['by']): Promise<void> {
  const hand = new Counted(page, by);
  await hand.press(page.getByRole('button', { name: 'A cover for your book' }));
  const dialog = page.getByRole('dialog', { name: 'New cover' });
  await expect(dialog).toBeVisible();
  if (by === 'finger') {
    await hand.press(dialog.getByRole('button', { name: 'Next' }));
    for (const [i, figure] of FIGURES.entries()) {
      await expect(dialog.getByText(`${i + 2} of 6`)).toBeVisible();
      await expect(dialog.getByRole('textbox')).toBeFocused();
      await hand.type(figure, null);
      // The keyboard's own key, called Next and at last Done.
      await page.keyboard.press('Enter');
    }
  } else {
    for (const [i, label] of ['Width', 'Height', 'Thickness', 'Board', 'Leather weight'].entries())
      await hand.type(nth(FIGURES, i), dialog.getByRole('textbox', { name: label, exact: true }));
    await hand.press(dialog.getByRole('button', { name: 'Start this cover' }));
  }
  await expect(dialog).toBeHidden();
  await expect(page.locator('#card-book > summary')).toContainText('150 × 220 × 31 mm');
  await expect(headline(page)).toHaveAttribute('data-verdict', /fits|tight/);
  console.log(
    `new cover by ${by.padEnd(8)} inputs ${hand.inputs} (at most ${MOST_INPUTS}), presses ${hand.presses} (at most ${MOST_PRESSES})`,
  );
  expect(hand.inputs).toBeLessThanOrEqual(MOST_INPUTS);
  expect(hand.presses).toBeLessThanOrEqual(MOST_PRESSES);
}

test.describe('from a new book to its verdict', () => {
  for (const by of ['mouse', 'keyboard'] as const) test(`by ${by}`, ({ bench }) => newCover(bench, by));

  test.describe('on a telephone', () => {
    test.use({ viewport: TELEPHONE, hasTouch: true, isMobile: true });

    test('by finger, one question a screen', ({ bench }) => newCover(bench, 'finger'));

    test('every question shows its answer, its keys and its way on above a keyboard, and no measure that was not given', async ({
      bench,
    }) => {
      await setUnits(bench, 'in');
      await bench.getByRole('button', { name: 'A cover for your book' }).tap();
      const dialog = bench.getByRole('dialog', { name: 'New cover' });
      await dialog.getByRole('button', { name: 'Next' }).tap();
      await bench.setViewportSize({ ...TELEPHONE, height: LOW_KEYBOARD });
      for (const [i, figure] of ['6', '9', '1', '', '3-4 oz'].entries()) {
        await expect(dialog.getByText(`${i + 2} of 6`)).toBeVisible();
        await expect(dialog.locator('.measure-picture figcaption')).toHaveCount(i < 4 ? 0 : 1);
        const on = dialog.getByRole('button', { name: /^(Next|Start this cover)$/ });
        for (const what of [dialog.getByRole('textbox'), on, ...(await dialog.locator('.pad-keys button').all())])
          await expect(what).toBeInViewport({ ratio: 1 });
        if (figure === '') await dialog.getByRole('button', { name: 'Skip' }).tap();
        else {
          await dialog.getByRole('textbox').fill(figure);
          await on.tap();
        }
      }
      await expect(dialog).toBeHidden();
      await expect(bench.locator('#card-book > summary')).toContainText('6 × 9 × 1 in');
    });

    test('all at once on a low screen, its button stays in sight', async ({ bench }) => {
      await bench.setViewportSize({ width: 844, height: 390 });
      await bench.getByRole('button', { name: 'A cover for your book' }).tap();
      const start = bench.getByRole('dialog', { name: 'New cover' }).getByRole('button', { name: 'Start this cover' });
      await expect(start).toBeInViewport({ ratio: 1 });
      expect(await isReached(start)).toBe(true);
      const weight = bench.getByRole('textbox', { name: 'Leather weight' });
      await weight.focus();
      await expect.poll(() => isReached(weight)).toBe(true);
    });

    test('a question says at once what is wrong with its answer, can be skipped where a default exists, and gone back from', async ({
      bench,
    }) => {
      await bench.getByRole('button', { name: 'A cover for your book' }).tap();
      const dialog = bench.getByRole('dialog', { name: 'New cover' });
      const entry = dialog.getByRole('textbox');
      await dialog.getByRole('radio', { name: 'rounded' }).tap();
      await dialog.getByRole('button', { name: 'Next' }).tap();
      await expect(dialog.getByText('2 of 7')).toBeVisible();
      await bench.keyboard.press('Enter');
      await expect(entry).toHaveAccessibleDescription(/Needed/);
      await entry.fill('2');
      await expect(entry).not.toHaveAccessibleDescription(/Needed/);
      await bench.keyboard.press('Enter');
      await expect(entry).toHaveAccessibleDescription(/too small: 30 to 1000 mm/);
      await expect(dialog.getByRole('button', { name: 'Skip' })).toHaveCount(0);
      for (const figure of ['150', '220', '54']) {
        await entry.fill(figure);
        await bench.keyboard.press('Enter');
      }
      await dialog.getByRole('button', { name: 'Skip' }).tap();
      await expect(dialog.getByText('6 of 7')).toBeVisible();
      await dialog.getByRole('button', { name: 'Back' }).tap();
      await expect(entry).toBeFocused();
      await entry.fill('9');
      await bench.keyboard.press('Enter');
      await dialog.getByRole('button', { name: 'Skip' }).tap();
      await entry.fill('4-5 oz');
      await bench.keyboard.press('Enter');
      await expect(bench.locator('#card-book > summary')).toContainText(
        '150 × 220 × 54 mm, boards 2.5 mm, spine rounded 9 mm',
      );
      await expect(bench.getByRole('button', { name: 'A cover for your book' })).toHaveCount(0);
    });
  });
});

/** Tablet and telephone either way, and 1440 x 900 enlarged to 200 and 400 %; with letters half as large again. */
const SCREENS = [
  { width: 820, height: 1180, letters: 16 },
  { width: 844, height: 390, letters: 16 },
  { width: 720, height: 450, letters: 16 },
  { width: 360, height: 225, letters: 16 },
  { width: 390, height: 844, letters: 24 },
  { width: 820, height: 1180, letters: 24 },
  { width: 844, height: 390, letters: 24 },
  { width: 1440, height: 900, letters: 24 },
] as const;

/** In the page: what is wider than the screen, and how much of its height stays covered when it is scrolled. */
function layoutFaults(): string[] {
  const faults: string[] = [];
  const wide = document.documentElement.scrollWidth;
  if (wide > innerWidth) {
    const culprits = [...document.querySelectorAll('body *')].filter(
      (element) => element.checkVisibility() && element.getBoundingClientRect().right > innerWidth + 1,
    );
    faults.push(
      `${wide} px wide: ${culprits
        .slice(0, 4)
        .map((element) => `${element.tagName}.${element.getAttribute('class')}`)
        .join(', ')}`,
    );
  }
  const stuck = [...document.querySelectorAll<HTMLElement>('.page *')].filter((element) => {
    const { position } = getComputedStyle(element);
    // What stands beside the cards covers none of them.
    return (
      ['sticky', 'fixed'].includes(position) &&
      element.checkVisibility() &&
      element.getBoundingClientRect().width > innerWidth / 2 &&
      !element.matches('[popover], .stage')
    );
  });
  const covered = stuck.reduce((sum, element) => sum + element.getBoundingClientRect().height, 0);
  if (covered > innerHeight / 3) faults.push(`${Math.round(covered)} of ${innerHeight} px stay covered`);
  return faults;
}

/** In the page: controls that a press in their middle does not reach, each first brought into view. */
function unreached(): string[] {
  const CONTROLS = 'button, a[href], input, select, textarea, summary';
  return [...document.querySelectorAll<HTMLElement>(CONTROLS)].flatMap((element) => {
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return [];
    if (element.closest('[inert], [popover], .only-heard') !== null || element.matches('input[type="file"]')) return [];
    element.scrollIntoView({ block: 'nearest' });
    const { x, y, width, height } = element.getBoundingClientRect();
    if (width <= 1 || height <= 1) return [];
    const hit = document.elementFromPoint(x + width / 2, y + height / 2);
    const isHit =
      hit !== null && (element.contains(hit) || hit.contains(element) || hit.closest('label')?.contains(element));
    return isHit
      ? []
      : [
          `${element.tagName.toLowerCase()} "${(element.getAttribute('aria-label') ?? element.textContent ?? '').slice(0, 30)}" under ${hit?.tagName}.${hit?.getAttribute('class')}`,
        ];
  });
}

test('no screen cuts anything off, hides a control or covers more than a third of itself', async ({ bench }) => {
  test.slow();
  await stripSettles(bench);
  const faults: string[] = [];
  for (const { width, height, letters } of SCREENS) {
    await bench.setViewportSize({ width, height });
    await bench.evaluate((size) => document.documentElement.style.setProperty('font-size', `${size}px`), letters);
    const at = `${width} x ${height}, letters of ${letters} px`;
    for (const hash of ['#cover', '#strips', '#explore', '#workbench/template', '#workbench/quote', '#shelf']) {
      await bench.evaluate((address) => {
        location.hash = address;
      }, hash);
      await bench.waitForTimeout(400);
      const here = [
        ...(await bench.evaluate(layoutFaults)),
        ...(hash === '#cover' ? await bench.evaluate(unreached) : []),
      ];
      faults.push(...here.map((fault) => `${at}, ${hash}: ${fault}`));
    }
  }
  expect(faults).toEqual([]);
});
