import type { Gaussian } from '../doubt/condition.ts';
import type { Way } from '../leatherTest/testSchema.ts';

/** Where a figure of a leather comes from: what is usual, the maker's other leathers of its kind, its own tests, covers made of it. */
type KnownFrom = 'usual' | 'shop' | 'tests' | 'covers';

/** A figure of a leather as it is known, with its standard uncertainty. */
export interface Known {
  readonly value: number;
  readonly u: number;
  readonly from: KnownFrom;
}

/** A figure for a strip, or a bend's leather, that runs along or across the backbone. */
export type KnownByWay = Readonly<Record<Way, Known>>;

/** All that is known of a leather worked in one way. */
export interface LeatherKnowledge {
  /** K. */
  readonly neutral: KnownByWay;
  readonly bendRatio: KnownByWay;
  /** Change of size in making, as a share. */
  readonly change: KnownByWay;
  readonly modulus_MPa: KnownByWay;
  readonly creaseSet: Known;
  readonly density_kg_m3: Known;
  /** Thickness over the whole piece, mm: one figure where callipered, else null for the range as sold. */
  readonly thickness: Known | null;
  /** Leather and hand as they are known together, in the order of `UNKNOWNS`: what a cover tells of is the sum, and not each alone. */
  readonly joint: Gaussian;
}
