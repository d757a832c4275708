import type { CutChances, Doubted } from '../doubt/spare.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { FitDoubt } from '../fold/fitDoubt.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { Printer } from '../units/printer.ts';
import type { ResultOrigin } from '../words/resultOrigin.ts';
import type { Finding, Verdict } from './checkSchema.ts';

/** One question that a report answers. */
export interface Question {
  readonly id: string;
  readonly title: string;
  /** Of its value and limit; '' for a share of one. */
  readonly unit: 'mm' | 'deg' | '';
  /** The verdict `fails` in the question's own words. */
  readonly failing: string;
}

/** What a check may look at. */
export interface CheckContext {
  readonly design: CoverDesign;
  readonly doubt: FitDoubt;
  readonly say: Printer;
}

/** A finding without what `answered` fills in: the usual words, nothing to judge, nothing to do. */
export type Answer = Pick<Finding, 'verdict' | 'message'> & Partial<Finding>;

/** What to do about a finding, in words and as changes to the job. */
export type Remedy = Partial<Pick<Finding, 'remedy' | 'change'>>;

/** The row of the report that answers a question. */
export const answered = <Id extends string>(
  { id, title, unit, failing }: Question & { id: Id },
  answer: Answer,
  origin: ResultOrigin = 'quick model',
) => {
  const unjudged = { value: 0, limit: 0, bound: null, remedy: '', change: [] };
  return { id, title, unit, state: stateOf(answer.verdict, failing), ...unjudged, ...answer, origin };
};

/** Side of zero on which a doubted value lies with the wished share of chance, mostly, or not even so. */
export interface Judged {
  readonly verdict: 'fits' | 'tight' | 'fails';
  /** The mean from which it fits. */
  readonly limit: number;
}

/**
 * Judges a length that should not be negative: it fits if that has the wished chance, and fails if it is more likely negative
 * than not.
 */
export function judged({ mean, u }: Pick<Doubted, 'mean' | 'u'>, deviations: number): Judged {
  const limit = deviations * u;
  const verdict = mean >= limit - TOLERANCE.length ? 'fits' : mean >= -TOLERANCE.length ? 'tight' : 'fails';
  return { verdict, limit };
}

/** Verdict by chance: it fits with the wished share, is too small or too loose where that is more likely than not, else tight. */
export function judgedByChance(
  chances: Pick<CutChances, 'fits' | 'goesOn' | 'loose'>,
  share: number,
): 'fits' | 'tight' | 'loose' | 'fails' {
  if (chances.fits() >= share) return 'fits';
  if (chances.goesOn() < 1 / 2) return 'fails';
  return chances.loose() > 1 / 2 ? 'loose' : 'tight';
}

/** A chance in words, as `97 of 100`; rounded down, so that it is never overstated, and never called certain. */
export function chanceWords(chance: number): string {
  const of = Math.floor(100 * chance + 1e-9);
  if (of === 0) return 'fewer than 1 of 100';
  return of === 100 ? 'over 99 of 100' : `${of} of 100`;
}

/** Best first. What is not known is worse than what is loose, because it may hide a failure. */
const SEVERITY: Record<Verdict, number> = { none: -1, fits: 0, tight: 1, loose: 2, unknown: 3, fails: 4 };

/** How bad a verdict is, to sort by: a larger number is worse. */
export const severity = (verdict: Verdict): number => SEVERITY[verdict];

/** Whether a verdict asks for a change; a row that only informs, or is not known, does not. */
export const isWanting = (verdict: Verdict): boolean =>
  verdict === 'tight' || verdict === 'loose' || verdict === 'fails';

/** The worst of several verdicts; `fits` of none. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, verdict) => (severity(verdict) > severity(worst) ? verdict : worst), 'fits');
}

/** Plain words for the verdicts that have the same words in every row. */
const STATES = { fits: 'fits', tight: 'close', loose: 'too loose', unknown: 'not known', none: 'note' } as const;

/** A verdict in plain words; `fails` in the row's own. */
export const stateOf = (verdict: Verdict, failing: string): string => (verdict === 'fails' ? failing : STATES[verdict]);
