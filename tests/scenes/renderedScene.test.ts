import { parse } from 'exifr';
import { decode } from 'jpeg-js';
import { describe, expect, test } from 'vitest';
import { markedPage } from '../../src/core/index.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Vec3 } from '../../src/core/math/vec3.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { drawnScene, smaller, standpoint } from './drawnScene.ts';
import { halfHidden, onScreen, turnedCamera } from './oddPictures.ts';
import { focalIn35mm, photographFile } from './photographFile.ts';
import { laidPoints, mapPage, type RenderedScene, renderedScene, trulySeen } from './renderedScene.ts';
import type { TestCamera, TestScene } from './testScene.ts';

const green = ({ width, rgba }: RenderedScene, [x, y]: Vec2): number =>
  nth(rgba, 4 * (Math.floor(y) * width + Math.floor(x)) + 1);

/** How many of a page's marks are dark just inside of their corners and light just outside of them. */
function sharpMarks(scene: TestScene, camera: TestCamera, picture: RenderedScene): number {
  const laid = nth(scene.pages, 0);
  return markedPage(laid.paper, laid.page).marks.filter(({ corners }) => {
    const middle: Vec2 = [(corners[0][0] + corners[2][0]) / 2, (corners[0][1] + corners[2][1]) / 2];
    return corners.every((corner) => {
      const shown = (part: number): number => {
        const [x, y] = mapPage(laid, scene.print, [
          middle[0] + part * (corner[0] - middle[0]),
          middle[1] + part * (corner[1] - middle[1]),
        ]);
        return green(picture, trulySeen(camera, [x, y, 0]));
      };
      return shown(0.87) < 110 && shown(1.13) > 120;
    });
  }).length;
}

describe('photographs rendered for tests', () => {
  const { scene, cameras } = drawnScene(5, { kind: 'small', longSide: 800 });
  const camera = nth(cameras, 0);
  const flat = { ...scene, pages: scene.pages.map((page) => ({ ...page, curl: [0, 0] as const })), book: null };

  test('marks stand where the camera is said to see them, also turned and hidden', () => {
    expect(sharpMarks(flat, camera, renderedScene(flat, camera))).toBe(24);
    const turned = turnedCamera(camera, 1);
    expect(turned.width).toBe(camera.height);
    expect(sharpMarks(flat, turned, renderedScene(flat, turned))).toBe(24);
    const hidden = halfHidden(flat);
    expect(sharpMarks(hidden, camera, renderedScene(hidden, camera))).toBe(12);
    const screen = onScreen(3);
    const seen = smaller(nth(screen.cameras, 0), 3);
    expect(sharpMarks(screen.scene, seen, renderedScene(screen.scene, seen))).toBeGreaterThan(20);
  });

  test('the edges of the top of a book lie within a pixel of where they are said to be', () => {
    const { scene: dark, cameras: own } = drawnScene(8, { kind: 'thin', cover: 'dark', longSide: 800 });
    if (dark.book === null) throw new Error('There is a book.');
    const { headSpine, headForeEdge, tailForeEdge, tailSpine } = laidPoints(dark.book);
    const top = [headSpine, headForeEdge, tailForeEdge, tailSpine];
    const between = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
    const middle = between(headSpine, tailForeEdge);
    // From straight above no side of the book is in sight.
    const above = { ...nth(own, 0), blur: 0, pose: standpoint(middle, { azimuth: 0, tilt: 0, roll: 0.1 }, 500) };
    const picture = renderedScene({ ...dark, ground: 'table', groundColour: [0.7, 0.7, 0.7], pages: [] }, above);
    const [x, y] = trulySeen(above, middle);
    top.forEach((corner, i) => {
      const edge = trulySeen(above, between(corner, nth(top, (i + 1) % 4)));
      const far = Math.hypot(edge[0] - x, edge[1] - y);
      const at = (by: number): number =>
        green(picture, [x + (1 + by / far) * (edge[0] - x), y + (1 + by / far) * (edge[1] - y)]);
      expect(at(1.5)).toBeGreaterThan(at(-1.5) + 30);
    });
  });

  test('a file says how it is turned and what the focal length is', async () => {
    const small = smaller(camera, 4);
    const focal = focalIn35mm(small);
    const file = photographFile(scene, small, { orientation: 6, focalIn35mm: focal });
    const upright = decode(photographFile(scene, small));
    const stored = decode(file);
    expect([stored.width, stored.height]).toEqual([small.height, small.width]);
    // Turned clockwise, the left end of its lowest row comes to the upper left.
    const [a, b] = [upright.data[1], stored.data[4 * stored.width * (stored.height - 1) + 1]];
    expect(Math.abs(defined(a) - defined(b))).toBeLessThan(12);
    const read: unknown = await parse(file, {
      translateValues: false,
      pick: ['Orientation', 'FocalLengthIn35mmFormat'],
    });
    expect(read).toEqual({ Orientation: 6, FocalLengthIn35mmFormat: focal });
    expect(photographFile(scene, small).equals(photographFile(scene, small))).toBe(true);
  });
});
