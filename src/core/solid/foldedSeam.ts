import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { combine3 } from '../math/vec3.ts';
import type { SeamLayer } from '../pattern/seam.ts';
import { seamHoles } from '../pattern/seamHoles.ts';
import type { CoverGrid } from './coverGrid.ts';
import { coverSampler } from './coverSampler.ts';
import type { FoldedHole } from './meshData.ts';

/** The pattern's seam holes on the folded outside, in the order of the seam. */
export function foldedSeam(design: CoverDesign, point: RangePoint, grid: CoverGrid): FoldedHole[] {
  const place = coverSampler(grid);
  const { outside, pocket, lining } = design.needs[point].leathers;
  const thickness: Readonly<Record<SeamLayer, number>> = {
    outside: outside.thickness,
    frontPocket: pocket.thickness,
    backPocket: pocket.thickness,
    lining: lining?.thickness ?? 0,
    frontTurnedEnd: outside.thickness,
    backTurnedEnd: outside.thickness,
  };
  return seamHoles(design).rows.flatMap(({ holes, pitch }) =>
    holes.map((hole): FoldedHole => {
      const { at, out, alongS, alongV } = place(...hole.at);
      const [c, s] = [Math.cos(hole.heading), Math.sin(hole.heading)];
      return {
        at,
        along: combine3(alongS, c, alongV, s),
        out,
        // The seam runs counterclockwise: the edge is on its right.
        edgeward: combine3(alongS, s, alongV, -c),
        pitch,
        stack: hole.layers.reduce((sum, layer) => sum + thickness[layer], 0),
      };
    }),
  );
}
