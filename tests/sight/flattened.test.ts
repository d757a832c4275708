import { expect, test } from 'vitest';
import { greyOf } from '../../src/artwork/picture/grey.ts';
import {
  MOST_DEFECTS,
  OUTLINE_LIMITS,
  planeScale,
  pointToSegment,
  printScale,
  type Vec2,
} from '../../src/core/index.ts';
import { flattened } from '../../src/sight/flattened.ts';
import { leatherOutline } from '../../src/sight/leatherOutline.ts';
import { seenMarks } from '../../src/sight/seenMarks.ts';
import { drawnScene, standpoint } from '../scenes/drawnScene.ts';
import { renderedScene } from '../scenes/renderedScene.ts';

const LEATHER = { at: [190, 30] as Vec2, angle: 0.3, width: 300, height: 210 };

test('a slanted photograph of leather beside a page is laid flat to scale, and the outline is within 2 mm', () => {
  const drawn = drawnScene(31, { kind: 'usual', ground: 'wood', longSide: 2000, photographs: 3 });
  const camera = {
    ...drawn.cameras[0]!,
    pose: standpoint([40, 10, 0], { azimuth: 0.8, tilt: 0.4, roll: 0.1 }, 800),
  };
  const scene = {
    ...drawn.scene,
    pages: [{ paper: 'A4', page: 0, at: [-120, 0], angle: 0, curl: [0, 0] }] as const,
    print: { across: 1, along: 1 },
    book: null,
    scraps: [{ ...LEATHER, colour: [0.42, 0.2, 0.09] as const }],
  };
  const picture = renderedScene(scene, camera);
  const grey = {
    width: picture.width,
    height: picture.height,
    values: greyOf(picture.width, picture.height, picture.rgba).values,
  };
  const { marks } = seenMarks(grey);
  expect(marks.length).toBeGreaterThan(15);
  const found = planeScale(
    { ...grey, camera: 'telephone', focal: null, marks, points: [] },
    printScale('A4', { across: 190, along: 280 }, 0.25),
    [
      [0.2 * grey.width, 0.3 * grey.height],
      [0.8 * grey.width, 0.7 * grey.height],
    ],
  );
  if ('ok' in found) throw new Error(found.code);
  expect(found.u).toBeLessThan(0.02);
  const flat = flattened({ ...picture, rgba: new Uint8ClampedArray(picture.rgba) }, grey, found.scene.views[0]!, 1600)!;
  const page: Vec2[] = [
    [-105, 148.5],
    [105, 148.5],
    [105, -148.5],
    [-105, -148.5],
  ];
  const inFlat = ([x, y]: Vec2): Vec2 => [(x - flat.corner[0]) / flat.mm, flat.height - (y - flat.corner[1]) / flat.mm];
  const { outline } = leatherOutline(flat, [page.map(inFlat)], {
    corners: OUTLINE_LIMITS.corners,
    defects: MOST_DEFECTS,
  })!;
  // The page is the frame: the scene's own axes begin 120 mm to its right.
  const corners = [-1, 1].flatMap((x) =>
    [-x, x].map((y): Vec2 => {
      const [p, q] = [(x * LEATHER.width) / 2, (y * LEATHER.height) / 2];
      const [c, s] = [Math.cos(LEATHER.angle), Math.sin(LEATHER.angle)];
      return [LEATHER.at[0] + 120 + c * p - s * q, LEATHER.at[1] + s * p + c * q];
    }),
  );
  const off = outline.map(([x, y]) => {
    const at: Vec2 = [flat.corner[0] + x * flat.mm, flat.corner[1] + (flat.height - y) * flat.mm];
    return Math.min(...corners.map((corner, i) => pointToSegment(at, corner, corners[(i + 1) % 4]!)));
  });
  expect(Math.max(...off)).toBeLessThan(2);
});
