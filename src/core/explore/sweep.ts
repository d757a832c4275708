import type { JobDocument } from '../job/jobDocument.ts';
import type { JobIssue } from '../job/jobIssue.ts';
import { RANGE_POINTS, type RangePoint } from '../leather/leatherModel.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { Verdict } from '../report/checkSchema.ts';
import { designReport } from '../report/designReport.ts';
import type { ExploreField } from './exploreField.ts';
import type { ExploreResult, FitLimit, ResultPart } from './exploreResult.ts';
import { tryChanges } from './trial.ts';

type Value = number | null;

/** One result at one value of the field. */
interface SweepReading {
  readonly values: Readonly<Record<RangePoint, Value>>;
  /** Where the result fits and fails there: a limit may move with the field. */
  readonly limit: FitLimit | null;
  /** The parts of a result that is a sum; empty for any other. */
  readonly parts: readonly ResultPart[];
}

/** A value of the field with a reading for every result asked for, or why no job has that value. */
export type SweepPoint =
  | {
      readonly at: number;
      readonly verdict: Verdict;
      readonly state: string;
      readonly readings: readonly SweepReading[];
    }
  | { readonly at: number; readonly issue: JobIssue };

export interface SweepRange {
  readonly from: number;
  /** Over `from`. */
  readonly to: number;
  /** Evenly spaced values, both ends among them; 2 or more. */
  readonly count: number;
}

/**
 * Moves one field of a job over a range and reads results off at every step, each by working out the whole job.
 *
 * The present value of the field is added where it lies in the range, so that the job as it stands is on the curve.
 * @param document the job as written
 * @param results read at every point, in this order
 * @returns points in rising order; a value that no job may have is a point with its first issue
 */
export function sweep(
  document: JobDocument,
  field: ExploreField,
  results: readonly ExploreResult[],
  { from, to, count }: SweepRange,
): readonly SweepPoint[] {
  if (!(to > from) || count < 2)
    throw new RangeError(`Got ${from} to ${to} in ${count} values; allowed: a rising range in 2 or more.`);
  const even = Array.from({ length: count }, (_, i) => (i === count - 1 ? to : from + ((to - from) * i) / (count - 1)));
  const isBetween = field.present >= from && field.present <= to;
  const isOther = (at: number): boolean => Math.abs(at - field.present) > TOLERANCE.ratio * (to - from);
  const values = isBetween ? [...even.filter(isOther), field.present].sort((a, b) => a - b) : even;
  return values.map((at) => {
    const trial = tryChanges(document, at === field.present ? [] : field.changes(at), designReport);
    if (!trial.ok) return { at, issue: trial.issues[0]! };
    const { report } = trial;
    const readings = results.map(({ read, limit, parts }): SweepReading => {
      const [thin, nominal, thick] = RANGE_POINTS.map((point) => read(report, point)) as [Value, Value, Value];
      return { values: { thin, nominal, thick }, limit: limit(report), parts: parts(report) };
    });
    return { at, verdict: report.verdict, state: report.state, readings };
  });
}
