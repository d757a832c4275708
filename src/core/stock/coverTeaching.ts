import type { CoverLesson } from './coverLessonSchema.ts';
import type { Hand } from './hand.ts';
import { knowLeather } from './knowLeather.ts';
import type { LeatherKnowledge } from './leatherKnowledge.ts';
import { type Contradiction, shopKnowledge } from './shop.ts';
import type { StockLeather } from './stockSchema.ts';

/** What was known without a cover, and what is with it. */
interface Told {
  readonly leather: LeatherKnowledge;
  readonly hand: Hand;
}

/** What one finished cover teaches, or would. */
export interface CoverTeaching {
  readonly before: Told;
  readonly after: Told;
  /** Readings of this cover that contradict all else: nothing is taken from them. */
  readonly contradictions: readonly Contradiction[];
}

/**
 * What a finished cover teaches of its leather and of the maker's hand: all that is known without it and with it. Exact and without order: the
 * same cover teaches the same whenever it is told.
 * @param leather one of `leathers`, with or without the cover
 */
export function coverTeaching(
  leathers: readonly StockLeather[],
  leather: StockLeather,
  lesson: CoverLesson,
): CoverTeaching {
  const others = leather.covers.filter(({ job }) => job !== lesson.job);
  const told = (covers: StockLeather['covers']) => {
    const one = { ...leather, covers };
    const shop = shopKnowledge(leathers.map((each) => (each === leather ? one : each)));
    const { worked } = lesson;
    return { shop, told: { leather: knowLeather(one, shop, { worked }), hand: shop.hand } };
  };
  const before = told(others);
  const after = told([...others, { ...lesson, counts: true }]);
  return {
    before: before.told,
    after: after.told,
    contradictions: after.shop.contradictions.filter(({ cover }) => cover?.job === lesson.job),
  };
}
