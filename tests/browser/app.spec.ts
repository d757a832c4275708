import { readFileSync } from 'node:fs';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { parseJobText } from '../../src/core/job/parseJob.ts';
import { defined } from '../defined.ts';
import {
  chooseInMenu,
  expect,
  exploreSettles,
  goToPlace,
  headline,
  jobName,
  openCard,
  openExample,
  openPart,
  PARTS,
  PLACES,
  setUnits,
  stripSettles,
  test,
} from './bench.ts';
import { withoutDrawingContext, withoutWebGl } from './webGl.ts';

const jobText = (id: string): string => readFileSync(`public/jobs/${id}.json`, 'utf8');

test('a cover cut too small fails, its remedy is one press, and undo goes back through both', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const width = (await openCard(bench, 'cut')).getByLabel('Outside width');
  await width.fill('376');
  await width.blur();
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
  await goToPlace(bench, 'Strips');
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
  await expect(bench.getByRole('button', { name: /^front overrun/ })).toBeVisible();

  await goToPlace(bench, 'Cover');
  await bench.getByRole('button', { name: 'Make this change', exact: true }).click();
  await expect(headline(bench)).not.toHaveAttribute('data-verdict', 'fails');
  await goToPlace(bench, 'Strips');
  await expect(bench.getByRole('button', { name: /^front gap/ })).toBeVisible();

  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
  await expect(width).toHaveValue('376');
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fits');
  await expect(width).toHaveValue('');
  await bench.getByRole('button', { name: 'Redo' }).click();
  await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
});

test.describe('with the scene', () => {
  test.use({ look: 'light' });

  // The full look is drawn in stage.spec.ts.
  for (const id of ['tide-ledger', 'choir-book', 'shore-guide'])
    test(`the ${id} opens with its own sizes, a verdict and the cover in three dimensions`, async ({ bench }) => {
      await openExample(bench, id.replace('-', ' '));
      const parsed = parseJobText(jobText(id));
      if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
      const { width, height } = coverDesign(parsed.job).pieces.outside;
      const card = await openCard(bench, 'cut');
      await expect(card.getByRole('row', { name: 'Outside' })).toContainText(`${width} mm × ${height} mm`);
      await expect(headline(bench)).toHaveAttribute('data-verdict', 'fits');
      await expect(jobName(bench)).toHaveText(parsed.job.name);
      await expect(bench.locator('.stage-scene canvas')).toBeVisible();
      await expect(bench.getByRole('application')).toHaveAccessibleName(
        /seen from three-quarter\. Closes in \d+ of 100/,
      );
    });
});

test.describe('with a scene that is not looked at', () => {
  test.use({ look: 'unfilled' });

  test('the bench is worked by keyboard alone: example, edit, remedy, undo, scene, strip', async ({ bench }) => {
    const press = async (key: string, times = 1): Promise<void> => {
      for (let i = 0; i < times; i++) await bench.keyboard.press(key);
    };
    const tabTo = async (what: string): Promise<void> => {
      const trail: string[] = [];
      for (let i = 0; i < 150; i++) {
        await press('Tab');
        const reached = await bench.evaluate(() => {
          // Between the end of the page and its start nothing has the focus.
          if (document.activeElement === document.body) return '';
          const active = document.activeElement as HTMLInputElement | null;
          const label = active?.labels?.[0]?.textContent ?? active?.textContent ?? '';
          return `${active?.getAttribute('aria-label') ?? label}`.trim();
        });
        if (reached.startsWith(what)) return;
        trail.push(reached);
      }
      throw new Error(`Tab never reaches ${what}; it went ${trail.join(', ')}`);
    };
    // The menu comes once the page is painted; a hundred presses may be quicker than that.
    await expect(jobName(bench)).toBeEnabled();
    await tabTo('Job: Tide ledger');
    await press('Enter');
    await tabTo('New cover');
    await press('Enter');
    await tabTo('choir book');
    await press('Enter');
    await expect(jobName(bench)).toHaveText('Choir book');

    await tabTo('Cut');
    await press('Enter');
    await tabTo('Outside width');
    await bench.keyboard.type('372');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');

    await tabTo('Open the book');
    await press('End');
    await expect(bench.getByRole('slider', { name: 'Open the book' })).toHaveAttribute('aria-valuetext', 'open flat');
    await tabTo('spine');
    await press('Enter');
    await expect(bench.getByRole('button', { name: 'spine', exact: true })).toHaveAttribute('aria-pressed', 'true');

    await tabTo('Strips');
    await press('Enter');
    await expect(bench.getByRole('button', { name: /^front overrun/ })).toBeVisible();
    await tabTo('front overrun');
    await press('Enter');
    await expect(bench.locator('.tuner')).toContainText('front overrun');

    await tabTo('Cover');
    await press('Enter');
    await tabTo('Make this change');
    await press('Enter');
    await expect(headline(bench)).not.toHaveAttribute('data-verdict', 'fails');
    await press('Control+z');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
    await press('Control+z');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fits');
    await press('Control+Shift+z');
    await expect(headline(bench)).toHaveAttribute('data-verdict', 'fails');
  });
});

test('nothing scrolls sideways in any place, from a telephone to a wide screen', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const overflow = () =>
    bench.evaluate(() =>
      [document.documentElement, ...document.querySelectorAll('main, .cards')].map(
        (element) => element.scrollWidth - element.clientWidth,
      ),
    );
  const fitsSideways = async (where: string): Promise<void> => {
    // Pressed in one go: what is worked out meanwhile may take one away.
    await bench.evaluate(() => {
      for (const fold of document.querySelectorAll<HTMLElement>('details:not([open]) > summary'))
        if (fold.checkVisibility()) fold.click();
    });
    for (const width of [2560, 1024, 768, 390, 320]) {
      await bench.setViewportSize({ width, height: 844 });
      await expect.poll(async () => Math.max(...(await overflow())), `${where} at ${width} px`).toBe(0);
    }
  };
  for (const part of PARTS) {
    await openPart(bench, part);
    await fitsSideways(part);
  }
  for (const place of PLACES) {
    await goToPlace(bench, place);
    if (place === 'Cover')
      for (const card of ['book', 'leather', 'seam', 'cut', 'checks', 'sure'] as const) await openCard(bench, card);
    if (place === 'Explore') await exploreSettles(bench);
    await fitsSideways(place);
  }
});

test('an empty field has room for the value that stands in for it, on a narrow screen and a wide one', async ({
  bench,
}) => {
  await openExample(bench, 'tide ledger');
  const width = (await openCard(bench, 'cut')).locator('[data-path="pattern.outsideWidth_mm"]');
  await expect(width).toHaveAttribute('placeholder', /^\d+\.5 mm, worked out$/);
  const missing = () =>
    width.evaluate((input: HTMLInputElement) => {
      const { fontSize, fontFamily, paddingLeft, paddingRight } = getComputedStyle(input);
      const pen = new OffscreenCanvas(1, 1).getContext('2d');
      if (pen === null) throw new Error('no 2D drawing');
      pen.font = `italic ${fontSize} ${fontFamily}`;
      const room = input.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight);
      return pen.measureText(input.placeholder).width - room;
    });
  for (const screen of [390, 1440]) {
    await bench.setViewportSize({ width: screen, height: 844 });
    // Widths of elements are whole pixels.
    await expect.poll(missing, `at ${screen} px`).toBeLessThan(1);
  }
});

test('a bad file shows its issues and leaves the job as it is; a good one opens and can be undone', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  const file = bench.getByLabel('Job file');
  const text = (value: string) => ({ name: 'found.json', mimeType: 'application/json', buffer: Buffer.from(value) });
  await file.setInputFiles(text(jobText('shore-guide').replace('118', '5').replace('"seam"', '"sewing"')));
  const alert = bench.getByRole('alert');
  await expect(alert).toContainText('Width: 5 mm is too small: 30 to 1000 mm');
  await expect(alert).toContainText('sewing');
  await expect(jobName(bench)).toHaveText('Choir book');
  await file.setInputFiles(text('{ "format": '));
  await expect(alert).toContainText('The file: ');

  await file.setInputFiles(text(jobText('shore-guide')));
  await expect(alert).toBeHidden();
  await expect(jobName(bench)).toHaveText('Shore guide');
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(jobName(bench)).toHaveText('Choir book');
});

test('a saved file is the job, and opens again as the same job', async ({ bench }) => {
  await openExample(bench, 'shore guide');
  await (await openCard(bench, 'book')).getByLabel('Width', { exact: true }).fill('4 1/2 in');
  const [download] = await Promise.all([bench.waitForEvent('download'), chooseInMenu(bench, 'Save file')]);
  expect(download.suggestedFilename()).toBe('shore-guide.job.json');
  const saved = JSON.parse(readFileSync(await download.path(), 'utf8'));
  const example = JSON.parse(jobText('shore-guide'));
  // A job of before is saved in the version of today, with the half board that its pockets cover.
  const today = { version: 3, pockets: { ...example.pockets, share: 0.5 } };
  expect(saved).toEqual({ ...example, ...today, book: { ...example.book, width_mm: 114.3 } });
});

test('reload keeps the job, what was typed, right or wrong, and the units', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const book = await openCard(bench, 'book');
  await book.getByLabel('Width', { exact: true }).fill('6 1/2 in');
  await book.getByLabel('Height', { exact: true }).fill('about 9');
  await setUnits(bench, 'in');
  await bench.reload();
  await expect(jobName(bench)).toHaveText('Choir book');
  await openCard(bench, 'book');
  await expect(book.getByLabel('Width', { exact: true })).toHaveValue('6 1/2 in');
  await expect(book.getByLabel('Height', { exact: true })).toHaveValue('about 9');
  await expect(bench.getByLabel('Units')).toHaveValue('in');
});

test('what cannot be read is told beside its field, and the last good cover stays', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const outside = (await openCard(bench, 'cut')).getByRole('row', { name: 'Outside' });
  await expect(outside).toContainText('382.5 mm');
  const before = await outside.textContent();
  const height = (await openCard(bench, 'book')).getByLabel('Height', { exact: true });
  for (const [typed, told] of [
    ['9 feet', /Feet are not read/],
    ['5', /5 mm is too small: 30 to 1500 mm/],
  ] as const) {
    await height.fill(typed);
    await expect(height).toHaveAttribute('aria-invalid', 'true');
    await expect(height).toHaveAccessibleDescription(told);
    await expect(outside).toHaveText(before!);
  }
  await height.fill('9 1/2 in');
  await expect(height).toHaveAttribute('aria-invalid', 'false');
  await expect(height).toHaveAccessibleDescription(/understood: 9 1\/2 in = 241.3 mm/);
  await expect(outside).not.toHaveText(before!);
});

test('a switch of units is a step of the job and changes no meaning of what was typed', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const width = (await openCard(bench, 'book')).getByLabel('Width', { exact: true });
  await width.fill('170');
  await stripSettles(bench);
  const [verdict, units] = [await headline(bench).textContent(), bench.getByLabel('Units')];
  await setUnits(bench, 'in');
  await expect(width).toHaveValue('170 mm');
  await expect(headline(bench)).toContainText(/gap .* in\./);
  await bench.getByRole('button', { name: 'Undo' }).click();
  await expect(units).toHaveValue('mm');
  await expect(width).toHaveValue('170');
  await expect(headline(bench)).toHaveText(verdict!);
});

test('a job in inches is cut on its step, and one size has one text wherever it stands', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  for (const [label, inches] of [
    ['Width', '6 1/2'],
    ['Height', '9 1/2'],
  ] as const)
    await (await openCard(bench, 'book')).getByLabel(label, { exact: true }).fill(`${inches} in`);
  await setUnits(bench, 'in');
  const sizes = (await openCard(bench, 'cut')).getByRole('region', { name: 'Cut sizes' });
  await sizes.locator('details', { hasText: 'board width' }).locator('summary').click();
  for (const step of ['1/16 in', '1/32 in']) {
    const card = await openCard(bench, 'cut');
    await card.getByRole('group', { name: 'Rounded up to' }).getByRole('radio', { name: step }).check();
    await expect(sizes).toContainText(`Rounded up to ${step}`);
    const cell = sizes
      .getByRole('row', { name: /^Outside/ })
      .first()
      .getByRole('cell');
    const [cutWidth, cutHeight] = defined(await cell.textContent()).split(' × ');
    expect(cutWidth).toMatch(/^\d+ \d+\/(2|4|8|16|32) in$/);
    await expect(card.locator('.card-said')).toContainText(`${cutWidth!.replace(' in', '')} × ${cutHeight} outside`);
    await expect(card.getByPlaceholder(`${cutWidth}, worked out`)).toHaveCount(1);
    const sum = sizes.getByRole('table').filter({ hasText: 'board width' });
    await expect(sum.getByRole('row').last()).toHaveText(`cut${cutWidth!.replace(' in', '')}`);
    const lines = await sum.locator('tbody tr td:last-child').allTextContents();
    const value = (text: string): number => {
      const size = text
        .replace('−', '')
        .split(' ')
        .map((part) => part.split('/').map(Number))
        .reduce((all, [over, under = 1]) => all + over! / under, 0);
      return text.startsWith('−') ? -size : size;
    };
    expect(lines.reduce((all, line) => all + value(line), 0)).toBe(value(cutWidth!.replace(' in', '')));

    await goToPlace(bench, 'Strips');
    await expect(bench.locator('.strip > header')).toContainText(`outside ${cutWidth}, cut edge`);
    await expect(bench.locator('.upright > header')).toContainText(`outside ${cutHeight}`);
    await expect(bench.getByRole('img', { name: /^Flat pattern to scale/ })).toHaveAccessibleName(
      new RegExp(`outside ${cutWidth} by ${cutHeight}`),
    );
  }
});

test('a field and a choice go back to what is usual, and undo brings them back', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await openCard(bench, 'book');
  const rise = bench.locator('[data-path="book.spine.rise_mm"]');
  const board = bench.locator('[data-path="book.boardThickness_mm"]');
  // What can be done about an entry shows while it is in use.
  await board.focus();
  await bench.getByRole('button', { name: /^Back to the usual ?: Board$/ }).click();
  await expect(board).toHaveAttribute('placeholder', '2.5 mm, usual');
  await expect(board).toHaveAccessibleDescription(/Usual for a hardback: 2\.5 mm\./);
  await bench.getByRole('button', { name: /^Back to the usual ?: Spine flat$/ }).click();
  await expect(bench.getByRole('radio', { name: 'flat', exact: true })).toBeChecked();
  await expect(rise).toBeHidden();
  await bench.keyboard.press('Control+z');
  await expect(rise).toHaveValue('9 mm');
});

test('skived folds and card are materials of their own: both move the cut', async ({ bench }) => {
  await openExample(bench, 'tide ledger');
  const outside = (await openCard(bench, 'cut')).getByRole('row', { name: 'Outside' });
  await expect(outside).toContainText('382.5 mm');
  await openCard(bench, 'leather');
  await bench.getByLabel('Outside skived to').fill('0.8');
  await expect(outside).not.toContainText('382.5 mm');
  const skived = await outside.textContent();
  await bench.getByRole('group', { name: 'Outside made in' }).getByRole('radio', { name: 'card' }).check();
  await expect(bench.locator('[data-path="leather.outside"]')).toHaveValue('0.5 mm');
  await expect(bench.getByLabel('Outside skived to')).toHaveValue('');
  await expect(outside).not.toHaveText(skived!);
});

test('a new cover asks for five figures and stands on its defaults', async ({ bench }) => {
  await chooseInMenu(bench, 'New cover');
  const dialog = bench.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Start this cover' }).click();
  await expect(dialog.getByLabel('Width')).toHaveAccessibleDescription(/Needed/);
  for (const [label, text] of [
    ['Width', '6'],
    ['Height', '8 1/2 in'],
    ['Thickness', '1 in'],
    ['Leather weight', '4-5 oz'],
  ] as const)
    await dialog.getByLabel(label).fill(text);
  await expect(dialog.getByLabel('Height')).toHaveAccessibleDescription(/understood: 8 1\/2 in = 215\.9 mm/);
  await dialog.getByRole('button', { name: 'Start this cover' }).click();
  await expect(dialog.getByLabel('Width')).toHaveAccessibleDescription(/6 mm is too small: 30 to 1000 mm/);
  await dialog.getByLabel('Width').fill('6 in');
  await dialog.getByRole('button', { name: 'Start this cover' }).click();
  await expect(dialog).toBeHidden();
  await expect((await openCard(bench, 'book')).getByLabel('Width', { exact: true })).toHaveValue('6 in');
  await expect(headline(bench)).toContainText('4 to 5 oz');
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(jobName(bench)).toHaveText('Tide ledger');
});

for (const [what, without] of [
  ['in a browser that knows no WebGL', withoutWebGl],
  ['where no drawing context is granted', withoutDrawingContext],
] as const)
  test(`${what} nothing of the scene is loaded, and the section stands in and says why`, async ({ page }) => {
    const loaded: string[] = [];
    page.on('request', (request) => loaded.push(request.url()));
    await page.addInitScript(without);
    await page.goto('');
    await goToPlace(page, 'Explore');
    await exploreSettles(page);
    await goToPlace(page, 'Cover');
    await expect(page.getByRole('img', { name: /^Section across the spine/ })).toBeVisible();
    await expect(page.locator('.stage figcaption')).toContainText('no WebGL 2');
    await expect(page.getByRole('application')).toHaveCount(0);
    expect(loaded.some((url) => url.includes('CoverScene'))).toBe(false);
  });

test('a browser that keeps nothing says so', async ({ page }) => {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.goto('');
  const note = page.getByText('does not keep the open job');
  await expect(note).toBeVisible();
  // The note takes a line, and the cover has the rest of the screen, whole.
  expect((await note.boundingBox())!.height).toBeLessThan(60);
  const { y, height } = (await page.locator('.cover-place').boundingBox())!;
  expect(y + height).toBe(800);
});

test('a card in use stays unfolded when the screen is turned', async ({ bench }) => {
  for (const [width, height] of [
    [820, 1180],
    [1180, 820],
  ] as const) {
    await bench.setViewportSize({ width, height });
    await openCard(bench, 'leather');
    await openCard(bench, 'book');
    await bench.setViewportSize({ width: height, height: width });
    await expect(bench.getByLabel('Width', { exact: true })).toBeVisible();
    await expect(bench.getByLabel('Outside weight')).toBeVisible();
  }
});
