import { describe, expect, test } from 'vitest';
import {
  cutSum,
  given,
  heightSum,
  lengthSum,
  outsideSums,
  part,
  pocketSums,
} from '../../../src/core/pattern/cutSums.ts';
import { ribbonOf } from '../../../src/core/pattern/ribbon.ts';
import { CURVE, DEPTH, LINED, nearly, plainSource, SEAT, TURNED } from './plainSource.ts';

describe('a sum of lengths', () => {
  test('has what is missing to the total as a last part, each part counted as often as it occurs', () => {
    expect(cutSum('width', 100, [part('a', 20, 2), given('b', 35)], 'spare')).toEqual({
      dimension: 'width',
      total: 100,
      parts: [
        { name: 'a', times: 2, each: 20 },
        { name: 'b', times: 1, each: 35, isGiven: true },
        { name: 'spare', times: 1, each: 25, isRest: true },
      ],
    });
    expect(cutSum('width', 30, [part('a', 20, 2)]).parts[1]).toEqual({
      name: 'rounded up',
      times: 1,
      each: -10,
      isRest: true,
    });
  });

  test('leaves out parts of no length', () => {
    const names = (total: number, each: number) =>
      cutSum('width', total, [part('a', 20), part('b', each)]).parts.length;
    expect([names(20, 0), names(20 + 1e-9, 1e-9), names(20.1, 0.1), names(19.9, -0.1), names(21, 0)]).toEqual([
      1, 1, 2, 2, 2,
    ]);
  });

  test('is rounded up to the cut step: 20 and twice 5.1 are cut as 30.5', () => {
    const { job } = plainSource({ pattern: { rounding_mm: 0.5 } });
    expect(lengthSum(job, [given('a', 20), part('b', 5.1, 2)])).toEqual(
      nearly({
        dimension: 'length',
        total: 30.5,
        parts: [
          { name: 'a', times: 1, each: 20, isGiven: true },
          { name: 'b', times: 2, each: 5.1 },
          { name: 'rounded up', times: 1, each: 0.3, isRest: true },
        ],
      }),
    );
  });
});

describe('the sums of the outside', () => {
  const own = { pattern: { outsideWidth_mm: null, outsideHeight_mm: null, rounding_mm: 10 } };
  /** Head and tail: each layer takes half a board, 1.25 mm, at R = 1.4 mm. */
  const half = Math.acos(1 - 1.25 / 2.8);
  const [run, drawn] = [2.8 * Math.sin(half), 2.8 * (half - Math.sin(half))];

  test('are boards, spine and twice one end; the rest is what its own width adds', () => {
    const [width] = outsideSums(plainSource());
    const sum = 330 + 2 * (4 + SEAT + 2 + 1);
    expect(width).toEqual(
      nearly({
        dimension: 'width',
        total: 360,
        parts: [
          { name: 'board width', times: 2, each: 150, isGiven: true },
          { name: 'over the spine', times: 1, each: 30 },
          { name: 'edge margin', times: 2, each: 4, isGiven: true },
          { name: 'seam to stop', times: 2, each: SEAT },
          { name: 'folds at the spine', times: 2, each: 2 },
          { name: 'ease', times: 2, each: 1, isGiven: true },
          { name: 'size given by the maker', times: 1, each: 360 - sum, isRest: true },
        ],
      }),
    );
  });

  test('mark the rounding of a width of the tool, shared by both ends, as the rest', () => {
    const [width] = outsideSums(plainSource(own));
    // 330 + 19.57 is cut as 350.
    expect(width!.total).toBe(350);
    expect(width!.parts.at(-1)).toEqual(
      nearly({ name: 'rounded up', times: 2, each: (350 - 330 - 2 * (7 + SEAT)) / 2, isRest: true }),
    );
  });

  test('count head and tail together where they are alike', () => {
    const parts = [
      { name: 'board height', times: 1, each: 220, isGiven: true },
      { name: 'head and tail: edge margin', times: 2, each: 4, isGiven: true },
      { name: 'head and tail: seam to stop', times: 2, each: run },
      { name: 'head and tail: drawn into the curve', times: 2, each: drawn },
      { name: 'head and tail: ease', times: 2, each: 1, isGiven: true },
      { name: 'rounded up', times: 2, each: 10 - 5 - run - drawn, isRest: true },
    ];
    expect(heightSum(plainSource(own))).toEqual(nearly({ dimension: 'height', total: 240, parts }));
  });

  test.each([
    ['another ease at the head', 3, ['head: ease', 3], ['tail: ease', 1]],
    ['no ease at the tail', 0, ['head: ease', 1], null],
  ])('and one by one where they are not: %s', (_, eased, head, tail) => {
    const ease = tail === null ? { tail_mm: eased } : { head_mm: eased };
    const parts = heightSum(plainSource({ ...own, ease })).parts;
    const named = parts.map(({ name, each, times }) => [name, times, each]);
    for (const [name, each] of [head, ...(tail === null ? [] : [tail])]) expect(named).toContainEqual([name, 1, each]);
    expect(named.filter(([name]) => String(name).startsWith('head: '))).toHaveLength(4);
    expect(named.filter(([name]) => String(name).startsWith('tail: '))).toHaveLength(tail === null ? 3 : 4);
    // The rounding stays without the name of an edge, once for each.
    expect(named.filter(([name]) => name === 'rounded up')).toHaveLength(2);
  });

  test('keep an edge without ease apart from one with ease', () => {
    const bare = { ...own.pattern, rounding_mm: 0 };
    const names = heightSum(plainSource({ pattern: bare, ease: { head_mm: 0 } })).parts.map(({ name }) => name);
    expect(names.filter((name) => name.startsWith('head: '))).toHaveLength(3);
    expect(names.filter((name) => name.startsWith('tail: '))).toHaveLength(4);
  });

  test('of turned ends count the end', () => {
    const names = outsideSums(plainSource({ ...TURNED, leather: LINED }))[0]!.parts.map(({ name }) => name);
    expect(names).toContain('turned end');
  });
});

test('the sum of a pocket is margin, seam to stop and depth beyond the stop', () => {
  const [width, ...height] = pocketSums(plainSource());
  expect(height).toHaveLength(1);
  expect(width).toEqual(
    nearly({
      dimension: 'width',
      total: 58,
      parts: [
        { name: 'edge margin', times: 1, each: 4, isGiven: true },
        { name: 'seam to stop', times: 1, each: CURVE },
        { name: 'pocket depth, beyond the stop', times: 1, each: DEPTH - SEAT },
      ],
    }),
  );
});

describe('a ribbon', () => {
  test('takes the diagonal of the page, the board less its squares: 120 and 160 of 123 x 166', () => {
    const page = {
      book: { width_mm: 123, height_mm: 166 },
      pattern: { outsideWidth_mm: null, outsideHeight_mm: null },
    };
    const ribbon = ribbonOf(
      plainSource({ ...page, construction: { ribbon: { count: 2, fixed_mm: 25, tail_mm: 40 } } }),
    );
    expect(ribbon).toEqual(
      nearly({
        name: 'Ribbon',
        count: 2,
        sum: {
          dimension: 'length',
          total: 265,
          parts: [
            { name: 'fixed at the head', times: 1, each: 25, isGiven: true },
            { name: 'diagonal of the page', times: 1, each: 200 },
            { name: 'tail', times: 1, each: 40, isGiven: true },
          ],
        },
      }),
    );
  });

  test('is none where the job has none', () => expect(ribbonOf(plainSource())).toBeNull());
});
