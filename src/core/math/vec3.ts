/** A point or direction in space: x and y across the spine as in the section, z along the spine, head positive. */
export type Vec3 = readonly [x: number, y: number, z: number];

/** The three numbers at place `i` of a list that holds three for each place. */
export const tripleAt = (list: ArrayLike<number>, i: number): Vec3 => [
  list[3 * i]!,
  list[3 * i + 1]!,
  list[3 * i + 2]!,
];

/** k a + l b */
export const combine3 = (a: Vec3, k: number, b: Vec3, l: number): Vec3 => [
  k * a[0] + l * b[0],
  k * a[1] + l * b[1],
  k * a[2] + l * b[2],
];
export const dot3 = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross3 = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** Vector of length 1 in the same direction; the zero vector stays as it is. */
export function unit3([x, y, z]: Vec3): Vec3 {
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  return [x / length, y / length, z / length];
}
