import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { DOUBT_PATHS } from '../../../src/core/job/doubtSchema.ts';
import { doubtWords } from '../../../src/core/report/doubtWords.ts';
import { reportDoubt } from '../../../src/core/report/reportDoubt.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { job } from './lacedLedger.ts';
import { designOf, doubtful } from './madeUp.ts';

const designWith = (rest: object = {}) => coverDesign(job({ version: 2, ...rest }));
const doubtWith = (rest: object = {}) => reportDoubt(designWith(rest));

/** Phi(1), Phi(2): tables of the normal distribution. */
const [PHI1, PHI2] = [0.8413447, 0.9772499];

describe('the doubt of a report', () => {
  test('has of each length what is spare, its doubt and the chance that it is not wanting', () => {
    const design = designOf({ version: 2, pockets: { hold_mm: 8 } });
    const lengths = doubtful(design, {
      closed: [2, 2],
      flat: [6, 3],
      height: [4, 4],
      lean: 1,
      held: [10, 1],
      loading: [-1, 1],
    });
    const found = reportDoubt({ ...design, fitDoubt: lengths });
    const chance = (value: number) => expect.closeTo(value, 6) as number;
    expect(found).toMatchObject({
      share: 0.95,
      // Closed over 0 and under 8, flat over 0, height over 0 and under 2 (4 - 1).
      chance: { closes: chance(PHI1), fits: chance((PHI1 - (1 - 0.9986501)) * PHI2 * (PHI1 - (1 - 0.6914625))) },
      edges: {
        foreEdge: { spare_mm: 2, u_mm: 2, chance: chance(PHI1) },
        // Head and tail have their room together: half of 4 mm each, however they share it.
        head: { spare_mm: 3, u_mm: 2, chance: chance(PHI1) },
        tail: { spare_mm: 1, u_mm: 2, chance: chance(PHI1) },
      },
      flat: { spare_mm: 6, u_mm: 3, chance: chance(PHI2) },
      // Of 10 mm 8 must stay.
      held: { spare_mm: 2, u_mm: 1, chance: chance(PHI2) },
      loading: { spare_mm: -1, u_mm: 1, chance: chance(1 - PHI1) },
    });
  });

  test('without any doubt is certain, either way', () => {
    const exact = Object.fromEntries(DOUBT_PATHS.map((path) => [path, { u: 0 }]));
    const at = (foreEdge_mm: number) =>
      doubtWith({
        doubts: exact,
        book: { ...designWith().job.book, measured: { error_mm: 0 } },
        ease: { foreEdge_mm },
      });
    expect(at(1)).toMatchObject({ edges: { foreEdge: { u_mm: 0, chance: 1, budget: [] } }, leastSure: '' });
    expect(at(1).ease.foreEdge).toEqual([]);
  });
});

describe('a budget', () => {
  const linesOf = ({ edges: { foreEdge, head, tail }, flat, held, loading }: ReturnType<typeof doubtWith>) => [
    foreEdge,
    head,
    tail,
    flat,
    held,
    loading,
  ];

  test('adds up to 1, most first, each input once', () => {
    for (const { budget } of linesOf(doubtWith())) {
      expect(budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 5);
      expect(budget.map(({ share }) => share)).toEqual(budget.map(({ share }) => share).toSorted((a, b) => b - a));
      expect(new Set(budget.map(({ path }) => path)).size).toBe(budget.length);
      expect(budget.length).toBeGreaterThan(4);
    }
  });

  test('has of an independent input the square of its sensitivity and doubt over the variance', () => {
    const doubt = doubtWith();
    for (const { u_mm, budget } of linesOf(doubt))
      for (const { path, u, sensitivity, share } of budget)
        if (path !== 'seam.edgeMargin_mm') expect(share, path).toBeCloseTo(((u * sensitivity) / u_mm) ** 2, 9);
    const line = (path: string) => defined(doubt.edges.foreEdge.budget.find((each) => each.path === path));
    expect(line('pattern.outsideWidth_mm')).toMatchObject({
      u: 0.3,
      sensitivity: 1,
      words: 'how the width is cut',
      from: 'assumed',
      with: '',
    });
    expect(line('book.width_mm')).toMatchObject({ u: 0.25, from: 'measured', with: 'ruler A' });
    // One width more on each side.
    expect(line('book.width_mm').sensitivity).toBeCloseTo(-2, 9);
    expect(line('scale of ruler A').words).toBe('the scale of ruler A');
  });

  test('counts the margins of both dimensions as one line, with the larger sensitivity and both shares', () => {
    const doubt = doubtWith();
    // Two edges of each dimension, 0.2 mm each; of the width alone where only it bears on the length.
    for (const { u_mm, budget } of [doubt.edges.foreEdge, doubt.flat]) {
      const margin = defined(budget.find(({ path }) => path === 'seam.edgeMargin_mm'));
      expect(margin.u).toBe(0.2);
      expect(margin.sensitivity).toBeCloseTo(-Math.SQRT2, 9);
      expect(margin.share).toBeCloseTo((2 * 0.2 ** 2) / u_mm ** 2, 9);
    }
    const high = defined(doubt.edges.head.budget.find(({ path }) => path === 'seam.edgeMargin_mm'));
    expect(high.sensitivity).toBeCloseTo(-Math.SQRT1_2, 9);
  });

  test('leaves out what does not bear on the length', () => {
    const doubt = doubtWith();
    const paths = doubt.edges.foreEdge.budget.map(({ path }) => path);
    for (const path of ['book.height_mm', 'pattern.outsideHeight_mm', 'making.changeAlong'])
      expect(paths).not.toContain(path);
    for (const { budget } of linesOf(doubt))
      for (const { share } of budget) expect(Math.abs(share)).toBeGreaterThan(1e-6);
  });

  test('keeps a negative share, of what takes doubt away', () => {
    const correlations = [{ a: 'book.width_mm', b: 'book.thickness_mm', r: -0.9 }];
    const { budget } = doubtWith({ correlations }).edges.foreEdge;
    expect(nth(budget, budget.length - 1).share).toBeLessThan(0);
    expect(budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 5);
  });

  test('has words for every input', () => {
    const words = DOUBT_PATHS.map(doubtWords);
    expect(new Set(words).size).toBe(DOUBT_PATHS.length);
    for (const each of words) expect(each).toMatch(/^(the|how|where) /);
  });
});

describe('an ease left open', () => {
  test('is paid for by every doubt but the range of the leather, as each bears on the edge', () => {
    const design = designWith();
    const { ease, edges } = reportDoubt(design);
    for (const [edge, sized] of [
      ['foreEdge', design.pieces.ease.foreEdge_mm],
      ['head', design.pieces.ease.head_mm],
    ] as const) {
      const costs = ease[edge];
      expect(costs.reduce((sum, { costs_mm }) => sum + costs_mm, 0)).toBeCloseTo(sized, 9);
      expect(costs.map(({ path }) => path)).not.toContain('leather.outside');
      const shares = edges[edge].budget.filter(({ path }) => path !== 'leather.outside');
      expect(costs.map(({ path, words }) => [path, words])).toEqual(shares.map(({ path, words }) => [path, words]));
      const [first, second] = [nth(costs, 0), nth(costs, 1)];
      expect(first.costs_mm / second.costs_mm).toBeCloseTo(nth(shares, 0).share / nth(shares, 1).share, 9);
    }
    expect(edges.foreEdge.budget.map(({ path }) => path)).toContain('leather.outside');
  });

  test('is not paid for where it is typed', () => {
    const typed = doubtWith({ ease: { foreEdge_mm: 1, head_mm: null, tail_mm: 1 } });
    expect(typed.ease.foreEdge).toEqual([]);
    expect(typed.ease.head.length).toBeGreaterThan(0);
    expect(doubtWith({ ease: { head_mm: 1 } }).ease).toMatchObject({ head: [] });
  });

  test('says whether some size reaches the wished chance', () => {
    expect(doubtWith().reaches).toBe(true);
    expect(doubtWith({ making: { state: 'cased' } }).reaches).toBe(false);
  });
});

test('what to measure next is named with what it saves, six at most, the first of the list', () => {
  const design = designWith({
    making: { state: 'cased' },
    leather: { outside: { min_mm: 1.5, max_mm: 2.5 }, pocket: { min_mm: 1, max_mm: 2, bendRatio: 0.6 } },
  });
  const all = design.fitDoubt.next();
  expect(all.length).toBeGreaterThan(6);
  expect(reportDoubt(design).measureNext).toEqual(
    all.slice(0, 6).map(({ path, words, saves, of }) => ({ path, words, saves_mm: saves, of })),
  );
});

test('what makes the fit least sure is the largest line of the edge that is less sure', () => {
  const [narrow, low] = [
    doubtWith({ ease: { foreEdge_mm: 0, head_mm: 3, tail_mm: 3 } }),
    doubtWith({ ease: { foreEdge_mm: 4, head_mm: 0, tail_mm: 0 } }),
  ];
  expect(narrow.leastSure).toBe(nth(narrow.edges.foreEdge.budget, 0).words);
  expect(low.leastSure).toBe(nth(low.edges.head.budget, 0).words);
  expect(narrow.leastSure).not.toBe(low.leastSure);
});
