import { type Box3, Vector3 } from 'three';
import type { Insets } from '../insets.ts';
import type { Slice } from '../slice.ts';
import type { Viewpoint } from '../viewpoints.ts';

/** Position and target of the camera, mm on the bench. */
export interface Framing {
  readonly position: Vector3;
  readonly target: Vector3;
}

/**
 * Direction from the book to the camera. On the bench: the back board's fore-edge is +x, up is +y, the tail is +z; the
 * front board has swung by `opening` from +x over +y.
 */
export function viewDirection(viewpoint: Viewpoint, opening: number): Vector3 {
  const bisector = Math.max(opening / 2, Math.PI / 5);
  const directions: Record<Viewpoint, readonly [number, number, number]> = {
    'three-quarter': [0.55, 0.72, 0.95],
    'fore-edge': [1, 0.16, 0.02],
    spine: [-1, 0.3, 0.02],
    head: [0.02, 0.16, -1],
    tail: [0.02, 0.16, 1],
    front: [-Math.sin(opening), Math.cos(opening), 0.22],
    back: [0, -1, -0.22],
    inside: [Math.cos(bisector), Math.sin(bisector), 0.35],
  };
  return new Vector3(...directions[viewpoint]).normalize();
}

/** Direction from a cut face to the camera: nearly square to it, a little from above and aside to show depth. */
export const sliceDirection = (axis: Slice['axis']): Vector3 =>
  (axis === 'acrossSpine' ? new Vector3(0.12, 0.24, 1) : new Vector3(1, 0.24, 0.14)).normalize();

/** The camera of a scene: vertical field of view, degrees, and the nearest and the farthest that it sees, mm. */
export const CAMERA = { fov: 24, near: 10, far: 8000 } as const;

/** How a camera sees: vertical field of view, radians, and width over height. */
export interface Lens {
  readonly fov: number;
  readonly aspect: number;
}

/** The free part of a picture: as a lens of its own, and how far its middle lies from that of the picture, px. */
export interface FreeView {
  readonly lens: Lens;
  readonly shift: readonly [right: number, down: number];
}

/** Least side of the free part that is counted with, px. */
const LEAST_SIDE = 40;

/**
 * @param fov vertical field of view of the whole picture, radians
 * @param size of the whole picture, px
 */
export function freeView(
  fov: number,
  size: { readonly width: number; readonly height: number },
  insets: Insets,
): FreeView {
  const { top, right, bottom, left } = insets;
  const width = Math.max(LEAST_SIDE, size.width - left - right);
  const height = Math.max(LEAST_SIDE, size.height - top - bottom);
  return {
    lens: { fov: 2 * Math.atan((Math.tan(fov / 2) * height) / Math.max(1, size.height)), aspect: width / height },
    shift: [(left - right) / 2, (top - bottom) / 2],
  };
}

/** Share of the picture that is left free round the box. */
const MARGIN = 0.07;

/**
 * Places a camera in direction `from` so that every corner of the box is in the picture, as close as that allows.
 * @param box what to show, mm
 * @param from direction from the box to the camera, unit vector
 */
export function frame(box: Box3, from: Vector3, lens: Lens): Framing {
  const target = box.getCenter(new Vector3());
  const right = new Vector3(0, 1, 0).cross(from).normalize();
  const up = new Vector3().crossVectors(from, right);
  const high = Math.tan(lens.fov / 2) * (1 - MARGIN);
  const wide = high * lens.aspect;
  let distance = 1;
  for (let i = 0; i < 8; i++) {
    const corner = new Vector3(
      i & 1 ? box.max.x : box.min.x,
      i & 2 ? box.max.y : box.min.y,
      i & 4 ? box.max.z : box.min.z,
    ).sub(target);
    const needed = Math.max(Math.abs(corner.dot(right)) / wide, Math.abs(corner.dot(up)) / high);
    distance = Math.max(distance, needed + corner.dot(from));
  }
  return { target, position: target.clone().addScaledVector(from, distance) };
}
