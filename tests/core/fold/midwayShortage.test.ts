import { expect, test } from 'vitest';
import { wrapAt } from '../../../src/core/allowance/wrap.ts';
import { symmetricOpening } from '../../../src/core/book/bookOutline.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { midwayShortage } from '../../../src/core/fold/midwayShortage.ts';
import { seatToSeat } from '../../../src/core/pattern/pieces.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const designOf = (jointDip_mm: number, rise_mm: number, outsideWidth_mm: number | null = null) =>
  coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 1,
      book: {
        width_mm: 120,
        height_mm: 180,
        thickness_mm: 50,
        jointDip_mm,
        spine: { shape: rise_mm > 0 ? 'rounded' : 'flat', rise_mm },
      },
      leather: { outside: { min_mm: 0.8, max_mm: 0.8 } },
      ease: { foreEdge_mm: 0 },
      pattern: { rounding_mm: 0, outsideWidth_mm },
    }),
  );

test('a rounded back whose joints give way a lot is short midway, by what the longest taut wrap lacks', () => {
  const design = designOf(5, 6);
  const { short, opening } = defined(midwayShortage(design, 'thick') ?? undefined);
  const { book, leathers } = design.needs.thick;
  const lengths: number[] = Array.from(
    { length: 181 },
    (_, k) => wrapAt(book, symmetricOpening((Math.PI * k) / 180), leathers).length,
  );
  const longest = Math.max(...lengths);
  expect(design.fits.thick.closedSlack).toBeGreaterThanOrEqual(-1e-9);
  expect(short).toBeGreaterThan(0.1);
  expect(Math.abs(short - (longest - seatToSeat(design.pieces, design.needs.thick)))).toBeLessThan(0.02);
  expect(Math.abs(opening - (lengths.indexOf(longest) * Math.PI) / 180)).toBeLessThan(0.2);
});

test('a flat back is short at one end if at all, and what is short there is not told again', () => {
  expect(midwayShortage(designOf(5, 0), 'thick')).toBeNull();
  expect(midwayShortage(designOf(5, 6, 280), 'thick')).toBeNull();
});
