import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeLabels } from '../../../src/app/scene/marks/placeLabels.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const FRAME = { left: 20, top: 110, right: 410, bottom: 510 };

describe('labels of the fit marks', () => {
  test('a label with nothing in its way stays where it is wanted', () => {
    expect(placeLabels([{ at: [200, 210], width: 90, height: 22 }], FRAME)).toEqual([[200, 210]]);
  });

  test('six labels never overlap and never leave the free part of the picture, wherever they are wanted', () => {
    const wish = fc.record({
      at: fc.tuple(fc.double({ min: -50, max: 560, noNaN: true }), fc.double({ min: -50, max: 560, noNaN: true })),
      width: fc.double({ min: 60, max: 180, noNaN: true }),
      height: fc.constant(22),
    });
    checkLaw(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 6 }), (wishes) => {
        const boxes = placeLabels(wishes, FRAME).map(([x, y], i) => ({ x, y, ...nth(wishes, i) }));
        for (const [i, a] of boxes.entries()) {
          expect(a.x - a.width / 2).toBeGreaterThanOrEqual(FRAME.left);
          expect(a.x + a.width / 2).toBeLessThanOrEqual(FRAME.right);
          expect(a.y - a.height / 2).toBeGreaterThanOrEqual(FRAME.top);
          expect(a.y + a.height / 2).toBeLessThanOrEqual(FRAME.bottom);
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
