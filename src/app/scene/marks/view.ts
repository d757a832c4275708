import { type Matrix4, type PerspectiveCamera, Vector3 } from 'three';
import type { Vec3 } from '../../../core/index.ts';
import type { Pixel } from './placeLabels.ts';

/** The picture as marks need it: where a place of the cover is in it, and from where it is seen. */
export interface View {
  readonly size: { readonly width: number; readonly height: number };
  /** In the frame of the meshes. */
  readonly eye: Vector3;
  pixel(place: Vector3): Pixel;
  /** Length that a pixel covers at a place, square to the line of sight, mm. */
  pixelAt(place: Vector3): number;
}

/** @param matrix from the frame of the meshes to the bench */
export function viewOf(
  camera: PerspectiveCamera,
  size: { readonly width: number; readonly height: number },
  matrix: Matrix4,
): View {
  // A gliding camera has moved since the last frame was drawn.
  camera.updateMatrixWorld();
  return {
    size,
    eye: camera.position.clone().applyMatrix4(matrix.clone().invert()),
    pixel(place) {
      const { x, y } = place.clone().applyMatrix4(matrix).project(camera);
      return [((x + 1) / 2) * size.width, ((1 - y) / 2) * size.height];
    },
    pixelAt(place) {
      const depth = -place.clone().applyMatrix4(matrix).applyMatrix4(camera.matrixWorldInverse).z;
      return (2 * depth) / (camera.projectionMatrix.elements[5]! * size.height);
    },
  };
}

export const vector = (v: Vec3): Vector3 => new Vector3(...v);
