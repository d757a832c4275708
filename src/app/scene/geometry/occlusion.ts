import { type Plane, Ray, Triangle, Vector3 } from 'three';
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
  const triangle = new Triangle();
  const hit = new Vector3();
  return (place, out, eye) => {
    if (!seenInto && out.dot(eye) < out.dot(place)) return true;
    const ray = new Ray(eye, place.clone().sub(eye).normalize());
    const reach = eye.distanceTo(place) - NEAR;
    const isBefore = (mesh: MeshData, first: number): boolean => {
      triangle.a.fromArray(mesh.positions, 3 * mesh.indices[first]!);
      triangle.b.fromArray(mesh.positions, 3 * mesh.indices[first + 1]!);
      triangle.c.fromArray(mesh.positions, 3 * mesh.indices[first + 2]!);
      // Closed solids: their faces toward the eye are enough.
      if (!ray.intersectTriangle(triangle.a, triangle.b, triangle.c, cut === null, hit)) return false;
      return hit.distanceTo(eye) < reach && (cut === null || cut.distanceToPoint(hit) >= 0);
    };
    return solids.some((mesh) => {
      for (let i = 0; i < mesh.indices.length; i += 3) if (isBefore(mesh, i)) return true;
      return false;
    });
  };
}
