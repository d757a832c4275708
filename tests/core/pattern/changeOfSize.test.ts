import { describe, expect, test } from 'vitest';
import { roundUp } from '../../../src/core/allowance/roundUp.ts';
import { doubtOf } from '../../../src/core/doubt/doubtOf.ts';
import { type CoverDesign, coverDesign, madeDesign } from '../../../src/core/fold/coverDesign.ts';
import { changeOf, isChangeTested } from '../../../src/core/leather/changeOf.ts';
import { pieceOutlines } from '../../../src/core/materials/pieceOutline.ts';
import { cardDesign } from '../../../src/core/mockup/cardDesign.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { outsideOnceDry } from '../../../src/core/pattern/pieces.ts';
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
      expect(designWith({ state }).pieces).toEqual(
        designWith({ state, changeAlong: -0.01, changeAcross: -0.01 }).pieces,
      );
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
          const made = defined(parts.find((each) => each.name.endsWith('shrinks 1.0 % in making')));
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
    expect(names.filter((name) => /shrinks|grows|your hand/.test(name))).toEqual([]);
  });
});

describe('the making route', () => {
  test('says in the sums why leather is cut larger: in casing, dyeing, wet forming or finishing', () => {
    const namesOf = (making: object): string[] =>
      designWith(making).pieces.allowances.foreEdge.parts.map(({ name }) => name);
    expect(namesOf({ state: 'cased' })).toContain('shrinks 1.0 % in casing');
    expect(namesOf({ state: 'dyed', changeAcross: -0.004 })).toContain('shrinks 0.4 % in dyeing');
    expect(namesOf({ state: 'wet-formed', changeAcross: 0.002 })).toContain('grows 0.2 % in wet forming');
    expect(namesOf({ dressing: 'water-based finish' })).toContain('shrinks 0.2 % in finishing');
    expect(namesOf({ dressing: 'oil or wax' })).toEqual(namesOf({}));
  });

  test('is said on every piece whose size changes, so that a template is not taken for another state', () => {
    const said = (making: object): string[] =>
      patternDrawing(designWith(making)).pieces.map(({ layers }) =>
        layers.text.map((entity) => (entity.kind === 'text' ? entity.text : '')).join(' '),
      );
    for (const words of said({ state: 'cased' })) expect(words).toContain('as cut: it shrinks 1.0 % in casing');
    for (const words of said({ state: 'cased', changeAcross: 0 }))
      expect(words).toContain('as cut: it keeps its size across, shrinks 1.0 % in casing from head to tail');
    for (const words of said({})) expect(words).not.toContain('as cut');
  });

  test('adds what finishing does to what working does, their doubts independent, unless a test of the leather covers both', () => {
    const { job } = designWith({ state: 'cased', dressing: 'water-based finish' });
    expect(changeOf(job)).toEqual({ width: -0.012, height: -0.012 });
    expect(doubtOf(job, 'making.changeAcross').u).toBeCloseTo(Math.hypot(0.007, 0.003), 12);
    const tested = designWith({ state: 'cased', dressing: 'water-based finish', changeAcross: -0.004 }).job;
    expect(changeOf(tested)).toEqual({ width: -0.004, height: -0.012 });
    expect(doubtOf(tested, 'making.changeAcross').u).toBe(0.002);
    expect([job, tested, designWith({}).job, designWith({ dressing: 'oil or wax' }).job].map(isChangeTested)).toEqual([
      false,
      false,
      true,
      false,
    ]);
  });

  test('a piece turned by 90 degrees on the hide with the changes along and across swapped is the very same piece', () => {
    const rest = { pockets: { construction: 'turned' }, construction: { strap: {}, penLoop: undefined } };
    for (const more of [{}, rest]) {
      const doubts = (along: number, across: number) => ({
        ...more,
        doubts: { 'making.changeAlong': { u: along }, 'making.changeAcross': { u: across } },
        ease: {},
      });
      const upright = designWith({ changeAlong: -0.006, changeAcross: -0.017 }, doubts(0.001, 0.004));
      const turned = designWith(
        { changeAlong: -0.017, changeAcross: -0.006, backbone: 'across' },
        doubts(0.004, 0.001),
      );
      expect(turned.pieces).toEqual(upright.pieces);
      expect(turned.made).toEqual(upright.made);
      for (const of of ['closed', 'height'] as const) {
        expect(turned.fitDoubt.spare[of].mean).toBeCloseTo(upright.fitDoubt.spare[of].mean, 9);
        expect(turned.fitDoubt.spare[of].u).toBeCloseTo(upright.fitDoubt.spare[of].u, 9);
      }
      const said = (design: CoverDesign) =>
        designReport(design).checks.map(({ id, verdict, value }) => [id, verdict, value]);
      expect(said(turned)).toEqual(said(upright));
      // Not the same as only one of the two.
      expect(designWith({ changeAlong: -0.017, changeAcross: -0.006 }, more).pieces).not.toEqual(upright.pieces);
      const arrows = ({ job }: CoverDesign) => JSON.stringify(patternDrawing(coverDesign(job)).pieces);
      expect(arrows(upright)).toContain("this way along the hide's backbone");
      expect(arrows(turned)).toContain("this way across the hide's backbone");
      expect(pieceOutlines(turned).map(({ lies }) => lies)).toEqual(
        pieceOutlines(upright).map(({ lies }) => (lies === 'along' ? 'across' : lies)),
      );
    }
  });
});

describe("the maker's hand", () => {
  const fine = { pattern: { rounding_mm: 0 } };

  test.each([
    [{}, 2],
    [{ pockets: { construction: 'turned' } }, 0],
  ])(
    'is made up for by the cut: margins wider by 0.3 mm and pieces larger by 0.5 mm leave the same room (%j)',
    (more, edges) => {
      const even = designWith({}, { ...fine, ...more });
      const hand = designWith({ hand: { margin_mm: 0.3, cutting_mm: 0.5 } }, { ...fine, ...more });
      expect(hand.pieces.outside.width - even.pieces.outside.width).toBeCloseTo(edges * 0.3 - 0.5, 9);
      expect(hand.pieces.outside.height - even.pieces.outside.height).toBeCloseTo(2 * 0.3 - 0.5, 9);
      for (const point of ['thin', 'nominal', 'thick'] as const) {
        expect(hand.fits[point].closedSlack).toBeCloseTo(even.fits[point].closedSlack, 9);
        expect(hand.fits[point].head).toBeCloseTo(even.fits[point].head, 9);
      }
      const { spare } = hand.fitDoubt;
      expect(spare.closed.mean).toBeCloseTo(even.fitDoubt.spare.closed.mean, 6);
      expect(spare.height.mean).toBeCloseTo(even.fitDoubt.spare.height.mean, 6);
      const names = hand.pieces.allowances.head.parts.map(({ name }) => name);
      expect(names).toContain('your hand');
    },
  );

  test('shows in the fit of a size that is given: 0.3 mm more margin takes 0.6 mm of the spare wrap', () => {
    const given = { pattern: { outsideWidth_mm: 350, outsideHeight_mm: 240 } };
    const [even, hand] = [designWith({}, given), designWith({ hand: { margin_mm: 0.3 } }, given)];
    expect(hand.pieces.outside).toEqual(even.pieces.outside);
    expect(even.fits.nominal.closedSlack - hand.fits.nominal.closedSlack).toBeCloseTo(0.6, 9);
    expect(even.fitDoubt.spare.closed.mean - hand.fitDoubt.spare.closed.mean).toBeCloseTo(0.6, 9);
  });

  test('is no change of size: the outside once dry is as large as it is cut', () => {
    const hand = designWith({ hand: { margin_mm: 0.3, cutting_mm: -0.2 } });
    expect(outsideOnceDry(hand)).toEqual(hand.pieces.outside);
    const cased = designWith({ state: 'cased', hand: { margin_mm: 0.3 } });
    expect(outsideOnceDry(cased).width).toBeCloseTo(0.99 * cased.pieces.outside.width, 9);
  });

  test('is none of a card trial', () => {
    const cardOf = ({ job }: CoverDesign) => cardDesign(job, job.mockup.card).pieces.outside;
    expect(cardOf(designWith({ hand: { margin_mm: 1 } }))).toEqual(cardOf(dry));
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
