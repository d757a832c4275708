import { expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { MAKING_STATES } from '../../src/core/job/makingSchema.ts';
import { normalQuantile } from '../../src/core/math/normal.ts';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import type { CoverLesson } from '../../src/core/stock/coverLessonSchema.ts';
import { shopKnowledge } from '../../src/core/stock/shop.ts';
import { defined } from '../defined.ts';
import { LAW_SEED } from '../laws.ts';
import { nth } from '../nth.ts';
import {
  drawnBook,
  jobIn,
  madeCover,
  type SimulatedShop,
  simulatedShop,
  systematicError,
  withCover,
} from '../simulatedShop.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

const SHOPS = proofSize(200, 6);
const COVERS = 20;
/** Covers of the first hide; the others are of the second. */
const FIRST = 10;
const HIDES = 2;

/** One cover in this many has a reading that is grossly wrong. */
const BLUNDERS = 10;

/** What is seen of one shop over its covers. */
interface Seen {
  readonly worked: string;
  /** Systematic error of the spare wrap of a next cover, mm: without any cover, after 10 of that hide, after 20. */
  readonly start: number;
  readonly afterTen: number;
  readonly afterAll: number;
  /** The same of the first cover of a second hide, by the pool of the first and by nothing. */
  readonly second: { readonly pooled: number; readonly alone: number };
  /** How many of the readings lie within what was stated at 95 in 100 before each cover, and how many there are. */
  readonly within: { readonly wrap: number; readonly height: number; readonly count: number };
  readonly refused: { readonly right: number; readonly wrong: number; readonly blunders: number };
}

const K = normalQuantile(0.975);

function run(shop: SimulatedShop, seed: number, hasBlunders: boolean): Seen {
  const draws = randomDraws(seed);
  let leathers = shop.hides.map(({ leather }) => leather);
  const wrong = new Set<string>();
  const within = { wrap: 0, height: 0, count: 0 };
  // The same books for every stage.
  const books = Array.from({ length: 4 }, () => drawnBook(draws, shop.worked));
  const errorOf = (at: number, of: typeof leathers): number => {
    const known = shopKnowledge(of);
    const errors = books.map((book) =>
      Math.abs(systematicError(coverDesign(jobIn(book, nth(of, at), known, shop.worked)), nth(shop.hides, at).hidden)),
    );
    return errors.reduce((sum, error) => sum + error, 0) / errors.length;
  };
  const start = errorOf(0, leathers);
  const alone = errorOf(1, leathers);
  let [afterTen, pooled] = [Number.NaN, Number.NaN];
  for (let n = 0; n < COVERS; n++) {
    if (n === FIRST) {
      afterTen = errorOf(0, leathers);
      pooled = errorOf(1, leathers);
    }
    const at = n < FIRST ? 0 : 1;
    const design = coverDesign(
      jobIn(drawnBook(draws, shop.worked), nth(leathers, at), shopKnowledge(leathers), shop.worked),
    );
    const blunder = hasBlunders && draws() < 1 / BLUNDERS ? (draws() < 0.5 ? -1 : 1) * (6 + 14 * draws()) : 0;
    const lesson: CoverLesson = madeCover(design, nth(shop.hides, at).hidden, draws, `cover ${n}`, blunder);
    if (blunder !== 0) wrong.add(lesson.job);
    else
      for (const { of, read_mm: read, expected_mm: expected, foretold_mm: u } of lesson.evidence) {
        within[of] += Math.abs(read - expected) <= K * u ? 1 : 0;
        within.count += 1 / 2;
      }
    leathers = withCover(leathers, at, lesson);
  }
  const { contradictions } = shopKnowledge(leathers);
  const right = contradictions.filter(({ cover }) => cover !== null && wrong.has(cover.job)).length;
  return {
    worked: shop.worked,
    start,
    afterTen,
    afterAll: errorOf(1, leathers),
    second: { pooled, alone },
    within,
    refused: { right, wrong: contradictions.length - right, blunders: wrong.size },
  };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/**
 * Shops drawn from the hierarchy that the knowledge assumes; covers through the whole model, each job taking what is known when it is
 * made, and read with errors. So it shows that the learning follows from what it assumes and that sums straight in the unknowns are good
 * enough; what true leathers and hands do is not in it.
 */
test('finished covers teach a shop its leather and its hand', () => {
  const shops = Array.from({ length: SHOPS }, (_, i) => simulatedShop(LAW_SEED + 7919 * i, HIDES));
  const clean = shops.map((shop, i) => run(shop, LAW_SEED + i, false));
  const wrong = shops.map((shop, i) => run(shop, LAW_SEED + i, true));
  console.info([told('no blunder', clean), told(`one in ${BLUNDERS} wrong`, wrong)].join('\n'));
  for (const worked of MAKING_STATES) {
    const some = clean.filter((one) => one.worked === worked);
    if (some.length > 0) console.info(told(`no blunder, worked ${worked}`, some));
  }
  for (const seen of [clean, wrong]) {
    const start = mean(seen.map((one) => one.start));
    expect(mean(seen.map((one) => one.afterTen))).toBeLessThan(start / (isWholeProof ? 3 : 2));
    expect(mean(seen.map(({ second }) => second.pooled))).toBeLessThan(mean(seen.map(({ second }) => second.alone)));
    for (const share of sharesWithin(seen)) {
      // A sample is too small for three points on either side.
      expect(share).toBeGreaterThan(isWholeProof ? 0.92 : 0.85);
      expect(share).toBeLessThan(isWholeProof ? 0.98 : 1);
    }
  }
  const [ten, misled] = [clean, wrong].map((seen) => mean(seen.map((one) => one.afterTen)));
  expect(defined(misled)).toBeLessThan((isWholeProof ? 1.2 : 2) * defined(ten));
  const refused = sum(wrong.map((one) => one.refused.right));
  expect(refused).toBeGreaterThan(0.95 * sum(wrong.map((one) => one.refused.blunders)));
});

function sharesWithin(seen: readonly Seen[]): readonly number[] {
  const count = sum(seen.map(({ within }) => within.count));
  return (['wrap', 'height'] as const).map((of) => sum(seen.map(({ within }) => within[of])) / count);
}

/** What is printed of some shops. */
function told(name: string, seen: readonly Seen[]): string {
  const length = (of: (one: Seen) => number): string => mean(seen.map(of)).toFixed(2);
  const count = (of: (one: Seen) => number): number => sum(seen.map(of));
  const [wrap, height] = sharesWithin(seen).map((share) => (100 * share).toFixed(1));
  return (
    `${name}, ${seen.length} shops: systematic error of the spare wrap ${length((one) => one.start)} mm at the start, ${length((one) => one.afterTen)} after ` +
    `10 covers; second hide ${length(({ second }) => second.alone)} alone, ${length(({ second }) => second.pooled)} pooled, ${length((one) => one.afterAll)} after ` +
    `10 of its own; within the stated 95 in 100: wrap ${wrap}, height ${height} of ${count(({ within }) => within.count)}; ` +
    `of ${count(({ refused }) => refused.blunders)} blunders ${count(({ refused }) => refused.right)} refused, and ${count(({ refused }) => refused.wrong)} good readings`
  );
}
