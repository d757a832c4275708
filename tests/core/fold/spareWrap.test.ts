import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { frictionOnBook, spareWrap } from '../../../src/core/fold/spareWrap.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const ledger = nth(EXAMPLE_JOBS, 0).document;
const designOf = (change: object) => coverDesign(soundJob({ ...ledger, ...change }));

describe('the spare wrap of a closed cover', () => {
  test.each([
    ['centred', 0.5],
    ['spine', 0.5],
    ['front', 0],
    ['back', 1],
  ] as const)('pushed home with the boards %s leaves %f of it at the front fore-edge', (seating, share) => {
    const design = designOf({ seating });
    const wrap = design.fits.thin.closedSlack;
    const spare = spareWrap(design, 'thin');
    expect(wrap).toBeGreaterThan(1);
    expect(spare).toMatchObject({ wrap, toOneSide: wrap });
    expect(spare.pushedHome.front).toBeCloseTo(share * wrap, 12);
    expect(spare.pushedHome.front + spare.pushedHome.back).toBeCloseTo(wrap, 12);
  });

  test('is none at the fore-edges where the wrap is short', () => {
    const { wrap, pushedHome, toOneSide } = spareWrap(designOf({ pattern: { outsideWidth_mm: 370 } }), 'thick');
    expect(wrap).toBeLessThan(0);
    expect({ pushedHome, toOneSide }).toEqual({ pushedHome: { front: 0, back: 0 }, toOneSide: 0 });
  });

  test('slides on the book by the friction of the leather that touches it', () => {
    const leather = { outside: { min_mm: 1.5, max_mm: 2, friction: 0.3 } };
    expect(frictionOnBook(soundJob({ ...ledger, leather }))).toBe(0.3);
    const lining = { min_mm: 0.6, max_mm: 0.8, friction: 0.5 };
    expect(frictionOnBook(soundJob({ ...ledger, leather: { ...leather, lining } }))).toBe(0.5);
  });
});
