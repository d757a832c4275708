import { describe, expect, test } from 'vitest';
import { farthestPass } from '../core/solid/seam/farthestPass.ts';
import { SEAM_CASES, SEAM_POSES } from '../core/solid/seam/seamCases.ts';
import { proofSize } from './proofSize.ts';

/** Every hole of every design at every position; the ordinary tests take each eleventh hole at two positions. */
describe('every stitch passes its holes within 0.1 mm', () => {
  test.each(SEAM_CASES)(
    '$name',
    ({ name, design: make }) => {
      const design = make();
      const poses = SEAM_POSES.slice(0, proofSize(SEAM_POSES.length, 1));
      let farthest = 0;
      let holes = 0;
      for (const pose of poses) {
        const found = farthestPass(design, pose, proofSize(1, 0) === 1 ? 1 : 11);
        farthest = Math.max(farthest, found.farthest);
        holes += found.holes;
        expect({ pose, missed: found.missed }).toEqual({ pose, missed: 0 });
      }
      console.info(`${name}: ${holes} holes at ${poses.length} positions, farthest ${farthest.toFixed(4)} mm`);
      expect(farthest).toBeLessThan(0.1);
    },
    240_000,
  );
});
