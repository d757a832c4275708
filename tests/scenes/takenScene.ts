import { decode } from 'jpeg-js';
import { greyOf } from '../../src/artwork/picture/grey.ts';
import type { Photograph } from '../../src/core/index.ts';
import type { GreyPicture } from '../../src/sight/greyPicture.ts';
import { seenMarks } from '../../src/sight/seenMarks.ts';
import { focalIn35mm, photographFile } from './photographFile.ts';
import type { TestCamera, TestScene } from './testScene.ts';

/** A photograph of a scene as the program comes to have it: from its file, in greys. */
export function takenPicture(scene: TestScene, camera: TestCamera): GreyPicture {
  const { width, height, data } = decode(photographFile(scene, camera), { useTArray: true });
  return greyOf(width, height, data);
}

/** The photograph with the marks found in it, and the focal length that the camera wrote. */
export function takenPhotograph(picture: GreyPicture, camera: TestCamera): Photograph {
  const { width, height } = picture;
  const { marks } = seenMarks(picture);
  const focal = (focalIn35mm(camera) / Math.hypot(36, 24)) * Math.hypot(width, height);
  return { width, height, camera: 'telephone', focal, marks, points: [] };
}
