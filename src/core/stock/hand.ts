import { DOUBTS } from '../doubt/doubtOf.ts';
import type { Known } from './leatherKnowledge.ts';

/** What stays of the maker's own way from cover to cover, beyond what is drawn; as `making.hand` of a job. */
export interface Hand {
  /** How much more margin is left at one edge, mm. */
  readonly margin_mm: Known;
  /** How much larger one dimension is cut, mm. */
  readonly cutting_mm: Known;
}

/**
 * Share of the variance of one dimension's margins, and of its cut, that is the maker's way and stays; the rest is chance of
 * each cut. Assumption.
 */
const STAYS = 1 / 2;

/**
 * `DOUBTS.margin_mm` and `cutting_mm` split, mm. The two margins of a dimension are off by the same way, 2 m, and by chance each by
 * itself, so that (2 m)^2 + 2 c^2 = 2 u^2: with half of it each m = u / 2 and c = u / sqrt 2. A cut: m^2 + c^2 = u^2.
 */
export const HAND_DOUBTS = {
  margin: { stays: DOUBTS.margin_mm * Math.sqrt(STAYS / 2), chance: DOUBTS.margin_mm * Math.sqrt(1 - STAYS) },
  cutting: { stays: DOUBTS.cutting_mm * Math.sqrt(STAYS), chance: DOUBTS.cutting_mm * Math.sqrt(1 - STAYS) },
} as const;
