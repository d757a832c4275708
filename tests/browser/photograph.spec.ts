import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from '@playwright/test';
import { EXAMPLE_JOBS, type Vec2 } from '../../src/core/index.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { type Drawn, drawnScene } from '../scenes/drawnScene.ts';
import { focalIn35mm, photographFile } from '../scenes/photographFile.ts';
import { laidPoints, trulySeen } from '../scenes/renderedScene.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, headline, openCard, openDocument, steadyMiddle, test } from './bench.ts';
import { dragPoints, putPointsByKeys, saidPlace } from './photographPoints.ts';

/** A book of 125.8 x 176.2 x 17.3 mm on two printed pages, photographed from three sides. */
const DRAWN = drawnScene(5, { kind: 'usual', ground: 'wood', cover: 'dark', longSide: 1600 });
const BOOK = defined(DRAWN.scene.book).book;

/** The book's cover is cut for a book of another size, so that its verdict is another once the measures are. */
const JOB = {
  ...EXAMPLE_JOBS[0].document,
  name: 'Far away book',
  pattern: { outsideWidth_mm: 290, outsideHeight_mm: 196 },
};

const made = new Map<number, Buffer>();

function photographs({ scene, cameras }: Drawn, count = cameras.length) {
  return cameras.slice(0, count).map((camera, i) => {
    const buffer = made.get(i) ?? photographFile(scene, camera, { focalIn35mm: focalIn35mm(camera) });
    made.set(i, buffer);
    return { name: `book ${i + 1}.jpg`, mimeType: 'image/jpeg', buffer };
  });
}

/** Where a photograph truly shows the corners of the upper cover, pixels. */
function trueCorners({ scene, cameras }: Drawn, photograph: number): Vec2[] {
  const points = laidPoints(defined(scene.book));
  return [points.headSpine, points.headForeEdge, points.tailForeEdge, points.tailSpine].map((point) =>
    trulySeen(nth(cameras, photograph), point),
  );
}

const place = (page: Page) => page.locator('.photograph-place');
const lying = (page: Page) => page.locator('input[aria-label="Photographs of the book lying"]');
const cell = (page: Page, measure: string, column: number) =>
  page
    .getByRole('row', { name: new RegExp(`^${measure}`) })
    .getByRole('cell')
    .nth(column);
const millimetres = async (page: Page, measure: string, column: number): Promise<number> =>
  Number.parseFloat((await cell(page, measure, column).textContent()) ?? '');

/** What the page keeps of the open job. */
const keptJob = (page: Page): Promise<Record<string, unknown>> =>
  page.evaluate(() => JSON.parse(localStorage.getItem('coverwright.open-job.v1') ?? '{}').document);

async function readBars(page: Page): Promise<void> {
  const { across, along } = DRAWN.scene.print;
  await page.getByLabel('Lower bar').fill((190 * across).toFixed(2));
  await page.getByLabel('Upright bar').fill((280 * along).toFixed(2));
}

test('from the measuring sheet to the verdict, by mouse and keys', async ({ bench: page }) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(request.url()));
  await openDocument(page, JOB);
  const card = await openCard(page, 'book');
  const before = await headline(page).textContent();
  const parts = readdirSync(join(import.meta.dirname, '../../dist/assets')).filter((name) =>
    /^(PhotographPlace|photograph\.worker)-.*\.js$/.test(name),
  );
  expect(parts).toHaveLength(2);
  const wasFetched = (name: string): boolean => fetched.some((url) => url.endsWith(name));
  expect(parts.filter(wasFetched)).toEqual([]);
  await card.getByRole('link', { name: 'Measure by photograph' }).click();

  // The sheet that the customer prints.
  const [sheet] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the sheet to photograph the book on' }).click(),
  ]);
  expect(sheet.suggestedFilename()).toBe('far-away-book-a4.photograph-sheet.pdf');
  expect(readFileSync(await sheet.path()).toString('latin1')).toMatch(/^%PDF-/);
  await expect(place(page)).toContainText('once a photograph shows the sheet');

  await lying(page).setInputFiles(photographs(DRAWN));
  await expect(place(page).locator('.shot canvas')).toHaveCount(3);
  // Three views tell the thickness too, by their give or take; typed, it makes the rest surer.
  await expect(place(page)).toContainText('The program placed the corners by the edges it saw.');
  await expect(cell(page, 'Thickness', 1)).toBeVisible();
  const thickness = (BOOK.thicknessAtSpine + BOOK.thicknessAtForeEdge) / 2;
  expect(Math.abs((await millimetres(page, 'Thickness', 0)) - thickness)).toBeLessThan(
    1.5 * (await millimetres(page, 'Thickness', 1)),
  );
  // At a height that is not the book's there is no edge to be found.
  const entry = page.getByLabel('Thickness of the closed book');
  await entry.fill('70');
  await expect(place(page)).toContainText('The edges are not clear.');
  await entry.fill(BOOK.thicknessAtSpine.toFixed(1));
  await expect(place(page)).toContainText('The program placed the corners by the edges it saw.');
  await readBars(page);
  await page.getByLabel('Read with').fill('ruler B');
  await expect(place(page)).not.toContainText('The print is not checked');

  await expect(place(page).locator('.face[data-placed]')).toHaveCount(3);
  // By its own give or take the result is right; and better than 1 mm.
  await expect.poll(() => millimetres(page, 'Width', 1)).toBeLessThan(1);
  for (const [measure, truth] of [
    ['Width', BOOK.width],
    ['Height', BOOK.height],
    ['Thickness', thickness],
  ] as const) {
    const [found, off] = [await millimetres(page, measure, 0), await millimetres(page, measure, 1)];
    expect(Math.abs(found - truth)).toBeLessThan(1.5 * off);
    expect(off).toBeLessThan(2);
  }
  expect(fetched.filter((url) => /photograph\.worker-/.test(url))).toHaveLength(1);

  // The measures are in sight but not taken before every photograph was looked at.
  const take = page.getByRole('button', { name: 'Take into the job' });
  const looked = place(page).getByRole('checkbox', { name: 'I looked at these corners' });
  await expect(take).toHaveAccessibleDescription(
    'First look at the corners in photographs 1, 2 and 3 of the book lying.',
  );
  await take.press('Enter');
  await page.getByRole('button', { name: 'Go to the first' }).press('Enter');
  await expect(looked.nth(0)).toBeFocused();
  await expect(looked.nth(0)).not.toBeChecked();
  await page.keyboard.press('Space');
  await expect(take).toHaveAccessibleDescription('First look at the corners in photographs 2 and 3 of the book lying.');
  await looked.nth(1).check();
  await looked.nth(1).uncheck();
  await page.getByRole('button', { name: 'Undo the last move' }).click();
  await expect(looked.nth(1)).toBeChecked();
  await expect(headline(page)).toHaveText(defined(before));

  // A close-up leads to its corner in the picture.
  const closeUps = place(page).getByRole('list', { name: 'Corners of photograph 1, close up' }).getByRole('button');
  await expect(closeUps).toHaveCount(4);
  await closeUps.nth(2).click();
  await expect(
    place(page)
      .getByRole('button', { name: /^Tail, fore-edge: / })
      .first(),
  ).toBeFocused();
  await expect(place(page).locator('.point-loupe')).toBeVisible();

  // A corner is dragged, its close-up with it, and the drag undone; keys move it by a pixel.
  const corner = place(page)
    .getByRole('button', { name: /^Head, spine/ })
    .first();
  const named = await corner.getAttribute('aria-label');
  const { x, y } = await steadyMiddle(corner);
  const shown = () =>
    closeUps
      .nth(0)
      .locator('canvas')
      .evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
  const shownBefore = await shown();
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 12, y + 9, { steps: 3 });
  await expect(place(page).locator('.point-loupe')).toBeVisible();
  await expect.poll(shown).not.toBe(shownBefore);
  await page.mouse.up();
  await expect(corner).not.toHaveAttribute('aria-label', defined(named));
  await page.keyboard.press('Control+z');
  await expect(corner).toHaveAttribute('aria-label', defined(named));
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowLeft');
  const across = (label: string | null): number => Number(/: (\d+) across/.exec(label ?? '')?.[1]);
  await expect.poll(async () => across(await corner.getAttribute('aria-label'))).toBe(across(named) + 9);
  await page.getByRole('button', { name: 'Undo the last move' }).click();
  await page.getByRole('button', { name: 'Undo the last move' }).click();
  await expect(corner).toHaveAttribute('aria-label', defined(named));
  await expectAccessible(page, '.photograph-place');

  // Into the job, as one step, with how far each may be off and by which ruler.
  await looked.nth(2).check();
  await expect(take).toHaveAccessibleDescription('');
  await take.click();
  await expect(place(page)).toContainText('Taken, with how far each may be off.');
  await expect(headline(page)).not.toHaveText(defined(before));
  await expect
    .poll(async () => (await keptJob(page)).doubts)
    .toMatchObject({
      'book.width_mm': { from: 'photograph', with: 'ruler B', distribution: 'normal' },
      'book.height_mm': { from: 'photograph', with: 'ruler B' },
      'book.thickness_mm': { from: 'photograph' },
    });
  expect((await keptJob(page)).correlations).not.toEqual([]);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(headline(page)).toHaveText(defined(before));
});

test('what is no photograph of the sheet is told in plain words, and nothing is lost', async ({ bench: page }) => {
  await page.goto('#photograph');
  const tiny = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  );
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(1200, 900);
    const context = canvas.getContext('2d')!;
    context.fillStyle = '#876';
    context.fillRect(0, 0, 1200, 900);
    return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())];
  });
  await lying(page).setInputFiles([
    { name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('Dear bindery') },
    { name: 'dot.png', mimeType: 'image/png', buffer: tiny },
    { name: 'table.png', mimeType: 'image/png', buffer: Buffer.from(bytes) },
  ]);
  const rows = place(page).locator('.shot');
  await expect(rows.nth(0)).toContainText('letter.jpg is not a picture');
  await expect(rows.nth(1)).toContainText('dot.png has 1 x 1 pixels');
  await expect(rows.nth(2)).toContainText('No mark of the sheet was found.');
  await expect(place(page)).toContainText('once a photograph shows the sheet');
  await page.getByLabel('Lower bar').fill('12');
  await expect(place(page)).toContainText('was meant to be 190 mm');
  await page.getByRole('button', { name: 'Take out photograph 1' }).click();
  await expect(rows).toHaveCount(2);
});

test('a photograph is dropped and one pasted; a plain sheet takes the place of the printed one', async ({
  bench: page,
}) => {
  await page.goto('#photograph');
  await expect(lying(page)).toBeAttached();
  /** A plain white sheet with a dark book on it, dropped on a step of the place, or pasted. */
  const bring = (way: 'drop' | 'paste', step: number): Promise<void> =>
    place(page)
      .locator('.shots')
      .nth(step)
      .evaluate(async (target, event) => {
        const canvas = new OffscreenCanvas(1200, 900);
        const context = canvas.getContext('2d')!;
        for (const [colour, ...corners] of [
          ['#654', 0, 0, 1200, 0, 1200, 900, 0, 900],
          ['#eee', 230, 180, 960, 150, 990, 700, 200, 680],
          ['#243', 450, 320, 720, 310, 730, 540, 440, 530],
        ] as [string, ...number[]][]) {
          context.fillStyle = colour;
          context.beginPath();
          for (let i = 0; i < corners.length; i += 2) context.lineTo(corners[i]!, corners[i + 1]!);
          context.fill();
        }
        const files = new DataTransfer();
        files.items.add(
          new File([await canvas.convertToBlob({ type: 'image/png' })], `${event}.png`, { type: 'image/png' }),
        );
        target.dispatchEvent(
          event === 'drop'
            ? new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: files })
            : new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData: files }),
        );
      }, way);
  const rows = (position: string) =>
    page.getByRole('list', { name: `Photographs of the book ${position}` }).locator('.shot');
  await bring('drop', 1);
  await expect(rows('standing')).toContainText('No mark of the sheet was found.');
  await bring('drop', 0);
  await bring('paste', 0);
  await expect(rows('lying')).toContainText(['drop.png', 'paste.png']);
  await page.getByLabel('The book lies on').selectOption('a plain sheet of A4');
  await expect(rows('lying')).toContainText([
    'the sheet of A4 with its four corners',
    'the sheet of A4 with its four corners',
  ]);
  await page.getByLabel('Width of the paper').fill('150');
  await expect(place(page)).toContainText('was meant to be 210 mm');
  await expect(place(page).locator('.placed-point')).toHaveCount(12);
});

test('a book that only stands tells its thickness and rise, its corners placed by keys', async ({ bench: page }) => {
  const drawn = drawnScene(3, { kind: 'usual', ground: 'wood', pose: 'standing', photographs: 2, longSide: 1200 });
  const { book } = defined(drawn.scene.book);
  // How far its head is over the sheet is known by the job alone.
  const measures = { width_mm: 160, height_mm: book.height, thickness_mm: 20 };
  const job = { ...EXAMPLE_JOBS[0].document, name: 'Standing book', book: measures };
  await openDocument(page, job);
  await page.goto('#photograph');
  await page.locator('input[aria-label="Photographs of the book standing"]').setInputFiles(
    drawn.cameras.map((camera, i) => ({
      name: `end ${i + 1}.jpg`,
      mimeType: 'image/jpeg',
      buffer: photographFile(drawn.scene, camera, { focalIn35mm: focalIn35mm(camera) }),
    })),
  );
  const faces = place(page).locator('.face');
  await expect(faces).toHaveCount(2);
  const points = laidPoints(defined(drawn.scene.book));
  const { headSpine, headForeEdge, backHeadForeEdge, backHeadSpine, apex } = points;
  for (const [i, camera] of drawn.cameras.entries()) {
    const face = faces.nth(i);
    await face.getByRole('button', { name: 'Add: top of the rounded spine' }).click();
    const places = [headSpine, headForeEdge, backHeadForeEdge, backHeadSpine, apex].map((point) =>
      trulySeen(camera, point),
    );
    const drawing = face.locator('.photograph-drawing');
    await dragPoints(page, drawing, camera.width, places);
    await putPointsByKeys(page, drawing, places);
  }
  await expect(cell(page, 'Rise', 0)).toBeVisible();
  for (const [measure, truth] of [
    ['Thickness', (book.thicknessAtSpine + book.thicknessAtForeEdge) / 2],
    ['Rise', book.rise],
  ] as const) {
    const off = await millimetres(page, measure, 1);
    expect(off).toBeLessThan(3);
    expect(Math.abs((await millimetres(page, measure, 0)) - truth)).toBeLessThan(1.5 * off);
  }
  // Placed by hand, they were looked at.
  await expect(page.getByRole('button', { name: 'Take into the job' })).toHaveAccessibleDescription('');
});

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a finger drags the corners, and the loupe for the last pixels', async ({ bench: page }) => {
    await page.goto('#photograph');
    await lying(page).setInputFiles(photographs(DRAWN, 1));
    await expect(place(page).locator('.placed-point')).toHaveCount(4);
    await page.getByLabel('Thickness of the closed book').fill(BOOK.thicknessAtSpine.toFixed(1));
    await readBars(page);
    const session = await page.context().newCDPSession(page);
    for (const [i, corner] of trueCorners(DRAWN, 0).entries()) await putBy(session, page, i, corner);
    await expect.poll(async () => Math.abs((await millimetres(page, 'Width', 0)) - BOOK.width)).toBeLessThan(2);
    await expectAccessible(page, '.photograph-place');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});

/** Drags a corner to its place by a finger: near it in the picture, the rest in the loupe. */
async function putBy(session: CDPSession, page: Page, i: number, to: Vec2): Promise<void> {
  const point = place(page).locator('.placed-point').nth(i);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...places: readonly Vec2[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(([x, y], id) => ({ x, y, id })) });
  const stroke = async ({ x, y }: { x: number; y: number }, by: Vec2): Promise<void> => {
    await touch('touchStart', [x, y]);
    // A browser tells of a finger only once it has gone a little way.
    await touch('touchMove', [x + by[0] + 24, y + by[1] + 24]);
    await touch('touchMove', [x + by[0], y + by[1]]);
    await touch('touchEnd');
  };
  const at = () => saidPlace(point);
  const scale =
    defined((await place(page).locator('.photograph-drawing').boundingBox()) ?? undefined).width /
    nth(DRAWN.cameras, 0).width;
  const middle = await steadyMiddle(point);
  const [x, y] = await at();
  await stroke(middle, [scale * (to[0] - x), scale * (to[1] - y)]);
  const loupe = place(page).locator('.point-loupe');
  await expect(loupe).toBeVisible();
  const [left, top] = await at();
  if (left === Math.round(to[0]) && top === Math.round(to[1])) return;
  // Three pixels of the screen for one of the picture, which follows the finger.
  await stroke(await steadyMiddle(loupe), [3 * (left - to[0]), 3 * (top - to[1])]);
  await expect.poll(async () => Math.abs((await at())[0] - to[0])).toBeLessThan(2);
}
