import { dot3, type Vec3 } from './vec3.ts';

/**
 * Squared distance from the origin to a triangle, by the region of the triangle's plane in which the foot lies.
 * Ericson, Real-Time Collision Detection (2004), 5.1.5; from memory.
 */
export function squaredTriangleDistance(a: Vec3, b: Vec3, c: Vec3): number {
  const ab: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const ac: Vec3 = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const d1 = -dot3(ab, a);
  const d2 = -dot3(ac, a);
  if (d1 <= 0 && d2 <= 0) return dot3(a, a);
  const d3 = -dot3(ab, b);
  const d4 = -dot3(ac, b);
  if (d3 >= 0 && d4 <= d3) return dot3(b, b);
  const d5 = -dot3(ab, c);
  const d6 = -dot3(ac, c);
  if (d6 >= 0 && d5 <= d6) return dot3(c, c);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return squared(a, ab, d1 / (d1 - d3), ac, 0);
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return squared(a, ab, 0, ac, d2 / (d2 - d6));
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const w = (d4 - d3) / (d4 - d3 + (d5 - d6));
    return squared(a, ab, 1 - w, ac, w);
  }
  const sum = va + vb + vc;
  return squared(a, ab, vb / sum, ac, vc / sum);
}

/** |a + v ab + w ac|^2 */
function squared(a: Vec3, ab: Vec3, v: number, ac: Vec3, w: number): number {
  const x = a[0] + v * ab[0] + w * ac[0];
  const y = a[1] + v * ab[1] + w * ac[1];
  const z = a[2] + v * ab[2] + w * ac[2];
  return x * x + y * y + z * z;
}
