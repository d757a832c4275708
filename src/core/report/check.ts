import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Patch } from '../job/jobDocument.ts';
import type { Printer } from '../units/printer.ts';
import type { Uncertainty } from './uncertainty.ts';

/**
 * - `tight`: a result that the measuring error could turn either way, or one that needs care in the making;
 * - `loose`: over the loosest gap;
 * - `unknown`: what decides is missing, or a solve found no answer;
 * - `none`: a row that only informs, was not looked at, or has no meaning for this cover.
 */
export type Verdict = 'fits' | 'tight' | 'loose' | 'fails' | 'unknown' | 'none';

/** Which side of the limit is asked for; `within` the limit either way, for a difference that may have either sign. */
type Bound = 'atLeast' | 'atMost' | 'within';

/** One question asked of the design, with its answer. */
export interface Check {
  readonly id: string;
  readonly title: string;
  readonly verdict: Verdict;
  /** The verdict in plain words; for `fails` and `none` the row's own, as `too small`. */
  readonly state: string;
  readonly value: number;
  readonly limit: number;
  /** Null where there was nothing to measure or to judge; value and limit are then 0. */
  readonly bound: Bound | null;
  readonly unit: 'mm' | 'deg' | '';
  /** What was found, and why. */
  readonly message: string;
  /** What to do about it; empty when nothing need be done. */
  readonly remedy: string;
  /** The remedy as changes to the job; empty where only the bench can help. */
  readonly change: readonly Patch<number | string | null>[];
}

/** What a check may look at. */
export interface CheckContext {
  readonly design: CoverDesign;
  readonly uncertainty: Uncertainty;
  readonly say: Printer;
}

/** A row without a number to judge: value and limit say nothing, and nothing is to be done. */
export const UNJUDGED = { value: 0, limit: 0, bound: null, remedy: '', change: [] } as const;

/**
 * Judges a length that should not be negative and that may be off: sure, unsure, or likely not.
 * @param value mm
 * @param band what it may be off by, mm: it fits beyond the whole of it, and fails beyond what the ruler may be off by
 */
export function verdictWithin(value: number, { worst, ruler }: Doubt): 'fits' | 'tight' | 'fails' {
  if (value >= worst - NOISE) return 'fits';
  return value >= -ruler - NOISE ? 'tight' : 'fails';
}

interface Doubt {
  readonly worst: number;
  readonly ruler: number;
}

/** Floating-point noise of sums of a few hundred mm. */
export const NOISE = 1e-9;

/** Best first. What is not known is worse than what is loose, for it may hide a failure. */
const SEVERITY: Record<Verdict, number> = { none: -1, fits: 0, tight: 1, loose: 2, unknown: 3, fails: 4 };

/** How bad a verdict is, to sort by: a larger number is worse. */
export const severity = (verdict: Verdict): number => SEVERITY[verdict];

/** Whether a verdict asks for something to be done; a row that only informs, or that nothing is known of, does not. */
export const isWanting = (verdict: Verdict): boolean =>
  verdict === 'tight' || verdict === 'loose' || verdict === 'fails';

/** The worst of several verdicts; `fits` of none. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, verdict) => (severity(verdict) > severity(worst) ? verdict : worst), 'fits');
}

/** Plain words for the verdicts that read alike in every row. */
export const STATES = { fits: 'fits', tight: 'close', loose: 'too loose', unknown: 'not known' } as const;

/** The verdict of a row in plain words. */
export const stateOf = (verdict: Verdict, failing: string): string =>
  verdict === 'fails' || verdict === 'none' ? failing : STATES[verdict];
