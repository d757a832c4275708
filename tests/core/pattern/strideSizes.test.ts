import { describe, expect, test } from 'vitest';
import { CutChances, loosestOf, spareOf } from '../../../src/core/doubt/spare.ts';
import { outsideSums } from '../../../src/core/pattern/cutSums.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { sumColumn } from '../../../src/core/pattern/sumColumn.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { defined } from '../../defined.ts';
import { coverOf } from './coverOf.ts';
import { SIX_IRONS } from './strideFaults.ts';

const stitched = (iron: object | null, seam: object = {}) => ({
  method: 'stitching',
  style: 'saddle',
  edgeMargin_mm: 4,
  pitch_mm: 4,
  iron,
  ...seam,
});

const [three] = SIX_IRONS;

describe('sizes for whole strides', () => {
  test.each(SIX_IRONS.filter(({ kind }) => kind !== 'lacing chisel'))(
    'leave two margins round whole strides, at $pitch_mm mm, and say so in the sum',
    (iron) => {
      const design = coverOf({ seam: stitched(iron), ease: { foreEdge_mm: null, head_mm: null, tail_mm: null } });
      const { width, height } = design.pieces.outside;
      for (const size of [width, height]) {
        const strides = (size - 8) / iron.pitch_mm;
        expect(strides).toBeCloseTo(Math.round(strides), 9);
      }
      for (const sum of outsideSums(design)) {
        expect(sum.parts.at(-1)?.name).toBe('to whole strides');
        const { total, lines } = sumColumn(sum, printer('mm'));
        const printed = lines.reduce((all, { isLess, whole }) => all + (isLess ? -1 : 1) * Number(whole), 0);
        expect(printed).toBeCloseTo(Number(total), 9);
      }
      for (const row of seamHoles(design).rows) expect(row.uneven).toBeUndefined();
    },
  );

  test('never take a fit below the chance that is wished and was reached', () => {
    for (const iron of SIX_IRONS.filter(({ kind }) => kind !== 'lacing chisel'))
      for (const thickness_mm of [20, 28, 33.3, 41]) {
        const change = {
          book: { thickness_mm, foreEdgeThickness_mm: thickness_mm },
          ease: { foreEdge_mm: null, head_mm: null, tail_mm: null },
        };
        const chance = (design: ReturnType<typeof coverOf>): number =>
          new CutChances(design.doubt, spareOf(design.doubt, design.pieces.outside), loosestOf(design.job, 0)).fits();
        const plain = chance(coverOf({ ...change, seam: stitched(null, { pitch_mm: iron.pitch_mm }) }));
        expect(plain).toBeGreaterThan(0.95);
        expect(chance(coverOf({ ...change, seam: stitched(iron) }))).toBeGreaterThanOrEqual(0.95);
      }
  });

  test('leave a size of the maker as it is, and name the strides that do not fill it', () => {
    const design = coverOf({ seam: stitched(defined(three)), pattern: { outsideWidth_mm: 384 } });
    expect(design.pieces.outside.width).toBe(384);
    const [tail] = seamHoles(design).rows;
    // 376 mm are 125 strides of 3 and 1 mm.
    expect(tail?.uneven).toEqual({ first: 59, count: 7, pitch: 3 + 1 / 7 });
    expect(seamHoles(design).notes).toEqual([
      'Tail and head: the middle 7 of 125 strides are 3.14 mm, not 3 mm. Make their holes one by one on the marks. ' +
        'Whole strides would take a width of 383 mm or 386 mm.',
    ]);
    const inches = coverOf({
      work: { units: 'in' },
      seam: stitched(defined(three)),
      pattern: { outsideHeight_mm: 254 + 1 },
    });
    expect(seamHoles(inches).notes.join()).toContain('Whole strides would take a height of 10 in or 10.118 in.');
  });

  test('are not asked for where ends are turned: their rows hold whole strides wherever they start', () => {
    const worked = coverOf({ seam: stitched(defined(three)), pockets: { construction: 'turned' } });
    expect(worked.pieces.outside.width % 0.5).toBeCloseTo(0, 9);
    for (const { length, uneven } of seamHoles(worked).rows) {
      expect(uneven).toBeUndefined();
      expect(length / 3).toBeCloseTo(Math.round(length / 3), 9);
    }
  });

  test('in a job worked in inches stay fractions at 8 stitches per inch', () => {
    const eight = { ...three, pitch_mm: 25.4 / 8 };
    const design = coverOf({
      work: { units: 'in' },
      seam: stitched(eight, { edgeMargin_mm: 25.4 / 8 }),
      ease: { foreEdge_mm: null, head_mm: null, tail_mm: null },
    });
    const { width, height } = design.pieces.outside;
    const print = printer('in');
    expect([print.size(width), print.size(height)].join()).not.toContain('mm');
  });
});
