import { wrapAt } from '../allowance/wrap.ts';
import { symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Job } from '../job/jobSchema.ts';
import { radiansFromDegrees } from '../units/radians.ts';

/** Spare room of a finished cover as it was read, mm, with the standard uncertainty of the reading. */
export interface OutcomeReading {
  readonly of: 'wrap' | 'height';
  readonly value: number;
  readonly u: number;
  /** Gaps at both edges, or how far a cover that is too short holds the book open. */
  readonly from: 'gaps' | 'opening';
}

/** Standard uncertainty of the angle at which a cover holds a book open, degrees. Assumption, as for a trial in card. */
const OPENING_ERROR_DEG = 3;

/**
 * What was read of a finished cover: spare wrap = front + back, spare height = head + tail, each pushed home. Without gaps at the
 * fore-edges, a cover that stays open at an angle just reaches there: its spare wrap is the wrap at that angle less the closed one.
 */
export function outcomeReadings(design: CoverDesign): readonly OutcomeReading[] {
  const { front_mm: front, back_mm: back, head_mm: head, tail_mm: tail, error_mm: error } = design.job.outcome;
  // Two readings, each with two standard uncertainties of `error`.
  const u = (Math.SQRT2 * error) / 2;
  const pair = (of: OutcomeReading['of'], a: number | null, b: number | null): OutcomeReading[] =>
    a === null || b === null ? [] : [{ of, value: a + b, u, from: 'gaps' }];
  const wrap = pair('wrap', front, back);
  const told = wrap.length > 0 ? wrap : ofOpening(design);
  return [...(outcomeConflict(design.job) === null ? told : []), ...pair('height', head, tail)];
}

/** Standard uncertainties of the spare wrap read, beyond which closing and gaps cannot both be right. */
const BEYOND_CHANCE = 3;

/**
 * Whether what is said of closing contradicts the gaps at the fore-edges: a cover `closes` that overruns, or one is `open` that has
 * room. Nothing is then told of the wrap.
 */
export function outcomeConflict({ outcome }: Pick<Job, 'outcome'>): 'closes' | 'open' | null {
  const { front_mm: front, back_mm: back, closes, opening_deg: opening, error_mm: error } = outcome;
  if (front === null || back === null) return null;
  const sure = (BEYOND_CHANCE * Math.SQRT2 * error) / 2;
  if (closes === true && front + back < -sure) return 'closes';
  return (closes === false || (opening ?? 0) > 0) && front + back > sure ? 'open' : null;
}

function ofOpening({ job, needs: { nominal } }: CoverDesign): OutcomeReading[] {
  const { closes, opening_deg: opening } = job.outcome;
  if (closes === true || opening === null || opening === 0) return [];
  const spareAt = (degrees: number): number =>
    wrapAt(nominal.book, symmetricOpening(radiansFromDegrees(Math.max(0, Math.min(180, degrees)))), nominal.leathers)
      .length - nominal.closed.length;
  const [low, high] = [opening - OPENING_ERROR_DEG, opening + OPENING_ERROR_DEG].map(spareAt);
  return [{ of: 'wrap', value: spareAt(opening), u: Math.abs(high! - low!) / 2, from: 'opening' }];
}
