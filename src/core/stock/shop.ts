import type { Gaussian } from '../doubt/condition.ts';
import type { Hand } from './hand.ts';
import type { Known } from './leatherKnowledge.ts';
import { type LeatherReading, leatherReadings } from './leatherReadings.ts';
import { type Pooled, pooledLeathers, type ReadLeather } from './pooledLeathers.ts';
import type { StockLeather } from './stockSchema.ts';

/** A reading of a leather that contradicts all else that is known: nothing is taken from it, and it is to be read again. */
export interface Contradiction {
  readonly leather: StockLeather;
  readonly of: LeatherReading['of'];
  /** Job and name of the cover that it was read on; null for a test. */
  readonly cover: LeatherReading['cover'];
  /** How far it is off, in standard deviations of what all else says. */
  readonly deviation: number;
}

/** What a maker's leathers, tests and covers teach together. */
export interface Shop {
  readonly leathers: readonly StockLeather[];
  readonly hand: Hand;
  readonly contradictions: readonly Contradiction[];
  /** What a leather of the shop has more than is usual, in the order of `UNKNOWNS`, and which of its readings say so. */
  readonly known: (leather: StockLeather) => { readonly more: Gaussian; readonly readings: readonly LeatherReading[] };
}

interface Read extends ReadLeather {
  readonly leather: StockLeather;
}

/**
 * What all leathers of a maker teach: each its own figures, those of one tannage their kind's, and all of them the maker's hand. Only
 * evidence is stored; this is worked out from it anew, so that a cover that counts no more leaves no trace.
 *
 * @see pooledLeathers for the model, exact and without order, and for what is refused
 */
export function shopKnowledge(leathers: readonly StockLeather[]): Shop {
  const read = new Map(
    leathers.map((leather): [StockLeather, Read] => [
      leather,
      { leather, kind: leather.tannage, readings: leatherReadings(leather) },
    ]),
  );
  const pool = pooledLeathers([...read.values()]);
  const refusedOf = (one: Read) => pool.refused.get(one) ?? [];
  return {
    leathers,
    hand: handOf(pool, [...read.values()]),
    contradictions: [...read.values()].flatMap((one) =>
      refusedOf(one).map(({ reading: { of, cover }, deviation }) => ({ leather: one.leather, of, cover, deviation })),
    ),
    known: (leather) => {
      const one = read.get(leather);
      if (one === undefined) throw new RangeError(`${leather.name} is none of the shop's leathers.`);
      const refused = new Set(refusedOf(one).map(({ reading }) => reading));
      return { more: pool.of(one), readings: one.readings.filter((reading) => !refused.has(reading)) };
    },
  };
}

function handOf({ hand: { mean, covariance } }: Pooled<Read>, leathers: readonly Read[]): Hand {
  const isTaught = leathers.some(({ readings }) => readings.some(({ cover }) => cover !== null));
  const known = (i: number): Known => ({
    value: mean[i]!,
    u: Math.sqrt(covariance[i]![i]!),
    from: isTaught ? 'covers' : 'usual',
  });
  return { margin_mm: known(0), cutting_mm: known(1) };
}
