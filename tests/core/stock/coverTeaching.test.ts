import { expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { randomDraws } from '../../../src/core/math/randomDraws.ts';
import { coverTeaching } from '../../../src/core/stock/coverTeaching.ts';
import { knowLeather } from '../../../src/core/stock/knowLeather.ts';
import { shopKnowledge } from '../../../src/core/stock/shop.ts';
import { nth } from '../../nth.ts';
import { drawnBook, jobIn, madeCover, simulatedShop, withCover } from '../../simulatedShop.ts';

const shop = simulatedShop(5, 2);
const { worked } = shop;
const draws = randomDraws(5);

/** A cover of the first hide, made by what is usual. */
function cover(name: string, blunder: number) {
  const { leather, hidden } = nth(shop.hides, 0);
  const design = coverDesign(jobIn(drawnBook(draws, worked), leather, shopKnowledge([leather]), worked));
  return madeCover(design, hidden, draws, name, blunder);
}

const lessons = [cover('one', 0), cover('two', 0), cover('three', 0)];
const hides = shop.hides.map(({ leather }) => leather);
const taught = lessons.reduce((leathers, lesson) => withCover(leathers, 0, lesson), hides);

test('a cover that counts no more leaves what was known without it', () => {
  const undone = taught.map((leather) => ({
    ...leather,
    covers: leather.covers.map((one) => ({ ...one, counts: one.job !== 'three' })),
  }));
  const without = lessons.slice(0, 2).reduce((leathers, lesson) => withCover(leathers, 0, lesson), hides);
  const known = [undone, without].map((leathers) => ({
    hand: shopKnowledge(leathers).hand,
    leather: knowLeather(nth(leathers, 0), shopKnowledge(leathers), { worked }),
  }));
  expect(nth(known, 0)).toEqual(nth(known, 1));
});

test('before and after a cover are what is known without it and with it', () => {
  const first = nth(taught, 0);
  const { before, after, contradictions } = coverTeaching(taught, first, nth(lessons, 2));
  const all = shopKnowledge(taught);
  const [now, then] = [after, before].map(({ leather }) => leather.bendRatio.across);
  expect(nth([now], 0)).toEqual(knowLeather(first, all, { worked }).bendRatio.across);
  expect(after.hand).toEqual(all.hand);
  expect(after.hand.margin_mm.u).toBeLessThan(before.hand.margin_mm.u);
  expect(nth([now], 0)).not.toEqual(then);
  expect(contradictions).toEqual([]);
});

test('a cover that contradicts the others is named and teaches nothing of what it got wrong', () => {
  const wrong = cover('four', 25);
  const { before, after, contradictions } = coverTeaching(taught, nth(taught, 0), wrong);
  expect(contradictions.map(({ cover: of }) => of?.name)).toEqual(['four']);
  expect(Math.abs(nth(contradictions, 0).deviation)).toBeGreaterThan(3);
  const moved = after.leather.bendRatio.across.value - before.leather.bendRatio.across.value;
  expect(Math.abs(moved)).toBeLessThan(before.leather.bendRatio.across.u);
});

test('teaches the next hide of its kind, and none of another', () => {
  const [, second] = taught;
  const known = (leathers: typeof taught) => knowLeather(nth(leathers, 1), shopKnowledge(leathers), { worked });
  expect(known(taught).change.across.from).toBe('shop');
  const other = taught.map((leather) => (leather === second ? { ...leather, tannage: 'chrome' as const } : leather));
  expect(known(other).neutral.across.from).toBe('usual');
});
