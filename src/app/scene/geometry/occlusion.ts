import { type Plane, Ray, Vector3 } from 'three';
import type { FoldedCover, MeshData, PartName } from '../../../core/index.ts';

/** What stands between the camera and a mark. Leather over a board is seen through, the rest of it lies close to these. */
const SOLID: ReadonlySet<PartName> = new Set(['frontBoard', 'backBoard', 'spine', 'frontPages', 'backPages', 'leaves']);

/** Hits this near to a place belong to the surface that it lies on, mm. */
const NEAR = 0.5;

/** Whether a place of a surface with the normal `out` is hidden from an eye, all in the frame of the meshes. */
export type IsHidden = (place: Vector3, out: Vector3, eye: Vector3) => boolean;

/**
 * @param seenInto whether the inside of the cover shows, by opening or by a cut: only then can surfaces be seen from behind
 * @param cut what lies on its negative side is taken away and hides nothing
 */
export function occlusion({ parts }: FoldedCover, seenInto: boolean, cut: Plane | null): IsHidden {
  const solids = parts.filter(({ part }) => SOLID.has(part));
  return (place, out, eye) => {
    if (!seenInto && out.dot(eye) < out.dot(place)) return true;
    const ray = new Ray(eye, place.clone().sub(eye).normalize());
    const reach = eye.distanceTo(place) - NEAR;
    return solids.some((mesh) => isBefore(mesh, ray, reach, cut));
  };
}

/**
 * Whether a solid stands in a ray's way before `reach`, by Möller and Trumbore (1997, Journal of Graphics Tools 2, 21). Written
 * by numbers alone: for each mark it runs over every triangle in every frame.
 */
function isBefore({ positions: p, indices }: MeshData, { origin, direction }: Ray, reach: number, cut: Plane | null) {
  const { x: ox, y: oy, z: oz } = origin;
  const { x: dx, y: dy, z: dz } = direction;
  const hit = new Vector3();
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [3 * indices[i]!, 3 * indices[i + 1]!, 3 * indices[i + 2]!];
    const [ax, ay, az] = [p[a]!, p[a + 1]!, p[a + 2]!];
    const [ex, ey, ez] = [p[b]! - ax, p[b + 1]! - ay, p[b + 2]! - az];
    const [fx, fy, fz] = [p[c]! - ax, p[c + 1]! - ay, p[c + 2]! - az];
    const [px, py, pz] = [dy * fz - dz * fy, dz * fx - dx * fz, dx * fy - dy * fx];
    const det = ex * px + ey * py + ez * pz;
    // Closed solids: their faces toward the eye are enough, unless they are cut open.
    if (det === 0 || (det < 0 && cut === null)) continue;
    const [sx, sy, sz] = [ox - ax, oy - ay, oz - az];
    const u = (sx * px + sy * py + sz * pz) / det;
    if (u < 0 || u > 1) continue;
    const [qx, qy, qz] = [sy * ez - sz * ey, sz * ex - sx * ez, sx * ey - sy * ex];
    const v = (dx * qx + dy * qy + dz * qz) / det;
    if (v < 0 || u + v > 1) continue;
    const t = (fx * qx + fy * qy + fz * qz) / det;
    if (t < 0 || t >= reach) continue;
    if (cut === null || cut.distanceToPoint(hit.set(ox + t * dx, oy + t * dy, oz + t * dz)) >= 0) return true;
  }
  return false;
}
