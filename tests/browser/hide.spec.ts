import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { drawnScene, standpoint } from '../scenes/drawnScene.ts';
import { photographFile } from '../scenes/photographFile.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, openPart, setUnits, steadyMiddle, test } from './bench.ts';

async function openDrawing(page: Page): Promise<Locator> {
  await openPart(page, 'Leather owned');
  await page.getByRole('button', { name: 'Draw by hand the outside leather' }).click();
  return page.locator('.hide-drawing');
}

/** Places on the surface by shares of its width and height from its upper left corner. */
async function placesOn(surface: Locator): Promise<(x: number, y: number) => [number, number]> {
  const middle = await steadyMiddle(surface);
  const { width, height } = (await surface.boundingBox())!;
  return (x, y) => [middle.x + (x - 0.5) * width, middle.y + (y - 0.5) * height];
}

const outline = (page: Page): Locator => page.getByRole('textbox', { name: 'Outline', exact: true });

const cornersOf = async (page: Page): Promise<number[][]> =>
  (await outline(page).inputValue()).split('\n').map((line) => line.replaceAll('−', '-').split(';').map(Number));

test('an outline and a defect are drawn by mouse and keys, crossing sides stay out of the job, a gesture is a step of undo', async ({
  bench,
}) => {
  test.slow();
  const drawing = await openDrawing(bench);
  const surface = drawing.getByRole('application');
  await expect(drawing).toContainText('No leather is outlined yet.');
  await drawing.getByRole('button', { name: 'Draw the outline' }).click();
  await expect(drawing).toContainText('A line drawn at this size is kept to');
  const at = await placesOn(surface);

  // Four corners whose sides cross: nothing goes into the job until they do not.
  for (const [x, y] of [
    [0.2, 0.2],
    [0.8, 0.9],
    [0.8, 0.2],
    [0.2, 0.8],
  ] as const)
    await bench.mouse.click(...at(x, y));
  await expect(drawing.locator('.place-line')).toContainText('4 corners so far');
  await drawing.getByRole('button', { name: 'Close it' }).click();
  await expect(drawing.getByRole('alert')).toHaveText(/^Outline: sides 1 and 3 cross or touch\./);
  await expect(outline(bench)).toBeHidden();
  await expectAccessible(bench);
  const drag = async (from: [number, number], to: [number, number]): Promise<void> => {
    await bench.mouse.move(...from);
    await bench.mouse.down();
    await bench.mouse.move(...to, { steps: 4 });
    await bench.mouse.up();
  };
  // Swapping the second and third corner takes two moves; the first leaves the draft as it is then.
  await drag(at(0.8, 0.9), at(0.9, 0.5));
  await expect(drawing.getByRole('alert')).toBeVisible();
  await bench.keyboard.press('Control+z');
  await drag(at(0.8, 0.2), at(0.5, 0.95));
  await expect(drawing.getByRole('alert')).toBeHidden();
  await expect(outline(bench)).toBeVisible();
  const drawn = await cornersOf(bench);
  expect(drawn).toHaveLength(4);

  // A corner by keys, a run of them one step; then a side pulled out.
  await surface.focus();
  await bench.keyboard.press('PageDown');
  await expect(drawing.locator('.place-line')).toHaveText(/corner \d of 4/);
  const chosen = Number(/corner (\d)/.exec((await drawing.locator('.place-line').textContent()) ?? '')?.[1]) - 1;
  for (const key of ['ArrowRight', 'Shift+ArrowRight', 'ArrowUp']) await bench.keyboard.press(key);
  const moved = drawn.map(([x, y], i) => (i === chosen ? [x! + 11, y! + 1] : [x, y]));
  await expect.poll(() => cornersOf(bench)).toEqual(moved);
  await bench.keyboard.press('Enter');
  await expect.poll(async () => (await cornersOf(bench)).length).toBe(5);
  await bench.keyboard.press('Delete');
  await expect.poll(() => cornersOf(bench)).toEqual(moved);
  for (const _ of [1, 2, 3]) await bench.keyboard.press('Control+z');
  await expect.poll(() => cornersOf(bench)).toEqual(drawn);

  // A defect along one line round; the area is the same on the surface and in the layout, in both units.
  await drawing.getByRole('button', { name: 'Draw a defect' }).click();
  await bench.mouse.move(...at(0.4, 0.45));
  await bench.mouse.down();
  for (const [x, y] of [
    [0.45, 0.42],
    [0.5, 0.45],
    [0.5, 0.55],
    [0.4, 0.55],
    [0.4, 0.455],
  ] as const)
    await bench.mouse.move(...at(x, y), { steps: 5 });
  await bench.mouse.up();
  await expect(bench.getByRole('textbox', { name: 'Defect 1' })).toBeVisible();
  for (const units of ['mm', 'in'] as const) {
    await setUnits(bench, units);
    const area = /The leather is ([\d.]+ \S+(?: ft)? \([^)]+\)) in all/;
    await expect(drawing).toContainText(units === 'in' ? /grid is \S+ in/ : /grid is \d+ mm/);
    const shown = area.exec((await drawing.textContent()) ?? '')?.[1];
    expect(shown).toMatch(units === 'in' ? /sq ft \(/ : /dm² \(/);
    await expect(bench.locator('.laid')).toContainText(`The leather is ${shown} in all.`);
    await expect(bench.getByRole('region', { name: 'Outside leather', exact: true })).toContainText(`${shown}`);
  }

  // The layout as a file, which has the area that the page says.
  await bench.getByText('Save this layout').first().click();
  const [svg] = await Promise.all([
    bench.waitForEvent('download'),
    bench.getByRole('button', { name: 'Save as SVG' }).first().click(),
  ]);
  expect(svg.suggestedFilename()).toBe('tide-ledger-leather-layout-outside.svg');
  const text = await readFile(await svg.path(), 'utf8');
  expect(text).toMatch(/<g id="HIDE"[\s\S]*<g id="DEFECT"[\s\S]*<g id="MARK"[\s\S]*<g id="CUT"/);
  const said = /The leather is (.+?) in all/.exec((await drawing.textContent()) ?? '')?.[1];
  expect(text).toContain(`Outside leather: ${said} in all`);
});

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('a finger draws round a picture that two points have scaled, and two fingers look closer', async ({ bench }) => {
    test.slow();
    const drawing = await openDrawing(bench);
    const surface = drawing.getByRole('application');
    const bytes = await bench.evaluate(async () => {
      const canvas = new OffscreenCanvas(3000, 2000);
      canvas.getContext('2d')!.fillRect(600, 990, 1800, 20);
      return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())];
    });
    const file = { name: 'hide.png', mimeType: 'image/png', buffer: Buffer.from(bytes) };
    await bench.getByLabel('Picture of the hide').setInputFiles({ ...file, buffer: Buffer.from('no picture') });
    await expect(drawing.getByRole('alert')).toContainText('is no PNG or JPEG picture');
    await bench.getByLabel('Picture of the hide').setInputFiles(file);
    await expect(surface.locator('image')).toHaveCount(1);
    await expect(drawing.getByRole('button', { name: 'Draw the outline' })).toBeDisabled();
    await drawing.getByLabel('From A to B', { exact: true }).fill('90 cm');
    await drawing.getByRole('button', { name: 'Set the scale' }).click();
    await expect(drawing).toContainText('Put both points on the picture first');

    const session = await bench.context().newCDPSession(bench);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...places: readonly (readonly [number, number])[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(([x, y], id) => ({ x, y, id })) });
    const stroke = async (places: readonly (readonly [number, number])[]): Promise<void> => {
      await touch('touchStart', places[0]!);
      for (const place of places) await touch('touchMove', place);
      await touch('touchEnd');
    };
    const corner = (i: number) => steadyMiddle(surface.locator('.hide-corner').nth(i));
    for (const i of [0, 1]) {
      const { x, y } = await corner(i);
      await stroke([
        [x, y],
        [x, y - 15],
        [x, y - 30],
      ]);
    }
    await drawing.getByRole('button', { name: 'Set the scale' }).click();
    // 60 % of the picture's width are 900 mm, so all of it 1500.
    await expect(drawing).toContainText(
      /The picture is to scale; the scale may be [\d.]+ % off, \d+\.\d mm over its width\./,
    );
    await expect(drawing).toContainText('A picture taken at an angle is not to scale all over');

    await drawing.getByRole('button', { name: 'Draw the outline' }).click();
    const at = await placesOn(surface);
    const image = (await surface.locator('image').boundingBox())!;
    const onPicture = (x: number, y: number): [number, number] => [
      image.x + x * image.width,
      image.y + y * image.height,
    ];
    await stroke([
      onPicture(0, 0),
      onPicture(0.5, 0),
      onPicture(1, 0),
      onPicture(1, 1),
      onPicture(0, 1),
      onPicture(0, 0.02),
    ]);
    await expect(outline(bench)).toBeVisible();
    const [xs, ys] = [0, 1].map((axis) => cornersOf(bench).then((all) => all.map((each) => each[axis]!)));
    const reach = (of: number[]): number => Math.max(...of) - Math.min(...of);
    // A pixel of the screen is 5 mm here.
    expect(Math.abs(reach(await xs!) - 1500)).toBeLessThan(25);
    expect(Math.abs(reach(await ys!) - 1000)).toBeLessThan(25);

    const grid = drawing.getByText(/A square of the grid is/);
    const before = (await grid.textContent()) ?? '';
    await touch('touchStart', at(0.4, 0.5), at(0.6, 0.5));
    for (const share of [0.1, 0.2, 0.35]) await touch('touchMove', at(0.5 - share, 0.5), at(0.5 + share, 0.5));
    await touch('touchEnd');
    await expect(grid).not.toHaveText(before);
    await session.detach();
    expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await expectAccessible(bench);
  });
});

test('a photograph with a page of the sheet comes in flat and to scale, and the outline that it shows is taken in one step', async ({
  bench,
}) => {
  test.slow();
  const drawn = drawnScene(31, { kind: 'usual', ground: 'wood', longSide: 2000 });
  const camera = { ...drawn.cameras[0]!, pose: standpoint([40, 10, 0], { azimuth: 0.8, tilt: 0.4, roll: 0.1 }, 800) };
  const page = { paper: 'A4', page: 0, at: [-120, 0], angle: 0, curl: [0, 0] } as const;
  const leather = { at: [190, 30], angle: 0.3, width: 300, height: 210, colour: [0.42, 0.2, 0.09] } as const;
  const scene = { ...drawn.scene, pages: [page], print: { across: 1, along: 1 }, book: null, scraps: [leather] };
  const drawing = await openDrawing(bench);
  await drawing
    .getByLabel('Picture of the hide')
    .setInputFiles({ name: 'hide.jpg', mimeType: 'image/jpeg', buffer: photographFile(scene, camera) });
  await expect(drawing).toContainText('The picture is to scale', { timeout: 60_000 });
  await drawing.getByRole('button', { name: 'Take the outline that it shows' }).click();
  // 300 mm by 210 mm.
  await expect(drawing).toContainText('The leather is 6.3 dm²');
  // The print was 2 % too large: so is what was measured by it.
  await drawing.getByRole('textbox', { name: 'The long bar of the sheet measures' }).fill('285.6');
  await drawing.getByRole('button', { name: 'Take the outline that it shows' }).click();
  await expect(drawing).toContainText('The leather is 6.5 dm²');
  await expect(drawing).toContainText('may be 0.');
  await expectAccessible(bench);
  await bench.keyboard.press('Control+z');
  await expect(drawing).toContainText('The leather is 6.3 dm²');
  await drawing.getByRole('textbox', { name: 'The long bar of the sheet measures' }).fill('28');
  await expect(drawing).toContainText('The bar was meant to be 280 mm long.');
});
