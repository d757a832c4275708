import { describe, expect, test } from 'vitest';
import { condition, type Gaussian } from '../../../src/core/doubt/condition.ts';
import { normalDraw, randomDraws } from '../../../src/core/math/randomDraws.ts';
import type { LeatherReading } from '../../../src/core/stock/leatherReadings.ts';
import { LEATHER_COUNT, PRIOR, UNKNOWNS } from '../../../src/core/stock/leatherUnknowns.ts';
import { pooledLeathers, type ReadLeather } from '../../../src/core/stock/pooledLeathers.ts';
import { nth } from '../../nth.ts';

const reading = (value: number, u: number, slopes: Readonly<Record<number, number>>): LeatherReading => ({
  of: 'wrap',
  cover: { job: 'a', name: 'a' },
  value,
  u,
  slopes: UNKNOWNS.map((_, i) => slopes[i] ?? 0),
});

const diagonal = (values: readonly number[]) => values.map((one, i) => values.map((_, k) => (i === k ? one : 0)));

const FLAT = 1e10;

test('has the published solution of a worked example: sires are leathers, herds are common to all', () => {
  // G. K. Robinson 1991, That BLUP is a good thing, Statistical Science 6, 15, section 2, after C. R. Henderson: milk of daughters of
  // the sires A, B, C, D in three herds, variance of a sire a tenth of the residual. Figures as remembered; they satisfy the mixed
  // model equations that the paper gives, which a page of notes on animal breeding repeats with the same four sires.
  const daughters = [
    { sire: 'A', herd: 0, milk: [110] },
    { sire: 'D', herd: 0, milk: [100] },
    { sire: 'B', herd: 1, milk: [110] },
    { sire: 'D', herd: 1, milk: [100, 100] },
    { sire: 'C', herd: 2, milk: [110, 110] },
    { sire: 'D', herd: 2, milk: [100, 100] },
  ];
  const SCALE = 100;
  const sires = ['A', 'B', 'C', 'D'].map(
    (name): ReadLeather => ({
      kind: 'cattle',
      readings: daughters
        .filter(({ sire }) => sire === name)
        .flatMap(({ herd, milk }) => milk.map((one) => reading(one, SCALE, { 0: 1, [herd + 1]: 1 }))),
    }),
  );
  const variance = SCALE ** 2;
  const own = UNKNOWNS.slice(0, LEATHER_COUNT).map((_, i) => (i === 0 ? 0.1 * variance : 1e-6));
  const kind = UNKNOWNS.slice(0, LEATHER_COUNT).map((_, i) => (i === 0 ? 1e-6 : FLAT));
  const pool = pooledLeathers(sires, { own: diagonal(own), kind: diagonal(kind), hand: [1, 1] });
  const effects = sires.map((sire) => nth(pool.of(sire).mean, 0));
  const herds = [1, 2, 3].map((i) => nth(pool.of(nth(sires, 0)).mean, i));
  [0.4, 0.52, 0.76, -1.67].forEach((effect, i) => {
    expect(nth(effects, i)).toBeCloseTo(effect, 2);
  });
  [105.64, 104.28, 105.46].forEach((herd, i) => {
    expect(nth(herds, i)).toBeCloseTo(herd, 2);
  });
});

/** Leathers of two kinds with readings of anything, some of them grossly wrong. */
function drawnLeathers(seed: number, blunders: boolean): ReadLeather[] {
  const random = randomDraws(seed);
  return Array.from({ length: 5 }, (_, n) => ({
    kind: n % 2 === 0 ? 'vegetable' : 'chrome',
    readings: Array.from({ length: 1 + (n % 4) }, (): LeatherReading => {
      const slopes = UNKNOWNS.map((unknown) => (random() < 0.4 ? (unknown.startsWith('hand') ? -2 : 5) * random() : 0));
      return {
        of: 'wrap',
        cover: { job: `${n}`, name: '' },
        slopes,
        value: normalDraw(random) + (blunders && random() < 0.3 ? 20 : 0),
        u: 0.3 + random(),
      };
    }),
  }));
}

/** All leathers, kinds and the hand as one normal distribution, conditioned on one reading after the other. */
function jointly(leathers: readonly ReadLeather[]): { of: (n: number) => Gaussian; hand: number[] } {
  const kinds = ['vegetable', 'chrome'];
  const blocks = [
    ...kinds.map(() => PRIOR.kind),
    ...leathers.map(() => PRIOR.own),
    diagonal(PRIOR.hand.map((u) => u * u)),
  ];
  const starts = blocks.map((_, i) => blocks.slice(0, i).reduce((sum, block) => sum + block.length, 0));
  const size = blocks.reduce((sum, block) => sum + block.length, 0);
  const covariance = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  blocks.forEach((block, b) => {
    block.forEach((row, i) => {
      row.forEach((one, k) => {
        const line = nth(covariance, nth(starts, b) + i);
        line[nth(starts, b) + k] = one;
      });
    });
  });
  const hand = nth(starts, blocks.length - 1);
  const rowsOf = (n: number) =>
    UNKNOWNS.map((_, i) => {
      const row = new Array<number>(size).fill(0);
      if (i >= LEATHER_COUNT) row[hand + i - LEATHER_COUNT] = 1;
      else
        for (const block of [kinds.indexOf(nth(leathers, n).kind), kinds.length + n]) row[nth(starts, block) + i] = 1;
      return row;
    });
  let known: Gaussian = { mean: new Array<number>(size).fill(0), covariance };
  leathers.forEach(({ readings }, n) => {
    const rows = rowsOf(n);
    for (const { slopes, value, u } of readings) {
      const whole = new Array<number>(size)
        .fill(0)
        .map((_, k) => rows.reduce((sum, row, i) => sum + nth(slopes, i) * nth(row, k), 0));
      known = condition(known, { slopes: whole, value, u });
    }
  });
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, one, i) => sum + one * nth(b, i), 0);
  return {
    of: (n) => ({
      mean: rowsOf(n).map((row) => dot(row, known.mean)),
      covariance: rowsOf(n).map((a) =>
        rowsOf(n).map((b) =>
          dot(
            a,
            known.covariance.map((line) => dot(line, b)),
          ),
        ),
      ),
    }),
    hand: known.mean.slice(hand),
  };
}

const close = (a: readonly number[], b: readonly number[]): void => {
  a.forEach((one, i) => {
    expect(one).toBeCloseTo(nth(b, i), 9);
  });
};

describe('the pool of leathers', () => {
  test('is the recursive least squares of all of them at once', () => {
    const leathers = drawnLeathers(1, false);
    const pool = pooledLeathers(leathers);
    const whole = jointly(leathers);
    expect(pool.refused.size).toBe(0);
    leathers.forEach((leather, n) => {
      close(pool.of(leather).mean, whole.of(n).mean);
      close(pool.of(leather).covariance.flat(), whole.of(n).covariance.flat());
    });
    close(pool.hand.mean, whole.hand);
  });

  test('does not depend on the order of leathers and readings', () => {
    const leathers = drawnLeathers(7, true);
    const turned = leathers.map(({ kind, readings }) => ({ kind, readings: readings.toReversed() }));
    const [pool, other] = [pooledLeathers(leathers), pooledLeathers(turned.toReversed())];
    expect(pool.refused.size).toBeGreaterThan(0);
    leathers.forEach((leather, i) => {
      close(pool.of(leather).mean, other.of(nth(turned, i)).mean);
      const refusedOf = (list: readonly { readonly reading: LeatherReading }[] = []) =>
        new Set(list.map(({ reading: one }) => one));
      expect(refusedOf(pool.refused.get(leather))).toEqual(refusedOf(other.refused.get(nth(turned, i))));
    });
  });

  test('refuses a blunder, and knows what it knew without it', () => {
    const good = [0.3, -0.2, 0.4, 0.1].map((value) => reading(value, 0.5, { 3: 5, 12: -2 }));
    const [leather, wrong] = [good, [...good, reading(12, 0.5, { 3: 5, 12: -2 })]].map((readings) => ({
      kind: 'vegetable',
      readings,
    }));
    const pool = pooledLeathers([nth([wrong], 0) as ReadLeather]);
    const refused = nth([...pool.refused.values()].flat(), 0);
    expect(refused.reading.value).toBe(12);
    expect(refused.deviation).toBeGreaterThan(10);
    close(pool.of(wrong as ReadLeather).mean, pooledLeathers([leather as ReadLeather]).of(leather as ReadLeather).mean);
  });

  test('tells a new leather of the kind half of what it tells of one that was tested', () => {
    const tested: ReadLeather = { kind: 'vegetable', readings: [reading(0.1, 1e-4, { 3: 1 })] };
    const pool = pooledLeathers([tested]);
    const unread = (kind: string) => pool.of({ kind, readings: [] });
    expect(nth(pool.of(tested).mean, 3)).toBeCloseTo(0.1, 4);
    expect(nth(unread('vegetable').mean, 3)).toBeCloseTo(0.05, 4);
    expect(nth(unread('chrome').mean, 3)).toBe(0);
    // 0.1 alone; of the kind half the variance is left to be its own, and half of the kind's is known.
    expect(Math.sqrt(nth(nth(unread('chrome').covariance, 3), 3))).toBeCloseTo(0.1, 9);
    expect(Math.sqrt(nth(nth(unread('vegetable').covariance, 3), 3))).toBeCloseTo(Math.sqrt(0.0075), 4);
  });
});
