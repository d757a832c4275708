import { type Plane, Vector3 } from 'three';
import type { FitMark, Vec3 } from '../../../core/index.ts';

/** A measure that leans out of the cut by more than this share of its length cannot be read on it. */
const LEAN = 0.5;

/**
 * Marks for a cut assembly: a measure that lies along the cut is moved onto the cut face, where its gap is seen; one
 * square to it stays if what it measures is not cut away.
 * @param plane cut, in the frame of the meshes; its negative side is taken away
 */
export function marksOnCut(marks: readonly FitMark[], plane: Plane): FitMark[] {
  const height = (place: Vec3): number => plane.distanceToPoint(new Vector3(...place));
  return marks.flatMap((mark) => {
    const [from, to] = [new Vector3(...mark.from), new Vector3(...mark.to)];
    const span = to.clone().sub(from);
    const squareToCut = Math.abs(span.dot(plane.normal)) > LEAN * span.length();
    if (squareToCut) return plane.distanceToPoint(from) < 0 || plane.distanceToPoint(to) < 0 ? [] : [mark];
    const [first, last] = [mark.band?.rungs[0]?.[0], mark.band?.rungs.at(-1)?.[0]];
    // Beyond the ends of the edge the cut shows no board.
    if (first && last && height(first) * height(last) > 0) return [];
    const onCut = (point: Vector3): Vec3 => plane.projectPoint(point, new Vector3()).toArray();
    return [{ ...mark, from: onCut(from), to: onCut(to) }];
  });
}
