import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeLabels } from '../../../src/app/scene/marks/placeLabels.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const FRAME = { width: 390, height: 400 };

describe('labels of the fit marks', () => {
  test('a label with nothing in its way stays where it is wanted', () => {
    expect(placeLabels([{ at: [200, 100], width: 90, height: 22 }], FRAME)).toEqual([[200, 100]]);
  });

  test('six labels never overlap and never leave the picture, wherever they are wanted', () => {
    const wish = fc.record({
      at: fc.tuple(fc.double({ min: -50, max: 450, noNaN: true }), fc.double({ min: -50, max: 450, noNaN: true })),
      width: fc.double({ min: 60, max: 180, noNaN: true }),
      height: fc.constant(22),
    });
    checkLaw(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 6 }), (wishes) => {
        const boxes = placeLabels(wishes, FRAME).map(([x, y], i) => ({ x, y, ...nth(wishes, i) }));
        for (const [i, a] of boxes.entries()) {
          expect(a.x - a.width / 2).toBeGreaterThanOrEqual(0);
          expect(a.x + a.width / 2).toBeLessThanOrEqual(FRAME.width);
          expect(a.y - a.height / 2).toBeGreaterThanOrEqual(0);
          expect(a.y + a.height / 2).toBeLessThanOrEqual(FRAME.height);
          for (const b of boxes.slice(i + 1)) {
            const apart =
              Math.abs(a.x - b.x) >= (a.width + b.width) / 2 || Math.abs(a.y - b.y) >= (a.height + b.height) / 2;
            expect(apart).toBe(true);
          }
        }
      }),
    );
  });
});
