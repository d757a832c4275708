import { expect, test } from 'vitest';
import { jointSlide } from '../../../../src/core/book/bookOutline.ts';
import { coverSection } from '../../../../src/core/fold/section/coverSection.ts';
import { coverOf } from '../../pattern/coverOf.ts';

test.each(['none', 'centre', 'full'] as const)(
  'the outside is drawn to its cut edge and no farther, lining: %s',
  (lining) => {
    const lined =
      lining === 'none' ? {} : { construction: { lining }, leather: { lining: { min_mm: 0.6, max_mm: 0.8 } } };
    const design = coverOf(lined);
    const { book, foreEdge } = design.needs.thick;
    const reach = book.width + design.fits.thick.foreEdge.front + foreEdge.seat + foreEdge.margin;
    const { outside } = coverSection(design, 'thick', 0);
    expect(Math.max(...outside.map(([x]) => x)) - jointSlide(book, 0)).toBeCloseTo(reach, 9);
  },
);
