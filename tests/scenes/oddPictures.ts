import { MARKED_PAPERS, markedPage, rotationBy } from '../../src/core/index.ts';
import type { Vec3 } from '../../src/core/math/vec3.ts';
import { turnOf } from '../../src/core/photograph/camera.ts';
import { type Drawn, drawnScene } from './drawnScene.ts';
import { mapPage } from './renderedScene.ts';
import type { Scrap, TestCamera, TestScene } from './testScene.ts';

/** The scene with every other mark of each page under a scrap of cloth. */
export function halfHidden(scene: TestScene): TestScene {
  const scraps = scene.pages.flatMap((laid) =>
    markedPage(laid.paper, laid.page)
      .marks.filter((_, i) => i % 2 === 0)
      .map(
        ({ corners: [upperLeft, , lowerRight] }): Scrap => ({
          at: mapPage(laid, scene.print, [(upperLeft[0] + lowerRight[0]) / 2, (upperLeft[1] + lowerRight[1]) / 2]),
          angle: laid.angle + 0.3,
          width: 26,
          height: 24,
          colour: [0.25, 0.2, 0.3],
        }),
      ),
  );
  return { ...scene, scraps };
}

/** The camera turned clockwise about the way it looks, by so many quarters of a turn: the picture's head comes to its right. */
export function turnedCamera(camera: TestCamera, quarters: 1 | 2 | 3): TestCamera {
  let turned = camera;
  for (let i = 0; i < quarters; i++) {
    const { width, height, lens, pose } = turned;
    const quarter = ([x, y, z]: Vec3): Vec3 => [-y, x, z];
    const [a, b, c] = rotationBy(pose.turn);
    turned = {
      ...turned,
      width: height,
      height: width,
      lens: { ...lens, centre: [height - lens.centre[1], lens.centre[0]] },
      pose: { turn: turnOf([[-b[0], -b[1], -b[2]], a, c]), shift: quarter(pose.shift) },
    };
  }
  return turned;
}

/** A measuring page shown on a screen, at 0.62 of its size, with nothing on it. */
export function onScreen(seed: number): Drawn {
  const drawn = drawnScene(seed, { kind: 'thin', ground: 'screen' });
  const pages = drawn.scene.pages.slice(0, 1).map((page) => ({ ...page, curl: [0, 0] as const }));
  const scale = 0.62;
  const size = MARKED_PAPERS.A4;
  const tall = size.height * scale;
  const cameras = drawn.cameras.map((camera) => ({
    ...camera,
    // As much nearer as the page is smaller.
    pose: { ...camera.pose, shift: camera.pose.shift.map((each) => each * (tall / size.height)) as unknown as Vec3 },
  }));
  return { ...drawn, scene: { ...drawn.scene, pages, print: { across: scale, along: scale }, book: null }, cameras };
}
