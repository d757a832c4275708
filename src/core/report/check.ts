import type { CoverDesign } from '../fold/coverDesign.ts';
import type { ElasticFit } from '../fold/elasticFit.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { Printer } from '../units/printer.ts';
import type { Uncertainty } from './uncertainty.ts';

/** `tight` stands for a result that the measuring error could turn either way, or one that needs care in the making. */
export type Verdict = 'fits' | 'tight' | 'fails';

/** A change to the job: the value to put at a dotted path. */
export interface JobChange {
  readonly path: string;
  readonly value: number | string | null;
}

/** Which side of the limit is asked for; `within` the limit either way, for a difference that may have either sign. */
export type Bound = 'atLeast' | 'atMost' | 'within';

/** One question asked of the design, with its answer. */
export interface Check {
  readonly id: string;
  readonly title: string;
  readonly verdict: Verdict;
  readonly value: number;
  readonly limit: number;
  /** Null where there was nothing to measure; value and limit are then 0. */
  readonly bound: Bound | null;
  readonly unit: 'mm' | 'deg' | '';
  /** What was found, and why. */
  readonly message: string;
  /** What to do about it; empty when nothing need be done. */
  readonly remedy: string;
  /** The remedy as changes to the job; empty where only the bench can help. */
  readonly change: readonly JobChange[];
}

/** What a check may look at. */
export interface CheckContext {
  readonly design: CoverDesign;
  /** Results of the elastic strip, where they are at hand. */
  readonly elastic?: Readonly<Record<RangePoint, ElasticFit>> | undefined;
  readonly uncertainty: Uncertainty;
  readonly say: Printer;
}

/**
 * Judges a length that should not be negative and that may be off by `error` either way: sure, unsure, or sure not.
 * @param value mm
 * @param error mm, 0 or more
 */
export function verdictWithin(value: number, error: number): Verdict {
  if (value >= error - NOISE) return 'fits';
  return value >= -error - NOISE ? 'tight' : 'fails';
}

/** Floating-point noise of sums of a few hundred mm. */
const NOISE = 1e-9;

const SEVERITY: Record<Verdict, number> = { fits: 0, tight: 1, fails: 2 };

/** The worst of several verdicts; `fits` of none. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, verdict) => (SEVERITY[verdict] > SEVERITY[worst] ? verdict : worst), 'fits');
}
