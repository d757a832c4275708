import { describe, expect, test } from 'vitest';
import { spotZones } from '../../../src/app/scene/spot.ts';
import type { CoverDesign } from '../../../src/core/index.ts';
import { designOf } from '../../core/report/madeUp.ts';

const DEPTH = 70;
/** Ends of the bands over the pockets, mm from the front cut edge. */
const bands = (design: CoverDesign): number[] => {
  const zones = spotZones(design, 'thick', 'pockets');
  expect(zones.map(({ axis }) => axis)).toEqual(['width', 'width']);
  return zones.flatMap(({ from, to }) => [from, to]);
};

describe('the pockets are lit through the outside, on a closed cover too', () => {
  test('from the cut edge, the margin and the depth from the seam', () => {
    const apart = designOf({ pockets: { depth_mm: DEPTH } });
    const [margin, { width }] = [apart.job.seam.edgeMargin_mm, apart.pieces.outside];
    const deep = margin + DEPTH;
    for (const [i, at] of [0, deep, width - deep, width].entries()) expect(bands(apart)[i]).toBeCloseTo(at, 9);
  });

  test('from the turn where the ends are turned in', () => {
    const turned = designOf({ pockets: { construction: 'turned', depth_mm: DEPTH } });
    const { turn } = turned.needs.thick.foreEdge;
    const { width } = turned.pieces.outside;
    const expected = [DEPTH, 2 * DEPTH + turn, width - 2 * DEPTH - turn, width - DEPTH];
    for (const [i, at] of expected.entries()) expect(bands(turned)[i]).toBeCloseTo(at, 9);
  });
});
