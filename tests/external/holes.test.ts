import { describe, expect, test } from 'vitest';
import { evenPitch } from '../../src/core/pattern/evenPitch.ts';
import { holeCount, seamHoles } from '../../src/core/pattern/seamHoles.ts';
import { coverOf } from '../core/pattern/coverOf.ts';

/** A published cover: seam 760 mm, 190 holes, so a pitch of 4.0 mm. Source: 3leather.com/gallery/a6size-notebook-cover. */
const PUBLISHED = { seam: 760, holes: 190, pitch: 4 } as const;

describe('published hole counts', () => {
  test('a seam of 760 mm at 4.0 mm has 190 intervals, which closed are 190 holes', () => {
    expect(evenPitch(PUBLISHED.seam, PUBLISHED.pitch)).toEqual({ intervals: PUBLISHED.holes, pitch: 4, off: 0 });
  });

  test('a whole cover whose seam measures 760 mm has 190 holes', () => {
    // 228 + 152 mm, twice round, is the 760 mm; the seam line runs 4 mm inside the cut edge. The split is ours: the
    // source gives the total only. So is the depth: its mouths end halfway between two holes.
    const design = coverOf({
      book: { width_mm: 100, height_mm: 148, thickness_mm: 8 },
      seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: PUBLISHED.pitch },
      pockets: { depth_mm: 48.45 },
      pattern: { outsideWidth_mm: 236, outsideHeight_mm: 160 },
    });
    const seam = seamHoles(design);
    expect(seam.rows.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(PUBLISHED.seam, 9);
    expect(holeCount(seam)).toBe(PUBLISHED.holes);
  });
});
