import type { CoverDesign } from '../../fold/coverDesign.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { convexChain } from '../../math/convexChain.ts';
import type { Vec2 } from '../../math/vec2.ts';
import type { FoldedHole } from '../meshData.ts';
import { edgeCourse } from '../seam/seamCourse.ts';
import { strandSweep } from '../seam/strandSweep.ts';

/** Stations of the stretch that is looked at, and those between which every strand is as it is all along the edge. */
const STATIONS = 9;
const [FROM, TO] = [3, 6];

/**
 * What a strap over the seam of a fore-edge lies on: the hull of thread or lace in section, from the leather to the edge's
 * far side, mm from the seam line toward the edge and out of the grain side. Nothing where no seam runs along the fore-edge.
 */
export function strandPegs(design: CoverDesign, point: RangePoint): Vec2[] {
  const course = edgeCourse(design, point, STATIONS);
  if (course === null) return [];
  const { pitch, stations } = course.strands[0]!.row;
  const seam = stations.map(({ stack }, i): FoldedHole => {
    return { at: [0, 0, i * pitch], along: [0, 0, 1], out: [0, 1, 0], edgeward: [1, 0, 0], pitch, stack };
  });
  const { positions } = strandSweep(course, 'fine').lay(seam);
  const margin = stations[0]!.reach;
  const points: Vec2[] = [];
  for (let k = 0; k < positions.length; k += 3) {
    const [x, y, z] = [positions[k]!, positions[k + 1]!, positions[k + 2]!];
    if (z >= FROM * pitch && z <= TO * pitch && (y > 0 || x > margin)) points.push([x, y]);
  }
  points.sort((a, b) => b[0] - a[0] || a[1] - b[1]);
  return convexChain(points)
    .map((i) => points[i]!)
    .reverse();
}
