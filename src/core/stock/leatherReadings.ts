import type { LinearReading } from '../doubt/condition.ts';
import { MAKING_STATES } from '../job/makingSchema.ts';
import { leatherTestResults } from '../leatherTest/leatherTestResults.ts';
import { WAYS } from '../leatherTest/testSchema.ts';
import type { CoverLesson } from './coverLessonSchema.ts';
import { type LeatherUnknown, UNKNOWNS, usualValues } from './leatherUnknowns.ts';
import type { StockLeather } from './stockSchema.ts';

/** A test of a leather, or one dimension of a finished cover of it, as a sum of what the leather and the hand have more than is usual. */
export interface LeatherReading extends LinearReading {
  /** The figure of a test, or the dimension of a cover. */
  readonly of: LeatherUnknown | 'wrap' | 'height';
  /** The cover, as its job is known on the shelf; null for a test. */
  readonly cover: Pick<CoverLesson, 'job' | 'name'> | null;
}

/** Least uncertainties of a reading, of a test's figure and of a cover's room, mm: an exact one would leave nothing to compare it by. */
const LEAST = { test: 1e-5, cover: 1e-3 } as const;

/** The readings of a leather: its tests, strips worked in each way apart, and its covers that count. */
export const leatherReadings = (leather: StockLeather): readonly LeatherReading[] => [
  // Of thousands most are not tested.
  ...(Object.values(leather.tests).some(({ length }) => length > 0) ? testReadings(leather) : []),
  ...leather.covers.filter(({ counts }) => counts).flatMap((cover) => coverReadings(leather, cover)),
];

function testReadings(leather: StockLeather): LeatherReading[] {
  const usual = usualValues(leather);
  return MAKING_STATES.flatMap((worked) => {
    const { neutral, bendRatio, change } = leatherTestResults(leather.tests, { worked });
    const results = WAYS.flatMap((way) => [
      { of: `neutral.${way}`, result: neutral[way] } as const,
      { of: `bendRatio.${way}`, result: bendRatio[way] } as const,
      { of: `change.${worked}.${way}`, result: change[way] } as const,
    ]);
    return results.flatMap(({ of, result }): LeatherReading[] => {
      if (result === null) return [];
      const slopes = UNKNOWNS.map((unknown) => (unknown === of ? 1 : 0));
      const value = result.value - usual[UNKNOWNS.indexOf(of)]!;
      return [{ of, cover: null, slopes, value, u: Math.max(result.u, LEAST.test) }];
    });
  });
}

function coverReadings(leather: StockLeather, { job, name, evidence }: CoverLesson): LeatherReading[] {
  const usual = usualValues(leather);
  return evidence.map(({ of, read_mm: read, expected_mm: expected, u_mm: u, slopes: by, at }) => {
    const slopes = UNKNOWNS.map((unknown) => by[unknown] ?? 0);
    // Foretold with what is usual in place of what the job had.
    const usually = UNKNOWNS.reduce(
      (sum, unknown, i) => sum + slopes[i]! * (usual[i]! - (at[unknown] ?? usual[i]!)),
      expected,
    );
    return { of, cover: { job, name }, slopes, value: read - usually, u: Math.max(u, LEAST.cover) };
  });
}
