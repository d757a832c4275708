import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { remembered } from '../math/remembered.ts';
import { combine3 } from '../math/vec3.ts';
import { seamHoles } from '../pattern/seamHoles.ts';
import type { CoverGrid } from './coverGrid.ts';
import { coverSampler } from './coverSampler.ts';
import type { FoldedHole } from './meshData.ts';
import { stackAt } from './seam/stackAt.ts';

/** The holes of a design, each row with the stack at its holes. */
const holesOf = remembered((design: CoverDesign, point: RangePoint) => {
  const stack = stackAt(design, point);
  const { rows, isClosed } = seamHoles(design);
  return { isClosed, rows: rows.map(({ holes, pitch }) => ({ holes, pitch, stacks: holes.map(stack) })) };
});

/** The pattern's seam holes on the folded outside, in the order of the seam. */
export function foldedSeam(design: CoverDesign, point: RangePoint, grid: CoverGrid): FoldedHole[] {
  const place = coverSampler(grid);
  const { rows, isClosed } = holesOf(design, point);
  const loop = rows.flatMap(({ holes }) => holes);
  let index = 0;
  return rows.flatMap(({ holes, pitch, stacks }) =>
    holes.map((hole, i): FoldedHole => {
      const { at, out, alongS, alongV } = place(...hole.at);
      const [c, s] = [Math.cos(hole.heading), Math.sin(hole.heading)];
      index++;
      const next = isClosed ? loop[index % loop.length] : holes[i + 1];
      const halfway = next && place((hole.at[0] + next.at[0]) / 2, (hole.at[1] + next.at[1]) / 2);
      return {
        at,
        along: combine3(alongS, c, alongV, s),
        out,
        // The seam runs counterclockwise: the edge is on its right.
        edgeward: combine3(alongS, s, alongV, -c),
        pitch,
        stack: stacks[i]!,
        ...(halfway && { halfway: { at: halfway.at, out: halfway.out } }),
      };
    }),
  );
}
