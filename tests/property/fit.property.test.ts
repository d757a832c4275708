import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { needsAt } from '../../src/core/allowance/needs.ts';
import { wrapAt } from '../../src/core/allowance/wrap.ts';
import { bookModel } from '../../src/core/book/bookModel.ts';
import { bookOutline, CLOSED, FLAT, symmetricOpening } from '../../src/core/book/bookOutline.ts';
import { tautPath } from '../../src/core/book/tautPath.ts';
import { fitReport } from '../../src/core/fitReport.ts';
import type { JobInput } from '../../src/core/job/jobSchema.ts';
import { coverLeathers } from '../../src/core/leather/leatherModel.ts';
import { circularSegment } from '../../src/core/math/circularSegment.ts';
import { reportSchema } from '../../src/core/report/reportSchema.ts';
import { defined } from '../defined.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { checkLaw } from '../laws.ts';

const law = (check: (document: JobInput) => void) => checkLaw(fc.property(jobDocument, check));

/** Flat back, parallel boards, sharp edges: the plain case of the closed form. */
const plain = (document: JobInput): JobInput => ({
  ...document,
  book: {
    ...document.book,
    spine: { shape: 'flat', rise_mm: 0 },
    foreEdgeThickness_mm: document.book.thickness_mm,
    cornerRadius_mm: 0,
    pageGive: 0.9,
  },
});

const thickWrap = (document: JobInput): number => needsAt(soundJob(document), 'thick').closed.length;

describe('the closed wrap', () => {
  test('of a plain book is 2 W + P + pi z', () => {
    law((document) => {
      const job = soundJob(plain(document));
      const { closed, leathers, book } = needsAt(job, 'nominal');
      // Books so thin that the pockets spread them are a wedge, another case.
      fc.pre(book.wedge === 0);
      const z = (leathers.lining?.thickness ?? 0) + leathers.outside.neutral * leathers.outside.thickness;
      expect(closed.length).toBeCloseTo(2 * job.book.width_mm + job.book.thickness_mm + Math.PI * z, 9);
    });
  });

  test('grows with width, thickness, rise and leather', () => {
    law((document) => {
      const { book, leather } = document;
      const before = thickWrap(document);
      const grown = 1.01;
      expect(thickWrap({ ...document, book: { ...book, width_mm: book.width_mm * grown } })).toBeGreaterThan(before);
      const thicker = {
        ...book,
        thickness_mm: book.thickness_mm * grown,
        foreEdgeThickness_mm: defined(book.foreEdgeThickness_mm) * grown,
      };
      expect(thickWrap({ ...document, book: thicker })).toBeGreaterThan(before);
      if (book.spine?.shape === 'rounded') {
        const rise = Math.min(book.thickness_mm / 2, (book.spine.rise_mm ?? 0) * grown);
        expect(thickWrap({ ...document, book: { ...book, spine: { ...book.spine, rise_mm: rise } } })).toBeGreaterThan(
          before,
        );
      }
      const heavier = { ...leather.outside, max_mm: leather.outside.max_mm * grown };
      // A pocket of its own leather, so that only the outside grows.
      const pocket = leather.pocket ?? leather.outside;
      expect(thickWrap({ ...document, leather: { ...leather, outside: heavier, pocket } })).toBeGreaterThan(
        thickWrap({ ...document, leather: { ...leather, pocket } }),
      );
    });
  });

  test('is never shorter than the flat wrap where the joints have no dip', () => {
    law((document) => {
      const job = soundJob({ ...document, book: { ...document.book, jointDip_mm: 0 } });
      const leathers = coverLeathers(job, 'nominal');
      const book = bookModel(job.book);
      expect(wrapAt(book, FLAT, leathers).length).toBeLessThanOrEqual(wrapAt(book, CLOSED, leathers).length + 1e-9);
    });
  });

  test('follows the convex hull: at any opening it turns inward only, and by no more than a closed book asks', () => {
    law((document) => {
      const book = bookModel(soundJob(document).book);
      // Where back and boards meet in a hollow, closed, the hull leaves the boards and turns more than they do.
      fc.pre(circularSegment(book.thickness, book.rise).halfAngle + book.wedge <= Math.PI / 2);
      for (const opening of [0, 0.5, 1.5, 2.5, Math.PI, 4, 5]) {
        const path = tautPath(bookOutline(book, symmetricOpening(opening)));
        expect(path.turning).toBeLessThanOrEqual(Math.PI - 2 * book.wedge + 1e-6);
        for (const piece of path.pieces) expect(piece.kind === 'line' ? piece.length : piece.angle).toBeGreaterThan(0);
      }
    });
  });
});

describe('the report', () => {
  test('obeys its schema and holds no number that is not finite', () => {
    law((document) => {
      const report = fitReport(soundJob(document));
      expect(reportSchema.safeParse(report).success).toBe(true);
    });
  });

  test('adds up: parts make the totals, totals and the bare book make the cut sizes', () => {
    law((document) => {
      const job = soundJob(document);
      const { allowances, pattern } = fitReport(job);
      for (const edge of [allowances.foreEdge, allowances.head, allowances.tail]) {
        expect(edge.parts.reduce((sum, { length_mm }) => sum + length_mm, 0)).toBeCloseTo(edge.total_mm, 9);
      }
      const spinePath = bookModel(job.book).spinePath;
      expect(2 * job.book.width_mm + spinePath + 2 * allowances.foreEdge.total_mm).toBeCloseTo(
        pattern.outside.width_mm,
        6,
      );
      expect(job.book.height_mm + allowances.head.total_mm + allowances.tail.total_mm).toBeCloseTo(
        pattern.outside.height_mm,
        6,
      );
    });
  });

  test('finds that a pattern sized by the model fits at the thin end, the middle and the thick end', () => {
    law((document) => {
      const job = soundJob(document);
      const report = fitReport(job);
      for (const point of ['thin', 'nominal', 'thick'] as const) {
        const { closed, flat, head_mm, tail_mm } = report.fit[point];
        expect(closed.closes).toBe(true);
        expect(closed.slack_mm).toBeGreaterThanOrEqual(2 * (job.ease.foreEdge_mm ?? Number.NaN) - 1e-8);
        expect(flat.slack_mm).toBeGreaterThanOrEqual(2 * (job.ease.foreEdge_mm ?? Number.NaN) - 1e-8);
        expect(Math.min(head_mm, tail_mm)).toBeGreaterThanOrEqual(1 - 1e-8);
      }
    });
  });

  test('finds that the same pattern cut short by more than its slack does not close, and says by how much', () => {
    law((document) => {
      const sized = fitReport(soundJob(document));
      const cut = sized.fit.thick.closed.slack_mm + 2;
      const width = sized.pattern.outside.width_mm - cut;
      const report = fitReport(
        soundJob({
          ...document,
          pattern: { outsideWidth_mm: width },
          pockets: { ...document.pockets, depth_mm: sized.fit.thick.pockets.depth_mm },
        }),
      );
      expect(report.fit.thick.closed.closes).toBe(false);
      expect(report.fit.thick.closed.slack_mm).toBeCloseTo(-2, 6);
      expect(report.checks.find(({ id }) => id === 'closes')?.verdict).not.toBe('fits');
    });
  });

  test('offers remedies that cure what they were offered for', () => {
    law((document) => {
      const sized = fitReport(soundJob(document));
      const narrow = {
        ...document,
        // However loose in the thinnest leather: sizes that serve neither end have a law of their own.
        loosest: { foreEdge_mm: 50, head_mm: 50, tail_mm: 50 },
        pattern: {
          outsideWidth_mm: sized.pattern.outside.width_mm - 6,
          outsideHeight_mm: sized.pattern.outside.height_mm - 4,
        },
        pockets: { ...document.pockets, depth_mm: sized.fit.thick.pockets.depth_mm },
      };
      const before = fitReport(soundJob(narrow));
      for (const id of ['closes', 'foreEdge', 'head']) {
        const check = defined(before.checks.find((each) => each.id === id));
        if (check.verdict === 'fits') continue;
        const pattern = { ...narrow.pattern } as Record<string, unknown>;
        for (const { path, value } of check.change) pattern[path.replace('pattern.', '')] = value;
        const after = fitReport(soundJob({ ...narrow, pattern }));
        expect(after.checks.find((each) => each.id === id)?.verdict).toBe('fits');
      }
    });
  });

  test('scales: all lengths times k give all answers times k', () => {
    law((document) => {
      const k = 1.05;
      const exact = {
        ...plain(document),
        ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
        pattern: { rounding_mm: 0 },
      };
      const book = exact.book;
      const scaledLeather = (piece: { min_mm: number; max_mm: number }) => ({
        ...piece,
        min_mm: piece.min_mm * k,
        max_mm: piece.max_mm * k,
      });
      const { outside, pocket, lining } = exact.leather;
      const seam = { ...exact.seam, edgeMargin_mm: 5, pitch_mm: 4 };
      const one = fitReport(
        soundJob({
          ...exact,
          seam,
          book: { ...book, jointDip_mm: 1, square_mm: 2 },
          pockets: { ...exact.pockets, hold_mm: 20, depth_mm: 30 },
        }),
      );
      const many = fitReport(
        soundJob({
          ...exact,
          seam: { ...seam, edgeMargin_mm: 5 * k, pitch_mm: 4 * k },
          book: {
            ...book,
            width_mm: book.width_mm * k,
            height_mm: book.height_mm * k,
            thickness_mm: book.thickness_mm * k,
            foreEdgeThickness_mm: defined(book.foreEdgeThickness_mm) * k,
            boardThickness_mm: defined(book.boardThickness_mm) * k,
            jointDip_mm: k,
            square_mm: 2 * k,
          },
          leather: {
            outside: scaledLeather(outside),
            pocket: pocket && scaledLeather(pocket),
            lining: lining && scaledLeather(lining),
          },
          ease: { foreEdge_mm: k, head_mm: k, tail_mm: k },
          pockets: { ...exact.pockets, hold_mm: 20 * k, depth_mm: 30 * k },
        }),
      );
      expect(many.pattern.outside.width_mm / one.pattern.outside.width_mm).toBeCloseTo(k, 9);
      expect(many.pattern.outside.height_mm / one.pattern.outside.height_mm).toBeCloseTo(k, 9);
      expect(many.wrap.closed_mm / one.wrap.closed_mm).toBeCloseTo(k, 9);
      expect(many.fit.thin.closed.slack_mm).toBeCloseTo(k * one.fit.thin.closed.slack_mm, 8);
    });
  });
});
