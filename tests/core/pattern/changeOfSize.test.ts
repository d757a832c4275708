import { describe, expect, test } from 'vitest';
import { roundUp } from '../../../src/core/allowance/roundUp.ts';
import { type CoverDesign, coverDesign, madeDesign } from '../../../src/core/fold/coverDesign.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { turnAxis } from '../../../src/core/pattern/seam.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** 150 x 220 x 30 mm: typed ease, so that no doubt moves a size. */
const designWith = (making: object, rest: object = {}): CoverDesign =>
  coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 2,
      book: { width_mm: 150, height_mm: 220, thickness_mm: 30, boardThickness_mm: 2.5 },
      leather: { outside: { min_mm: 1.6, max_mm: 2 }, lining: { min_mm: 0.6, max_mm: 0.8 } },
      ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
      making,
      ...rest,
    }),
  );
const dry = designWith({});

describe('a change of size in making', () => {
  test('of 0 along and across gives the very sizes of leather worked dry', () => {
    for (const state of ['dry', 'cased', 'dyed', 'wet-formed']) {
      const design = designWith({ state, changeAlong: 0, changeAcross: 0 });
      expect(design.pieces).toEqual(dry.pieces);
      expect(design.made).toBe(design.pieces);
      expect(design.fits).toEqual(dry.fits);
    }
    expect(madeDesign(dry)).toBe(dry);
  });

  test('of -1 % cuts each piece as large as the made one divided by 0.99, up to the cut step', () => {
    const fine = { pattern: { rounding_mm: 0 } };
    const made = designWith({}, fine).pieces;
    const cut = designWith({ changeAlong: -0.01, changeAcross: -0.01 });
    const exact = designWith({ changeAlong: -0.01, changeAcross: -0.01 }, fine).pieces;
    expect(exact.outside.width).toBeCloseTo(made.outside.width / 0.99, 9);
    expect(exact.outside.height).toBeCloseTo(made.outside.height / 0.99, 9);
    expect(exact.pocket.width).toBeCloseTo(made.pocket.width / 0.99, 9);
    expect(exact.pocketDepth).toBe(made.pocketDepth);
    expect(cut.pieces.outside).toEqual({
      width: roundUp(made.outside.width / 0.99, 0.5),
      height: roundUp(made.outside.height / 0.99, 0.5),
    });
    expect(cut.pieces.pocket.height).toBe(cut.pieces.outside.height);
    expect(cut.pieces.pocket.width).toBe(roundUp(made.pocket.width / 0.99, 0.5));
  });

  test('is taken along the height and across the width, each by itself', () => {
    const along = designWith({ changeAlong: -0.02 }).pieces;
    expect(along.outside.width).toBe(dry.pieces.outside.width);
    expect(along.outside.height).toBeGreaterThan(dry.pieces.outside.height + 4);
    const across = designWith({ changeAcross: 0.02 }).pieces;
    expect(across.outside.height).toBe(dry.pieces.outside.height);
    expect(across.outside.width).toBeLessThan(dry.pieces.outside.width - 6);
  });

  test('untested is -1 % of leather that is cased, dyed or wet-formed', () => {
    for (const state of ['cased', 'dyed', 'wet-formed'])
      expect(designWith({ state }).pieces).toEqual(designWith({ changeAlong: -0.01, changeAcross: -0.01 }).pieces);
  });

  test('leaves a made cover that fits as the dry one does, within a cut step', () => {
    const cased = designWith({ changeAlong: -0.02, changeAcross: -0.01 });
    const { outside } = cased.pieces;
    expect(cased.made.outside.width).toBeCloseTo(0.99 * outside.width, 9);
    expect(cased.made.outside.height).toBeCloseTo(0.98 * outside.height, 9);
    expect(cased.made.pocket.width).toBeCloseTo(0.99 * cased.pieces.pocket.width, 9);
    expect(defined(cased.made.lining).width).toBeCloseTo(0.99 * defined(cased.pieces.lining).width, 9);
    for (const point of ['thin', 'nominal', 'thick'] as const) {
      expect(Math.abs(cased.fits[point].closedSlack - dry.fits[point].closedSlack)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(cased.fits[point].head - dry.fits[point].head)).toBeLessThanOrEqual(0.25);
    }
    // What is folded and shown is the made cover.
    expect(madeDesign(cased).pieces).toBe(cased.made);
    const report = designReport(cased);
    expect(report.fit.nominal.closed.slack_mm).toBeCloseTo(cased.fits.nominal.closedSlack, 9);
  });

  test('is none of a card trial, which keeps its size', () => {
    const cardOf = ({ job }: CoverDesign) => cardDesign(job, job.mockup.card);
    const cased = cardOf(designWith({ state: 'cased' }));
    expect(cased.pieces).toEqual(cardOf(dry).pieces);
    expect(cased.made).toBe(cased.pieces);
  });

  test('is a line of every sum that it is part of, and the sum adds up to what is cut', () => {
    for (const rest of [{}, { pockets: { construction: 'turned' }, construction: { lining: 'full' } }]) {
      const change = { changeAlong: -0.01, changeAcross: -0.01 };
      for (const { name, sums, width, height } of patternDrawing(designWith(change, rest)).pieces)
        for (const { dimension, total, parts } of sums) {
          const what = `${dimension} of ${name}`;
          expect(total, what).toBeCloseTo(dimension === 'width' ? width : height, 9);
          expect(
            parts.reduce((all, { times, each }) => all + times * each, 0),
            what,
          ).toBeCloseTo(total, 6);
          const made = defined(parts.find((each) => each.name.endsWith('change of size in making')));
          // A full lining between turned ends is measured from the outside as cut: its ends alone change.
          if (!/Full/.test(name)) {
            const rounded = parts
              .filter(({ isRest }) => isRest)
              .reduce((all, { times, each }) => all + times * each, 0);
            expect(made.times * made.each, what).toBeCloseTo(0.01 * (total - rounded), 6);
          } else
            expect(made.times * made.each).toBeCloseTo(dimension === 'width' ? -endsChange(change) : 0.01 * total, 1);
        }
    }
    const names = patternDrawing(dry).pieces.flatMap(({ sums }) =>
      sums.flatMap(({ parts }) => parts.map(({ name }) => name)),
    );
    expect(names.filter((name) => name.includes('change of size'))).toEqual([]);
  });
});

/** What both turned ends take more than they measure once made, mm. */
function endsChange(change: object): number {
  const { pieces, needs } = designWith(change, {
    pockets: { construction: 'turned' },
    construction: { lining: 'full' },
  });
  const ends = 2 * (pieces.pocketDepth + needs.thick.foreEdge.turn);
  return ends / 0.99 - ends;
}

test('the folds of turned ends are marked so that the made ends are as deep as they are meant to be', () => {
  const turned = { pockets: { construction: 'turned' } };
  const design = designWith({ changeAcross: -0.02 }, turned);
  const { pocketDepth } = design.pieces;
  const { turn } = design.needs.thick.foreEdge;
  expect(turnAxis(design) * 0.98).toBeCloseTo(pocketDepth + turn / 2, 9);
  expect(turnAxis(madeDesign(design))).toBeCloseTo(pocketDepth + turn / 2, 9);
  const { width } = design.pieces.outside;
  const drawn = defined(patternDrawing(design).pieces.find(({ id }) => id === 'outside'));
  const folds = drawn.layers.fold.map((entity) => (entity.kind === 'line' ? entity.from[0] : Number.NaN));
  const marked = [pocketDepth / 0.98, (pocketDepth + turn) / 0.98];
  for (const at of marked.flatMap((x) => [x, width - x]))
    expect(Math.min(...folds.map((x) => Math.abs(x - at)))).toBeLessThan(1e-9);
});
