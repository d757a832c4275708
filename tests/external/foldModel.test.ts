import { describe, expect, test } from 'vitest';
import { reverseCurve } from '../../src/core/allowance/reverseCurve.ts';
import { bookModel } from '../../src/core/book/bookModel.ts';
import { bookOutline, CLOSED } from '../../src/core/book/bookOutline.ts';
import { pathLength, tautPath } from '../../src/core/book/tautPath.ts';
import { fitReport } from '../../src/core/fitReport.ts';
import type { JobInput } from '../../src/core/job/jobSchema.ts';
import { bendLength } from '../../src/core/leather/bend.ts';
import { bendTest } from '../../src/core/leatherTest/bendTest.ts';
import { bendReadingSchema } from '../../src/core/leatherTest/testSchema.ts';
import { circularSegment } from '../../src/core/math/circularSegment.ts';
import { MM_PER_INCH, MM_PER_OUNCE } from '../../src/core/units/mm.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import reference from './reference-values.json' with { type: 'json' };

const close = (value: number, expected: number, rel: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(rel * Math.abs(expected));

const radians = (degrees: number) => (degrees * Math.PI) / 180;

describe('a bend', () => {
  // The rows are ours: worked apart from this code by the formula of DIN 6935, L = a + b + v, which is known at second
  // hand. They check the bend and its neutral line as a share of the thickness; k, of half the thickness, is an input.
  test.each(reference.bend.din)(
    'of sheet metal, worked by the formula of DIN 6935: opening $opening_deg degrees, r $r, s $s',
    ({ opening_deg, r, s, k, a, b, L }) => {
      const turn = radians(180 - opening_deg);
      close(a + b + bendLength(turn, r, s, k / 2) - 2 * (r + s) * Math.tan(turn / 2), L, reference.bend.rel);
    },
  );

  test('takes one leather thickness a fold with its neutral line at 2/pi (common practice, no source)', () => {
    close(bendLength(Math.PI / 2, 0, 1.8, reference.bend.onePerFold_K), 1.8, 1e-6);
  });

  test('of 12.874 mm round a rod of radius 3 mm in 1.8 mm leather has its neutral line at 0.61', () => {
    // 12.874 / pi = 4.098 = 3 + 0.61 x 1.8
    const bend = { length_mm: 12.874, angle_deg: 180, radius_mm: 3, thickness_mm: 1.8 };
    expect(bendTest(bendReadingSchema.parse(bend)).value).toBeCloseTo(0.61, 4);
  });
});

describe('exact geometry', () => {
  test.each(reference.reverseCurve.rows)(
    'reverse curve of offset $h at radius $R: two tangent arcs',
    ({ h, R, d, L }) => {
      close(reverseCurve(h, R).run, d, reference.reverseCurve.rel);
      close(reverseCurve(h, R).length, L, reference.reverseCurve.rel);
    },
  );

  test('a reverse curve over more than two radii has quarter circles and an upright, and joins the other branch', () => {
    expect(reverseCurve(5, 2)).toEqual({ run: 4, straight: 1, length: Math.PI * 2 + 1, angle: Math.PI / 2 });
    expect(reverseCurve(4 - 1e-9, 2).length).toBeCloseTo(reverseCurve(4 + 1e-9, 2).length, 4);
  });

  test.each(reference.steiner.rows)(
    "Steiner's formula round a $rect block at offset $offset",
    ({ rect, offset, perimeter }) => {
      // The cover's path has three sides and two corners; the block's own fourth side and corners complete the round.
      const [width, thickness] = rect as [number, number];
      const book = bookModel({
        ...book0(),
        width_mm: width,
        thickness_mm: thickness,
        foreEdgeThickness_mm: thickness,
      } as never);
      const path = tautPath(bookOutline(book, CLOSED));
      close(pathLength(path.pieces, offset) + thickness + Math.PI * offset, perimeter, reference.steiner.rel);
    },
  );

  test('circular segment over a chord', () => {
    const [row] = reference.roundedSpine.rows;
    const { radius, arc } = circularSegment(row!.chord, row!.rise);
    close(radius, defined(row!.radius), reference.roundedSpine.rel);
    close(arc, row!.arc, reference.roundedSpine.rel);
    const unit = nth(reference.roundedSpine.rows, 1);
    close(circularSegment(unit.chord, unit.rise).arc, unit.arc, 5e-6); // its rise is printed to six digits only
    close(circularSegment(unit.chord, unit.rise).halfAngle * 2, radians(defined(unit.angle_deg)), 5e-6);
  });
});

describe('a rounded back', () => {
  test('of bulk 13/16 in, a third of a circle: 0.98 in round the spine, where 0.95 in is published (a finding)', () => {
    // Published: welbound.com/articles/22, not found again; "about a third of a circle" is the usual round (a handbook of
    // 1890, a conservation dictionary). The model disagrees by 3 %: 0.95 in on that bulk would be 110 degrees, not 120.
    const unit = nth(reference.roundedSpine.rows, 1);
    const spine = (bulk: number): number => {
      const thickness = bulk * MM_PER_INCH;
      const rounded = {
        width_mm: 150,
        height_mm: 220,
        thickness_mm: thickness,
        spine: { shape: 'rounded', rise_mm: unit.rise * thickness },
      };
      return bookModel(soundJob({ ...checkBook(0.5, 0.375), book: rounded }).book).spinePath / MM_PER_INCH;
    };
    expect(spine(13 / 16)).toBeCloseTo(0.9825, 4); // 13/16 x (2 pi / 3) / sqrt 3
    // Both agree only at the edge of what a bulk rounded to sixteenths leaves open.
    expect(spine(13 / 16 - 1 / 32)).toBeLessThan(0.95);
    expect(spine(13 / 16 - 1 / 64)).toBeGreaterThan(0.955);
  });
});

/** A sharp-edged flat-back book as the schema would deliver it; the tests above set its size. */
function book0() {
  return soundJob(checkBook(0.5, 0.375)).book;
}

/** Hardback 6 x 8 1/2 x 1 in, boards 1/8 in, leather 4-5 oz, seam margin 1/4 in (common practice, no source). */
function checkBook(foreEdge: number, headTail: number, error = 0): JobInput {
  const inches = (value: number) => value * MM_PER_INCH;
  return {
    format: 'coverwright-job',
    version: 1,
    book: {
      width_mm: inches(6),
      height_mm: inches(8.5),
      thickness_mm: inches(1),
      boardThickness_mm: inches(1 / 8),
      measured: { error_mm: error },
    },
    leather: { outside: { min_mm: 4 * MM_PER_OUNCE, max_mm: 5 * MM_PER_OUNCE } },
    seam: { method: 'lacing', edgeMargin_mm: inches(1 / 4) },
    pattern: {
      outsideWidth_mm: inches(2 * 6 + 1 + 2 * foreEdge),
      outsideHeight_mm: inches(8.5 + 2 * headTail),
    },
  };
}

describe('the trade check book, 6 x 8 1/2 x 1 in (common practice, no source)', () => {
  test('with 1/2 in at the fore-edges and 3/8 in at head and tail goes on at 4 oz and at 5 oz, gap 0 to 3 mm everywhere', () => {
    const report = fitReport(soundJob(checkBook(1 / 2, 3 / 8)));
    for (const point of ['thin', 'nominal', 'thick'] as const) {
      const { foreEdge, head_mm, tail_mm, closed } = report.fit[point];
      expect(closed.closes).toBe(true);
      for (const gap of [foreEdge.front_mm, foreEdge.back_mm, head_mm, tail_mm]) {
        expect(gap).toBeGreaterThanOrEqual(0);
        expect(gap).toBeLessThanOrEqual(3);
      }
    }
  });

  // A finding: makers have used these allowances for generations, so the doubts assumed (bend ratio, seat under a firm pull,
  // what lacing draws in) may be too large for head and tail. The figures are those of the design of the doubts.
  test('closes in 99.8 of 100 by the doubts assumed, and goes in at head and tail in about 68', () => {
    const report = fitReport(soundJob(checkBook(1 / 2, 3 / 8, 0.5)));
    expect(report.checks.filter(({ verdict }) => verdict === 'tight').map(({ id }) => id)).toEqual([
      'head',
      'tail',
      'together',
    ]);
    expect(report.verdict).toBe('tight');
    expect(report.doubt.chance.closes).toBeCloseTo(0.998, 3);
    expect(Math.abs(report.doubt.edges.head.chance - 0.68)).toBeLessThan(0.03);
  });

  test('with 1/4 in at the fore-edges does not close and says by how much', () => {
    const report = fitReport(soundJob(checkBook(1 / 4, 3 / 8)));
    expect(report.verdict).toBe('fails');
    expect(report.fit.thick.closed.closes).toBe(false);
    // Short by what is missing: 1/2 in less the 3.175 mm that the trade's allowance leaves over.
    expect(report.fit.thick.closed.slack_mm).toBeCloseTo(2 * 1.5875 - MM_PER_INCH / 2, 6);
    expect(report.headline).toContain('9.6 mm short'); // 9.525: an overrun is never understated;
  });

  test('needs about the allowances of the trade when the tool sizes it', () => {
    const { pattern: _, ...open } = checkBook(1 / 2, 3 / 8);
    const { allowances } = fitReport(soundJob({ ...open, ease: { foreEdge_mm: 0, head_mm: 0, tail_mm: 0 } }));
    expect(Math.abs(allowances.foreEdge.total_mm - MM_PER_INCH / 2)).toBeLessThan(2);
    expect(Math.abs(allowances.head.total_mm - (3 / 8) * MM_PER_INCH)).toBeLessThan(0.5);
  });
});

describe('a diary 149 x 105 x 19 mm in 1.5 mm leather with 40 mm turned ends and 2 mm stitch margin', () => {
  // Source: westaa.hatenablog.com 2017/05/02/184233. The board is not stated there; 1 mm from memory of such diaries.
  const diary = (height: number | null, boardThickness_mm = 1): JobInput => ({
    format: 'coverwright-job',
    version: 1,
    book: { kind: 'paperback', width_mm: 105, height_mm: 149, thickness_mm: 19, boardThickness_mm },
    leather: { outside: { min_mm: 1.5, max_mm: 1.5 } },
    seam: { method: 'stitching', edgeMargin_mm: 2 },
    pockets: { construction: 'turned', depth_mm: 40, hold_mm: 30 },
    pattern: { outsideHeight_mm: height },
  });

  test.each([0.4, 1, 2])('height 155 fails or is tight at head and tail, 158 goes on (board %f mm)', (board) => {
    const at = (height: number) => fitReport(soundJob(diary(height, board)));
    for (const id of ['head', 'tail'])
      expect(at(155).checks.find((check) => check.id === id)?.verdict).not.toBe('fits');
    expect(at(155).doubt.edges.head.chance).toBeLessThan(0.6);
    expect(at(158).verdict).not.toBe('fails');
    expect(at(158).doubt.edges.head.chance).toBeGreaterThan(0.85);
  });

  test('height sized by the tool falls within a millimetre of the 157 to 159 wanted', () => {
    const { height_mm } = fitReport(soundJob(diary(null))).pattern.outside;
    expect(height_mm).toBeGreaterThanOrEqual(156);
    expect(height_mm).toBeLessThanOrEqual(160);
  });

  test('is 3 mm wider than the published (40 + 2 + 105 + 2) x 2 + 19 = 317, with no ease (a finding)', () => {
    const { width_mm } = fitReport(soundJob({ ...diary(158), ease: { foreEdge_mm: 0 }, pattern: { rounding_mm: 0 } }))
      .pattern.outside;
    // For the published 2 mm at the turn the model takes the board and two thicknesses, 1 + 3 mm; for the other 2 mm at
    // the spine one thickness, 1.5 mm. The board is ours: each tenth of a millimetre thinner takes 0.2 mm off.
    expect(width_mm).toBeCloseTo(317 + 2 * (4 - 2) + 2 * (1.5 - 2), 6);
  });
});

describe('a published journal cover', () => {
  test.each([1, 2.5])('for a book 8 1/4 in high in 4-5 oz is 9 in high to 1/16 in (board %f mm)', (board) => {
    // Source: adamsleatherworks.com, basic journal cover: book 8 1/4 x 5 1/4 x 7/8 in, cut about 16 1/2 x 9 in. Board,
    // margin (the usual 1/4 in) and ease are ours. Its width is no check: the depth of its turned ends is not stated.
    const { pattern } = fitReport(
      soundJob({
        format: 'coverwright-job',
        version: 1,
        book: {
          width_mm: 5.25 * MM_PER_INCH,
          height_mm: 8.25 * MM_PER_INCH,
          thickness_mm: 0.875 * MM_PER_INCH,
          boardThickness_mm: board,
        },
        leather: { outside: { min_mm: 4 * MM_PER_OUNCE, max_mm: 5 * MM_PER_OUNCE } },
        seam: { method: 'stitching', edgeMargin_mm: 0.25 * MM_PER_INCH },
        pockets: { construction: 'turned' },
        ease: { head_mm: 1, tail_mm: 1 },
        pattern: { rounding_mm: 0 },
      }),
    );
    expect(Math.abs(pattern.outside.height_mm / MM_PER_INCH - 9)).toBeLessThan(1 / 16);
  });
});
