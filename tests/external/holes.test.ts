import { expect, test } from 'vitest';
import { holeCount, seamHoles } from '../../src/core/pattern/seamHoles.ts';
import { coverOf } from '../core/pattern/coverOf.ts';

/** A published cover: seam 760 mm, 190 holes, so a pitch of 4.0 mm. Source: 3leather.com/gallery/a6size-notebook-cover. */
const PUBLISHED = { seam: 760, holes: 190, pitch: 4 } as const;

// The source gives the total only: the sides, which add up to half of it, are ours, and so is the depth, with mouths halfway
// between two holes. What the published count settles is that a seam all round has one hole an interval and one a corner.
test.each([
  [228, 152],
  [220, 160],
  [200, 180],
])('a seam of 760 mm round sides of %d and %d mm (ours) at 4.0 mm has the published 190 holes', (along, up) => {
  const margin = 4;
  const seam = seamHoles(
    coverOf({
      book: { width_mm: 90, height_mm: up - 8, thickness_mm: 8 },
      seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: margin, pitch_mm: PUBLISHED.pitch },
      pockets: { depth_mm: 48.45 },
      pattern: { outsideWidth_mm: along + 2 * margin, outsideHeight_mm: up + 2 * margin },
    }),
  );
  expect(seam.rows.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(PUBLISHED.seam, 9);
  expect(holeCount(seam)).toBe(PUBLISHED.holes);
});
