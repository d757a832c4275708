import type { Vec2 } from '../math/vec2.ts';
import type { Vec3 } from '../math/vec3.ts';

/**
 * A camera without its place: focal length and principal point in pixels, and two terms of radial distortion.
 *
 * Pixels are squares of side 1, and the first one's centre is at (0.5, 0.5), so that a picture brought down to half has all its
 * points at half of theirs.
 */
export interface Lens {
  readonly focal: number;
  readonly centre: Vec2;
  readonly k1: number;
  readonly k2: number;
}

/**
 * Where a camera stands: turn (Rodrigues vector, radians; 0 looks straight down on the sheet with its y upward in the picture) and
 * where the origin of the sheet lies before it, mm: x to the right, y down, z away from the camera.
 */
export interface Standpoint {
  readonly turn: Vec3;
  readonly shift: Vec3;
}

/** Rotation matrix by rows. */
export type Rotation = readonly [Vec3, Vec3, Vec3];

/** Rotation by a Rodrigues vector: axis times angle. */
export function rotationBy([x, y, z]: Vec3): Rotation {
  const angle = Math.hypot(x, y, z);
  // sin(a) / a and (1 - cos(a)) / a^2, by their series where the angle is next to nothing.
  const s = angle < 1e-6 ? 1 : Math.sin(angle) / angle;
  const c = angle < 1e-6 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
  return [
    [1 - c * (y * y + z * z), c * x * y - s * z, c * x * z + s * y],
    [c * x * y + s * z, 1 - c * (x * x + z * z), c * y * z - s * x],
    [c * x * z - s * y, c * y * z + s * x, 1 - c * (x * x + y * y)],
  ];
}

/** The Rodrigues vector of a rotation; of the two that a half turn has, one. */
export function turnOf([[xx, xy, xz], [yx, yy, yz], [zx, zy, zz]]: Rotation): Vec3 {
  // By the quaternion's largest element (Shepperd 1978), which is sound at a half turn too.
  const squares = [1 + xx + yy + zz, 1 + xx - yy - zz, 1 - xx + yy - zz, 1 - xx - yy + zz];
  const largest = squares.indexOf(Math.max(...squares));
  const root = 2 * Math.sqrt(squares[largest]!);
  const own = root / 4;
  const parts = [
    [own, (zy - yz) / root, (xz - zx) / root, (yx - xy) / root],
    [(zy - yz) / root, own, (xy + yx) / root, (xz + zx) / root],
    [(xz - zx) / root, (xy + yx) / root, own, (yz + zy) / root],
    [(yx - xy) / root, (xz + zx) / root, (yz + zy) / root, own],
  ][largest]!;
  const [w, x, y, z] = parts as [number, number, number, number];
  const sine = Math.hypot(x, y, z);
  const factor = sine < 1e-12 ? 2 / w : (2 * Math.atan2(sine, w)) / sine;
  return [x * factor, y * factor, z * factor];
}

/** A point of the sheet's space as the camera sees it: x to the right, y down, z away from it, mm. */
export function seenFrom(rotation: Rotation, shift: Vec3, [x, y, z]: Vec3): Vec3 {
  // The sheet's y points up in the picture and its z toward the camera.
  const along = ([a, b, c]: Vec3): number => a * x - b * y - c * z;
  return [along(rotation[0]) + shift[0], along(rotation[1]) + shift[1], along(rotation[2]) + shift[2]];
}

/**
 * Pixel where a point before the camera is seen: pinhole with radial distortion, x_d = x (1 + k1 r^2 + k2 r^4) of the
 * coordinates x = X / Z (Brown 1971, Close-range camera calibration; Zhang 2000, A flexible new technique for camera calibration).
 */
export function pixelOf({ focal, centre, k1, k2 }: Lens, [x, y, z]: Vec3): Vec2 {
  const [u, v] = [x / z, y / z];
  const r2 = u * u + v * v;
  const stretch = focal * (1 + r2 * (k1 + r2 * k2));
  return [centre[0] + stretch * u, centre[1] + stretch * v];
}

/** Direction (x, y, with z 1) in which a pixel looks: the inverse of `pixelOf`, by Newton's method on the radius. */
export function sightOf({ focal, centre, k1, k2 }: Lens, pixel: Vec2): Vec2 {
  const [u, v] = [(pixel[0] - centre[0]) / focal, (pixel[1] - centre[1]) / focal];
  const distorted = Math.hypot(u, v);
  if (distorted === 0) return [0, 0];
  let r = distorted;
  for (let i = 0; i < 20; i++) {
    const r2 = r * r;
    const slope = 1 + r2 * (3 * k1 + 5 * k2 * r2);
    const step = (r * (1 + r2 * (k1 + k2 * r2)) - distorted) / Math.max(slope, 0.1);
    r -= step;
    if (Math.abs(step) < 1e-12) break;
  }
  return [(u * r) / distorted, (v * r) / distorted];
}

/** The point at height `z` over the sheet that a camera sees in a direction; null where it looks away from that plane. */
export function pointAtHeight(pose: Standpoint, [u, v]: Vec2, height: number): Vec2 | null {
  const rotation = rotationBy(pose.turn);
  const { shift } = pose;
  // Back to the sheet's axes: the transposed rotation, with y and z turned over.
  const back = (a: Vec3): Vec3 => {
    const part = (i: 0 | 1 | 2): number => rotation[0][i] * a[0] + rotation[1][i] * a[1] + rotation[2][i] * a[2];
    return [part(0), -part(1), -part(2)];
  };
  const eye = back([-shift[0], -shift[1], -shift[2]]);
  const ray = back([u, v, 1]);
  const far = (height - eye[2]) / ray[2];
  return Number.isFinite(far) && far > 0 ? [eye[0] + far * ray[0], eye[1] + far * ray[1]] : null;
}
