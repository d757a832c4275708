import type { Locator, Page } from '@playwright/test';
import { EXAMPLE_JOBS } from '../../src/core/index.ts';
import { readShareFragment } from '../../src/output/shareLink/shareLink.ts';
import { expectAccessible } from './accessibility.ts';
import {
  chooseInMenu,
  elsewherePage,
  expect,
  jobName,
  openDocument,
  openExample,
  openPart,
  setUnits,
  steadyMiddle,
  test,
} from './bench.ts';

test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

/** Waits until the tooling part stands there. */
async function openTooling(page: Page): Promise<Locator> {
  const panel = await openPart(page, 'Tooling');
  await expect(panel.locator('.face-sheet')).toBeVisible();
  return panel;
}

/** A design on the sheet. */
const mark = (page: Page, name: RegExp): Locator => page.locator('.face-sheet').getByRole('button', { name });

const place = (page: Page): Locator => page.locator('.place-line');

/** The ways of pressing and dragging. */
interface Hand {
  press(what: Locator): Promise<void>;
  /** Takes something by its middle and moves it by px; `then` comes before it is let go. */
  drag(what: Locator, dx: number, dy: number, then?: () => Promise<void>): Promise<void>;
}

const mouseHand = (page: Page): Hand => ({
  press: (what) => what.click(),
  drag: async (what, dx, dy, then) => {
    const { x, y } = await steadyMiddle(what);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + dx, y + dy, { steps: 6 });
    await then?.();
    await page.mouse.up();
  },
});

const fingerHand = (page: Page): Hand => ({
  press: (what) => what.tap(),
  drag: async (what, dx, dy, then) => {
    const { x, y } = await steadyMiddle(what);
    const session = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: x + share * dx, y: y + share * dy }],
      });
    await touch('touchStart', 0);
    for (const share of [0.2, 0.4, 0.6, 0.8, 1]) await touch('touchMove', share);
    await then?.();
    await touch('touchEnd', 1);
    await session.detach();
  },
});

/** Writes into a field of the design in hand. */
async function write(panel: Locator, label: string, text: string): Promise<void> {
  const field = panel.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.blur();
}

/** A double border and initials on the front, the initials moved by `move`; then a title down the spine. */
async function toolCover(page: Page, hand: Hand, move: (initials: Locator) => Promise<void>): Promise<void> {
  const panel = await openTooling(page);
  await hand.press(panel.getByRole('button', { name: 'Add a border' }));
  await hand.press(panel.getByRole('radio', { name: 'two', exact: true }));
  await hand.press(panel.getByRole('radio', { name: 'notched', exact: true }));
  await expect(mark(page, /^Border of two lines, along the clear part/)).toBeVisible();
  await hand.press(panel.getByRole('button', { name: 'Add a title' }));
  await write(panel, 'Words', 'A. B.');
  await hand.press(panel.getByRole('radio', { name: 'uncial', exact: true }));
  const initials = mark(page, /^Title “A. B.”/);
  await expect(initials.locator('.design-line')).toHaveAttribute('d', /^M/);
  await expect(place(page)).toHaveText('Title “A. B.”: on both centre lines.');
  await move(initials);
  await hand.press(panel.getByRole('radio', { name: 'spine', exact: true }));
  await hand.press(panel.getByRole('button', { name: 'Add a title' }));
  await write(panel, 'Words', 'Psalms');
  await expect(mark(page, /^Title “Psalms”, on both centre lines/)).toBeVisible();
  await expect(panel.getByRole('radio', { name: 'down', exact: true })).toBeChecked();
  const { width, height } = (await mark(page, /^Title “Psalms”/).boundingBox())!;
  expect(height).toBeGreaterThan(width);
}

/** What `toolCover` made stands there, the initials where they were put. */
async function expectTooled(page: Page, where: string): Promise<void> {
  const panel = await openTooling(page);
  await panel.getByRole('radio', { name: 'front', exact: true }).check();
  await expect(mark(page, /^Border of two lines/)).toBeVisible();
  await expect(mark(page, /^Title “A. B.”/)).toHaveAccessibleName(`Title “A. B.”, ${where}`);
  await panel.getByRole('radio', { name: 'spine', exact: true }).check();
  await expect(mark(page, /^Title “Psalms”/)).toBeVisible();
}

test('initials and a double border on the front and a title down the spine are laid out by mouse, kept and shared', async ({
  bench,
  browser,
  baseURL,
}) => {
  test.slow();
  await openExample(bench, 'choir book');
  const hand = mouseHand(bench);
  await toolCover(bench, hand, async (initials) => {
    // Let go by Escape it goes back; near the centre line it is drawn to it, which lights; and a drag is one step of undo.
    await hand.drag(initials.locator('.design-target'), 90, -90, async () => {
      await expect(place(bench)).toContainText('right of the centre');
      await bench.keyboard.press('Escape');
    });
    await expect(place(bench)).toHaveText('Title “A. B.”: on both centre lines.');
    await hand.drag(initials.locator('.design-target'), 5, -90, async () => {
      await expect(bench.locator('.centre-line[data-lit]')).toHaveCount(1);
    });
    await expect(place(bench)).toHaveText(/^Title “A\. B\.”: on the upright centre line, \d+ mm above the centre\.$/);
    await expect(bench.locator('.centre-line[data-lit]')).toHaveCount(0);
    await bench.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect(initials).toHaveAccessibleName('Title “A. B.”, on both centre lines');
    await bench.getByRole('button', { name: 'Redo', exact: true }).click();
    // By a corner it grows, by the grip over it it turns; both stand in the fields.
    const height = bench.locator('.workbench-panel').getByLabel('Letter height', { exact: true });
    await expect(height).toHaveValue('10 mm');
    await hand.drag(bench.locator('[data-grip="scale"]'), 40, 15);
    await expect(height).not.toHaveValue('10 mm');
    await hand.drag(bench.locator('[data-grip="turn"]'), 60, 30);
    const turned = bench.locator('.workbench-panel').getByLabel('Turned', { exact: true });
    await expect(turned).toHaveValue(/^−\d+ deg$/);
    await write(bench.locator('.workbench-panel'), 'Turned', '0');
    await write(bench.locator('.workbench-panel'), 'Letter height', '20');
    await write(bench.locator('.workbench-panel'), 'Above the centre', '40 mm');
  });
  // Tracing and quote: tests/browser/tracing.spec.ts.
  const where = 'on the upright centre line, 40 mm above the centre';
  await expectAccessible(bench);
  await expectTooled(bench, where);
  await bench.reload();
  await expectTooled(bench, where);
  await chooseInMenu(bench, 'Share link');
  await expect(bench.getByText('The link is copied.')).toBeVisible();
  const link = await bench.getByLabel('Link to this job').inputValue();
  const elsewhere = await elsewherePage(browser, baseURL);
  await elsewhere.goto(link);
  await expect(jobName(elsewhere)).toHaveText('Choir book');
  await expectTooled(elsewhere, where);
  await elsewhere.close();
});

test('the same by keyboard: Tab goes from design to design, arrows move them, Delete takes them out', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  const panel = await openTooling(bench);
  const press = async (what: Locator, key = 'Enter'): Promise<void> => {
    await what.focus();
    await bench.keyboard.press(key);
  };
  await press(panel.getByRole('button', { name: 'Add a border' }));
  await press(panel.getByRole('radio', { name: 'one', exact: true }), 'ArrowRight');
  await press(panel.getByRole('button', { name: 'Add a title' }));
  await write(panel, 'Words', 'A. B.');
  const border = mark(bench, /^Border of two lines/);
  const initials = mark(bench, /^Title “A. B.”/);
  await border.focus();
  await bench.keyboard.press('ArrowDown');
  await expect(border).toHaveAccessibleName('Border of two lines, 1 mm inside the clear part');
  await bench.keyboard.press('Tab');
  await expect(initials).toBeFocused();
  for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp', 'ArrowDown']) await bench.keyboard.press(key);
  await expect(initials).toHaveAccessibleName('Title “A. B.”, 2 mm right of the centre, 9 mm above the centre');
  await expect(place(bench)).toHaveText('Title “A. B.”: 2 mm right of the centre, 9 mm above the centre.');
  // A run of arrow keys is one step.
  await bench.keyboard.press('ControlOrMeta+z');
  await expect(initials).toHaveAccessibleName('Title “A. B.”, on both centre lines');
  await setUnits(bench, 'in');
  await initials.focus();
  for (const key of ['ArrowLeft', 'Shift+ArrowDown']) await bench.keyboard.press(key);
  await expect(initials).toHaveAccessibleName('Title “A. B.”, 1/32 in left of the centre, 5/16 in below the centre');
  await bench.keyboard.press('Delete');
  await expect(initials).toHaveCount(0);
  await press(panel.getByRole('radio', { name: 'front', exact: true }), 'ArrowRight');
  await expect(panel.getByRole('radio', { name: 'spine', exact: true })).toBeChecked();
  await press(panel.getByRole('button', { name: 'Add a title' }));
  await write(panel, 'Words', 'Psalms');
  await bench.reload();
  await openTooling(bench);
  await expect(border).toBeVisible();
  await panel.getByRole('radio', { name: 'spine', exact: true }).check();
  await expect(mark(bench, /^Title “Psalms”, on both centre lines/)).toBeVisible();
});

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('the same by finger: a design is dragged, the page beside it scrolls, and grips are wide enough', async ({
    bench,
  }) => {
    await openExample(bench, 'choir book');
    const hand = fingerHand(bench);
    await toolCover(bench, hand, async (initials) => {
      await hand.drag(initials.locator('.design-target'), 2, -60);
      await expect(initials).toHaveAccessibleName(
        /^Title “A\. B\.”, on the upright centre line, \d+ mm above the centre$/,
      );
      await expect(initials.locator('.design-target')).toHaveCSS('touch-action', 'none');
      await expect(bench.locator('.face-sheet')).toHaveCSS('touch-action', 'auto');
      for (const grip of await bench.locator('[data-grip]').all()) {
        const { width, height } = (await grip.boundingBox())!;
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);
      }
    });
    await bench.reload();
    const panel = await openTooling(bench);
    await expect(mark(bench, /^Title “A. B.”, on the upright centre line/)).toBeVisible();
    await panel.getByRole('radio', { name: 'spine', exact: true }).tap();
    await expect(mark(bench, /^Title “Psalms”/)).toBeVisible();
  });
});

test('a design too near a fold or an edge says how near, at the design and on the sheet', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const panel = await openTooling(bench);
  await panel.getByRole('button', { name: 'Add a title' }).click();
  await write(panel, 'Words', 'I');
  await write(panel, 'Right of the centre', '-70');
  await expect(panel.locator('.design-warning')).toHaveText(
    /The title comes \d\.\d mm from the spine fold; its margin is 5 mm\./,
  );
  await expect(bench.locator('.clear-side[data-kind="warned"]')).toHaveCount(1);
  await write(panel, 'At the spine', '0');
  await expect(panel.locator('.design-warning')).toHaveCount(0);
  // A figure that cannot be is refused where it stands, and the job stays.
  await panel.getByLabel('Letter height', { exact: true }).fill('400');
  await expect(panel.locator('.design-list')).toContainText('Allowed: 1 mm to 300 mm.');
  await expect(mark(bench, /^Title “I”, 70 mm left of the centre/)).toBeVisible();
});

const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30"><script>window.ran = 1</script><path d="M0 0H60V30H0Z"/><text x="1" y="1">no</text></svg>';

test('a drawing of the maker’s own is opened, what was left out is said, and a file that is none changes nothing', async ({
  bench,
}) => {
  await openExample(bench, 'choir book');
  const panel = await openTooling(bench);
  const choose = (name: string, mimeType: string, text: string) =>
    panel.getByLabel('SVG, PNG or JPEG file').setInputFiles({ name, mimeType, buffer: Buffer.from(text) });
  await choose('note.svg', 'image/svg+xml', 'no drawing at all');
  await expect(panel.getByRole('alert')).toContainText('allowed: an SVG, PNG or JPEG file');
  await expect(bench.getByRole('button', { name: 'Undo', exact: true })).toBeVisible();
  await expect(mark(bench, /^Drawing/)).toHaveCount(0);
  await choose('fish.svg', 'image/svg+xml', SVG);
  await expect(mark(bench, /^Drawing “fish”, on both centre lines/)).toBeVisible();
  await expect(panel.getByLabel('Drawing width', { exact: true })).toHaveValue('60 mm');
  await expect(panel.locator('.design-list')).toContainText(/Left out of its file: .*text/);
  expect(await bench.evaluate(() => 'ran' in window)).toBe(false);
  await panel.getByRole('button', { name: /^Take out/ }).click();
  await expect(mark(bench, /^Drawing/)).toHaveCount(0);
  await bench.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(mark(bench, /^Drawing “fish”/)).toBeVisible();
});

test('a picture is traced or laid as it is', async ({ bench }) => {
  await openExample(bench, 'choir book');
  const panel = await openTooling(bench);
  const png = await bench.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [80, 80];
    const context = canvas.getContext('2d')!;
    context.fillStyle = 'white';
    context.fillRect(0, 0, 80, 80);
    context.fillStyle = 'black';
    context.arc(40, 40, 25, 0, 7);
    context.fill();
    return canvas.toDataURL('image/png').split(',')[1]!;
  });
  await panel
    .getByLabel('SVG, PNG or JPEG file')
    .setInputFiles({ name: 'disc.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') });
  const disc = mark(bench, /^Drawing “disc”/);
  await expect(disc.locator('.design-line')).toHaveAttribute('d', /^M/);
  await panel.getByRole('radio', { name: 'laid as it is' }).click();
  await expect(disc.locator('image')).toHaveAttribute('href', /^data:image\/png/);
  await panel.getByRole('radio', { name: 'traced to lines' }).click();
  await expect(disc.locator('.design-line')).toHaveAttribute('d', /^M/);
});

/** A job with designs on a face that it does not have, and a drawing too long for a link. */
function crowdedJob() {
  const document = EXAMPLE_JOBS.map((example) => example.document).find(({ name }) => name === 'Choir book');
  // Steps without a rhythm, which do not compress, and end where they began.
  const steps = Array.from({ length: 4000 }, (_, i) => [(i * 7919) % 4999, (i * 104_729) % 4993] as const);
  const there = steps.flatMap(([x, y]) => [`${x},${y}`, `${-x},${-y}`]).join(' ');
  return {
    ...document,
    name: 'Crowded book',
    tooling: {
      designs: [
        { kind: 'border', area: 'strap' },
        { kind: 'drawing', area: 'front', artwork: 'burst' },
      ],
      artworks: [{ id: 'burst', name: 'burst', kind: 'lines', width: 10_000, height: 10_000, lines: `m0,0 ${there}` }],
    },
  };
}

test('a design on a face that the cover does not have is moved or taken out, and a link leaves a long drawing behind', async ({
  bench,
}) => {
  await openDocument(bench, crowdedJob());
  const panel = await openTooling(bench);
  await expect(panel.getByText('Border, on the strap: not tooled.')).toBeVisible();
  await panel.getByRole('button', { name: 'Move to the front' }).click();
  await expect(mark(bench, /^Border/)).toBeVisible();
  await expect(panel.getByRole('heading', { name: 'On faces that this cover does not have' })).toHaveCount(0);
  await chooseInMenu(bench, 'Share link');
  await expect(bench.locator('.share-note')).toContainText(
    'Your own drawings are too long for a link and stay behind.',
  );
  const fragment = new URL(await bench.getByLabel('Link to this job').inputValue()).hash;
  const read = readShareFragment(fragment);
  expect(read.ok && read.job.tooling.designs.map(({ kind }) => kind)).toEqual(['border']);
});
