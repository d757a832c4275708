import { describe, expect, test } from 'vitest';
import { madeDesign } from '../../../src/core/fold/coverDesign.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { seamCourse } from '../../../src/core/solid/seam/seamCourse.ts';
import { type Change, coverOf } from './coverOf.ts';
import { SIX_IRONS } from './strideFaults.ts';

const CHANGES = [
  { changeAlong: -0.05, changeAcross: -0.05 },
  { changeAlong: 0.03, changeAcross: -0.02 },
];

const STITCHED = { method: 'stitching', style: 'saddle' };
const LACED = { method: 'lacing', style: 'whip' };

const TOOLS = [
  ...SIX_IRONS.map((iron) => ({
    tool: `${iron.kind} of ${iron.pitch_mm} mm`,
    seam: iron.kind === 'lacing chisel' ? { ...LACED, iron } : { ...STITCHED, iron },
  })),
  { tool: 'any tool, stitched', seam: { ...STITCHED, iron: null } },
  { tool: 'any tool, laced', seam: { ...LACED, iron: null } },
];

const FASTENINGS: readonly { readonly fastening: string; readonly change: Change }[] = [
  { fastening: 'pockets', change: {} },
  { fastening: 'rounded corners', change: { seam: { cornerRadius_mm: 12 }, construction: { corners: 'rounded' } } },
  { fastening: 'turned ends', change: { pockets: { construction: 'turned' } } },
  { fastening: 'a pen loop', change: { construction: { penLoop: {} } } },
  { fastening: 'a strap', change: { construction: { strap: {} } } },
  { fastening: 'a buckled strap', change: { construction: { strap: { fastening: 'buckle' } } } },
];

const cases = TOOLS.flatMap(({ tool, seam }) =>
  FASTENINGS.flatMap(({ fastening, change }) =>
    CHANGES.map((making) => ({
      name: `${tool}, ${fastening}, ${making.changeAlong}`,
      fastening,
      seam,
      change,
      making,
    })),
  ),
);

describe('the holes of a cover that changed its size in making', () => {
  test.each(cases)('are those punched: $name', ({ fastening, seam, change, making }) => {
    const design = coverOf({
      ...change,
      seam: { ...(change.seam as object), ...seam },
      making: { state: 'wet-formed', ...making },
    });
    const [across, along] = [1 + making.changeAcross, 1 + making.changeAlong];
    const punched = seamHoles(design).rows.flatMap(({ holes }) => holes);
    const folded = seamHoles(madeDesign(design)).rows.flatMap(({ holes }) => holes);
    expect(folded).toHaveLength(punched.length);
    for (const [i, hole] of folded.entries()) {
      const { at, layers, side, isCorner } = punched[i]!;
      expect(hole.at[0]).toBeCloseTo(at[0] * across, 9);
      expect(hole.at[1]).toBeCloseTo(at[1] * along, 9);
      expect({ layers: hole.layers, side: hole.side, isCorner: hole.isCorner }).toEqual({ layers, side, isCorner });
    }
    expect(seamHoles(madeDesign(design)).rows.map(({ intervals }) => intervals)).toEqual(
      seamHoles(design).rows.map(({ intervals }) => intervals),
    );
    // Thread and lace go through every one of them.
    const { strands } = seamCourse(design, 'nominal');
    const gone = new Set(strands.flatMap(({ row }) => row.stations.map(({ hole }) => hole)));
    expect(gone.size).toBe(punched.length);
    const { width, height } = design.made.outside;
    for (const { hole, reach } of strands.flatMap(({ row }) => row.stations)) {
      const { at, side, isCorner } = folded[hole]!;
      if (isCorner || seam.method === 'stitching' || fastening === 'rounded corners') continue;
      const [x, y] = at;
      // Lace goes over the edge as it is now.
      expect(reach).toBeCloseTo({ tail: y, head: height - y, frontForeEdge: x, backForeEdge: width - x }[side], 9);
    }
  });
});
