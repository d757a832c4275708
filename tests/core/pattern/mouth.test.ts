import { describe, expect, test } from 'vitest';
import { mouthInset, mouthSagitta } from '../../../src/core/pattern/mouth.ts';
import { coverOf } from './coverOf.ts';

/** A cover 400 mm high with a seam 20 mm from its edge; its mouth is scooped by half the depth of the pockets. */
function mouthOf(depth_mm: number, mouth: 'curved' | 'straight' = 'curved'): [sagitta: number, inset: number] {
  const { job, pieces } = coverOf({
    seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 20 },
    construction: { mouth, mouthCurve: 0.5 },
    pockets: { depth_mm },
    pattern: { outsideHeight_mm: 400 },
  });
  return [mouthSagitta(job, pieces), mouthInset(job, pieces)];
}

describe('a scooped pocket mouth', () => {
  test('is scooped by its share of the depth; 20 mm from its ends its arc has come in by 10 mm', () => {
    // Half the height 200, sagitta 50: radius 425, centre 375 behind the ends (8-15-17). 180 off the middle the arc stands
    // sqrt(425^2 - 180^2) = 385 from the centre.
    const [sagitta, inset] = mouthOf(100);
    expect(sagitta).toBe(50);
    expect(inset).toBeCloseTo(10, 9);
  });

  test('is scooped by a quarter of the height at most', () => {
    // Half the height 200, sagitta 100: radius 250, centre 150 behind the ends; sqrt(250^2 - 180^2) - 150.
    const [sagitta, inset] = mouthOf(300);
    expect(sagitta).toBe(100);
    expect(inset).toBeCloseTo(Math.sqrt(30100) - 150, 9);
  });

  test('straight, is not scooped at all', () => expect(mouthOf(100, 'straight')).toEqual([0, 0]));
});
