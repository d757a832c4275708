import type { Locator, Page } from '@playwright/test';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Vec3 } from '../../src/core/math/vec3.ts';
import { drawnScene, standpoint } from '../scenes/drawnScene.ts';
import { photographFile } from '../scenes/photographFile.ts';
import { laidPoints, trulySeen } from '../scenes/renderedScene.ts';
import type { TestCamera, TestScene } from '../scenes/testScene.ts';
import { expectAccessible } from './accessibility.ts';
import { expect, openPart, test } from './bench.ts';
import { dragPoints } from './photographPoints.ts';

const jpeg = (scene: TestScene, camera: TestCamera) => ({
  name: 'photograph.jpg',
  mimeType: 'image/jpeg',
  buffer: photographFile(scene, camera),
});

/** Drags the points of a photograph, in their order, to places of the scene. */
const putPoints = (page: Page, part: Locator, camera: TestCamera, places: readonly Vec3[]): Promise<void> =>
  dragPoints(
    page,
    part.locator('.photograph-drawing'),
    camera.width,
    places.map((place) => trulySeen(camera, place)),
  );

test('a bank card on a printed page tells what the printer does, and the check bars are filled in', async ({
  bench,
}) => {
  test.slow();
  const drawn = drawnScene(12, { kind: 'usual', ground: 'table', longSide: 2400 });
  const camera = { ...drawn.cameras[0]!, pose: standpoint([0, 0, 0], { azimuth: 0.3, tilt: 0.05, roll: 0 }, 430) };
  const [width, height] = [85.6, 53.98];
  const scene = {
    ...drawn.scene,
    pages: [{ paper: 'A4', page: 0, at: [0, 0], angle: 0, curl: [0, 0] }] as const,
    print: { across: 1.012, along: 1.008 },
    book: null,
    scraps: [{ at: [0, 10] as Vec2, angle: 0, width, height, colour: [0.1, 0.2, 0.5] as const }],
  };
  await openPart(bench, 'Template');
  await bench.getByText('Read both bars off a photograph').click();
  const part = bench.locator('details', { hasText: 'Read both bars off' });
  await part.getByRole('radio', { name: 'a bank card' }).check();
  await part.getByLabel('Photograph of the printed page').setInputFiles(jpeg(scene, camera));
  await expect(part).toContainText('A bar of 150', { timeout: 60_000 });
  // Points that were put near each other are smaller targets, because what they stand on is.
  await expectAccessible(bench);
  await putPoints(bench, part, camera, [
    [-width / 2, 10, 0],
    [width / 2, 10, 0],
    [0, 10 - height / 2, 0],
    [0, 10 + height / 2, 0],
  ]);
  await part.getByRole('button', { name: 'Put both into the check bars' }).click();
  const bar = async (name: RegExp): Promise<number> =>
    Number.parseFloat(await bench.getByRole('textbox', { name }).inputValue());
  expect(Math.abs((await bar(/^Check bar across/)) - 1.012 * 150)).toBeLessThan(0.8);
  expect(Math.abs((await bar(/^Check bar upright/)) - 1.008 * 150)).toBeLessThan(0.8);
});

test('a gap of the card trial is read off a photograph of the book on the sheet', async ({ bench }) => {
  test.slow();
  const { scene, cameras } = drawnScene(12, { kind: 'usual', ground: 'table', longSide: 2400 });
  const camera = cameras[0]!;
  await openPart(bench, 'Card trial');
  await bench.getByText('Read a gap off a photograph').click();
  const part = bench.locator('details', { hasText: 'Read a gap off' });
  await part.getByLabel('Photograph of the book in its card').setInputFiles(jpeg(scene, camera));
  await expect(part).toContainText('It shows:', { timeout: 60_000 });
  const { headSpine, headForeEdge } = laidPoints(scene.book!);
  const away = (point: Vec3): Vec3 => {
    // Out of the head, along the spine.
    const { tailSpine } = laidPoints(scene.book!);
    const [x, y] = [headSpine[0] - tailSpine[0], headSpine[1] - tailSpine[1]];
    const length = Math.hypot(x, y);
    return [point[0] + (4 * x) / length, point[1] + (4 * y) / length, point[2]];
  };
  await putPoints(bench, part, camera, [headSpine, headForeEdge, away(headSpine), away(headForeEdge)]);
  await expect(part).toContainText(/It shows: gap [34]\.\d mm, give or take/);
  await part.getByRole('button', { name: 'Put it into Head' }).click();
  await expect(bench.getByRole('form', { name: 'Gaps read' }).getByRole('textbox', { name: 'Head' })).toHaveValue(
    /^[34]/,
  );
});

test('a photograph without the sheet, and a file that is no picture, say what to do', async ({ bench }) => {
  await openPart(bench, 'Card trial');
  await bench.getByText('Read a gap off a photograph').click();
  const part = bench.locator('details', { hasText: 'Read a gap off' });
  const input = part.getByLabel('Photograph of the book in its card');
  await input.setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') });
  await expect(part.getByRole('alert')).toContainText('notes.txt');
  const bare = drawnScene(12, { kind: 'usual', ground: 'table', longSide: 1000 });
  await input.setInputFiles(jpeg({ ...bare.scene, pages: [] }, bare.cameras[0]!));
  await expect(part).toContainText('No mark of the sheet was found.', { timeout: 60_000 });
  await expect(part.locator('.photograph-drawing')).toHaveCount(0);
});
