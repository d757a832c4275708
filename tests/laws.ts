import fc from 'fast-check';
import { expect } from 'vitest';
import kept from './laws.json' with { type: 'json' };

/** Cases of a law of ordinary cost: 200 in every run, 2,000 with `LAWS=full`. */
const CASES = process.env.LAWS === 'full' ? 2000 : 200;

/** Seed of all laws: the date, or `SEED` from the environment (see lawSeed.ts, which prints it). */
export const LAW_SEED = Number(process.env.SEED);

/** How many cases a law draws that takes `cost` times as long a case as an ordinary one: 20 gives 10, 0.1 gives 2,000. */
export const lawCases = (cost = 1): number => Math.max(1, Math.round(CASES / cost));

/**
 * The most of `cases` draws that may have what a share of all draws has: the mean of the binomial count and three of its
 * standard deviations, which one run in 700 exceeds by chance.
 */
export const mostOf = (share: number, cases: number): number =>
  share * cases + 3 * Math.sqrt(share * (1 - share) * cases);

/** A case that broke a law once. */
export interface KeptCase {
  /** Title of the law's test, with the titles of the groups around it. */
  readonly law: string;
  /** Seed that fast-check printed. */
  readonly seed: number;
  /** The first number of the path that fast-check printed. */
  readonly case: number;
}

interface LawOptions {
  readonly cost?: number;
  /** Number of cases, where `cost` does not say it. */
  readonly cases?: number;
  /** Cases that failed before; by default those of `laws.json` under the title of the running test. */
  readonly kept?: readonly KeptCase[];
}

const keptCases = (): readonly KeptCase[] => {
  const title = expect.getState().currentTestName;
  return kept.filter(({ law }) => law === title);
};

/**
 * Checks a law: first with every case that failed before, then with cases drawn from the seed of the day. Throws with
 * fast-check's message at the first case that fails, shrunk unless the law draws fewer cases than an ordinary one.
 *
 * A law that fails has found something. Its seed and the first number of its path go into `laws.json`, so that the case
 * is drawn in every later run.
 */
export function checkLaw<Ts>(property: fc.IAsyncProperty<Ts>, options?: LawOptions): Promise<void>;
export function checkLaw<Ts>(property: fc.IProperty<Ts>, options?: LawOptions): void;
export function checkLaw<Ts>(property: fc.IRawProperty<Ts>, options: LawOptions = {}): void | Promise<void> {
  const { cost = 1, cases = lawCases(cost), kept = keptCases() } = options;
  const endOnFailure = cases < CASES;
  const runs: fc.Parameters<Ts>[] = [
    ...kept.map(({ seed, case: path }) => ({ seed, path: String(path), numRuns: 1, endOnFailure })),
    { seed: LAW_SEED, numRuns: cases, endOnFailure },
  ];
  if (property.isAsync()) return inTurn(property as fc.IAsyncProperty<Ts>, runs);
  for (const run of runs) fc.assert(property as fc.IProperty<Ts>, run);
}

async function inTurn<Ts>(property: fc.IAsyncProperty<Ts>, runs: readonly fc.Parameters<Ts>[]): Promise<void> {
  for (const run of runs) await fc.assert(property, run);
}
