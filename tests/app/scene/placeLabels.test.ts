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

  test('where the picture is small the most urgent labels are shown, whatever their order from top to foot', () => {
    const label = (y: number, width: number) => ({ at: [190, y], width, height: 22 }) as const;
    const small = { left: 0, top: 0, right: 390, bottom: 160 };
    const placed = placeLabels([label(120, 110), label(20, 260), label(70, 110)], small);
    expect(placed.map((centre) => centre !== null)).toEqual([true, false, true]);
    expect(placeLabels([label(120, 300)], { ...small, bottom: 60 })).toHaveLength(1);
    expect(placeLabels([label(20, 260)], { left: 0, top: 0, right: 1000, bottom: 700 })).toEqual([[190, 20]]);
  });

  test('labels that would cover one another are left out, the less urgent ones', () => {
    const flat = { left: 0, top: 0, right: 4000, bottom: 34 };
    const label = { at: [200, 17], width: 90, height: 22 } as const;
    const others = [{ ...label }, { ...label, at: [400, 17] }] as const;
    expect(placeLabels([label, ...others], flat)).toEqual([[200, 17], null, [400, 17]]);
  });

  test('six labels never overlap and never leave the free part of the picture, wherever they are wanted', () => {
    const wish = fc.record({
      at: fc.tuple(fc.double({ min: -50, max: 560, noNaN: true }), fc.double({ min: -50, max: 560, noNaN: true })),
      width: fc.double({ min: 60, max: 180, noNaN: true }),
      height: fc.constant(22),
    });
    checkLaw(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 6 }), (wishes) => {
        const boxes = placeLabels(wishes, FRAME).flatMap((centre, i) =>
          centre ? [{ x: centre[0], y: centre[1], ...nth(wishes, i) }] : [],
        );
        expect(boxes.length).toBeGreaterThan(0);
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
