import type { MakingState } from '../job/makingSchema.ts';
import { remembered } from '../math/remembered.ts';
import { bendTest } from './bendTest.ts';
import { changeTest } from './changeTest.ts';
import { creaseTest } from './creaseTest.ts';
import { droopTest } from './droopTest.ts';
import { foldTest } from './foldTest.ts';
import { type PlacedFigure, pooled, pooledRelative } from './pooled.ts';
import type { TestFigure } from './testFigure.ts';
import type { TestResult } from './testResult.ts';
import type { DroopReading, FoldReading, LeatherTests, Way } from './testSchema.ts';

/** A figure for strips along and across the backbone; null where nothing was read. */
export type ResultByWay = Readonly<Record<Way, TestResult | null>>;

/** What depends on which side is on the outside of a bend. */
export interface BentResults {
  readonly bendRatio: ResultByWay;
  /** K. */
  readonly neutral: ResultByWay;
  /** At low strain. */
  readonly modulus_MPa: ResultByWay;
  /** After a day. */
  readonly creaseSet: ResultByWay;
  /** Foretold for a week. */
  readonly creaseSetWeek: ResultByWay;
}

/** All that the tests of a leather say of it, worked in one way. The bends are those with the grain out, as a cover is folded. */
export interface LeatherTestResults extends BentResults {
  /** The same with the grain in; never mixed with the others. */
  readonly grainIn: BentResults;
  /** Change of size in making, as a share. */
  readonly change: ResultByWay;
  readonly density_kg_m3: TestResult | null;
}

/**
 * Results of all tests of a leather, from the readings of strips worked in one way; strips along and across the backbone, grain out
 * and grain in each apart.
 */
export function leatherTestResults(
  tests: LeatherTests,
  { worked }: { readonly worked: MakingState },
): LeatherTestResults {
  const isWorked = (reading: { readonly worked: MakingState }): boolean => reading.worked === worked;
  return {
    ...bentResults(tests, (reading) => isWorked(reading) && reading.grain === 'out'),
    grainIn: bentResults(tests, (reading) => isWorked(reading) && reading.grain === 'in'),
    change: byWay(tests.changes, isWorked, changeTest),
    density_kg_m3: pooledRelative(placed(tests.droops, isWorked, ofDroop('density_kg_m3'))),
  };
}

type Bent = Pick<FoldReading, 'worked' | 'grain'>;

function bentResults(tests: LeatherTests, isMeant: (reading: Bent) => boolean): BentResults {
  const ratio = byWay(tests.folds, isMeant, foldTest);
  return {
    bendRatio: { along: over0(ratio.along), across: over0(ratio.across) },
    neutral: byWay(tests.bends, isMeant, bendTest),
    modulus_MPa: byWay(tests.droops, isMeant, ofDroop('modulus_MPa'), pooledRelative),
    creaseSet: byWay(tests.creases, isMeant, (reading) => creaseTest(reading).day),
    creaseSetWeek: byWay(tests.creases, isMeant, (reading) => creaseTest(reading).week),
  };
}

/** No fold is thinner than two layers, whatever its reading. */
const over0 = (result: TestResult | null): TestResult | null =>
  result && { ...result, value: Math.max(0, result.value) };

/** Takes a quarter of a millisecond, and is asked for each figure, also of leathers that did not change. */
const droopOf = remembered((reading: DroopReading) => droopTest(reading));

const ofDroop =
  (figure: 'modulus_MPa' | 'density_kg_m3') =>
  (reading: DroopReading): TestFigure | null => {
    const answer = droopOf(reading);
    return 'reason' in answer ? null : answer[figure];
  };

function byWay<R extends { readonly way: Way }>(
  readings: readonly R[],
  isMeant: (reading: R) => boolean,
  figureOf: (reading: R) => TestFigure | null,
  pool = pooled,
): ResultByWay {
  const ofWay = (way: Way): TestResult | null =>
    pool(placed(readings, (reading) => isMeant(reading) && reading.way === way, figureOf));
  return { along: ofWay('along'), across: ofWay('across') };
}

/** The figures of the readings that are meant and say something, each with its place in the whole list. */
const placed = <R>(
  readings: readonly R[],
  isMeant: (reading: R) => boolean,
  figureOf: (reading: R) => TestFigure | null,
): PlacedFigure[] =>
  readings.flatMap((reading, place) => {
    const figure = isMeant(reading) ? figureOf(reading) : null;
    return figure === null ? [] : [{ ...figure, place }];
  });
