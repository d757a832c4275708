import { DOUBTS } from '../doubt/doubtOf.ts';
import type { MakingState } from '../job/makingSchema.ts';
import { MAKING_STATES } from '../job/makingSchema.ts';
import { type LeatherTestResults, leatherTestResults } from '../leatherTest/leatherTestResults.ts';
import type { TestResult } from '../leatherTest/testResult.ts';
import type { Way } from '../leatherTest/testSchema.ts';
import type { Known, KnownByWay, LeatherKnowledge } from './leatherKnowledge.ts';
import type { LeatherReading } from './leatherReadings.ts';
import { type LeatherUnknown, PRIOR, temperNamed, UNKNOWNS, usualValues } from './leatherUnknowns.ts';
import { type Shop, shopKnowledge } from './shop.ts';
import type { StockLeather } from './stockSchema.ts';

/** Doubts of what covers do not teach and no test was made of. Assumptions. */
const UNTESTED = {
  /** Of the stiffness, as a share: of a temper's word, and of a strip that ran the other way. */
  modulus: 0.5,
  modulusOtherWay: 0.3,
  creaseSet: 0.15,
  density_kg_m3: 100,
} as const;

/** What is usual of every leather: the defaults of a job. */
const USUAL = { creaseSet: 0.8, density_kg_m3: 950 } as const;

/** Share of the usual doubt that must be gone for a figure to count as taught. */
const TAUGHT = 0.02;

/**
 * All that is known of a leather, worked in one way, from its tests, its covers, and the maker's others of its kind.
 * @param shop of all leathers, this one among them; one that is not, a new one, is taken besides them
 */
export function knowLeather(
  leather: StockLeather,
  shop: Shop,
  { worked }: { readonly worked: MakingState },
): LeatherKnowledge {
  const whole = shop.leathers.includes(leather) ? shop : shopKnowledge([...shop.leathers, leather]);
  const { more, readings } = whole.known(leather);
  const usual = usualValues(leather);
  const known = (unknown: LeatherUnknown): Known => {
    const i = UNKNOWNS.indexOf(unknown);
    const u = Math.sqrt(more.covariance[i]![i]!);
    const before = Math.sqrt(PRIOR.kind[i]![i]! + PRIOR.own[i]![i]!);
    return {
      value: usual[i]! + more.mean[i]!,
      u,
      from: u > (1 - TAUGHT) * before ? 'usual' : fromOf(unknown, readings),
    };
  };
  const byWay = (figure: 'neutral' | 'bendRatio' | `change.${MakingState}`): KnownByWay => ({
    along: known(`${figure}.along`),
    across: known(`${figure}.across`),
  });
  const tests = [worked, ...MAKING_STATES.filter((state) => state !== worked)].map((state) =>
    leatherTestResults(leather.tests, { worked: state }),
  );
  const tested = (of: (results: LeatherTestResults) => TestResult | null): TestResult | null =>
    tests.map(of).find((result) => result !== null) ?? null;
  const crease = tested(({ creaseSet }) => creaseSet.across ?? creaseSet.along);
  return {
    neutral: byWay('neutral'),
    bendRatio: byWay('bendRatio'),
    change: byWay(`change.${worked}`),
    modulus_MPa: modulusOf(leather, (way) => tested(({ modulus_MPa: modulus }) => modulus[way])),
    creaseSet: knownBy(crease, USUAL.creaseSet, UNTESTED.creaseSet),
    density_kg_m3: knownBy(
      tested(({ density_kg_m3: density }) => density),
      USUAL.density_kg_m3,
      UNTESTED.density_kg_m3,
    ),
    thickness: thicknessOf(leather),
    joint: { mean: usual.map((value, i) => value + more.mean[i]!), covariance: more.covariance },
  };
}

/** Where a figure that is better known than usual has that from. */
function fromOf(unknown: LeatherUnknown, readings: readonly LeatherReading[]): Known['from'] {
  const i = UNKNOWNS.indexOf(unknown);
  if (readings.some(({ of }) => of === unknown)) return 'tests';
  if (readings.some(({ cover, slopes }) => cover !== null && slopes[i] !== 0)) return 'covers';
  return readings.some(({ cover }) => cover === null) ? 'tests' : 'shop';
}

const knownBy = (result: TestResult | null, usual: number, u: number): Known =>
  result === null ? { value: usual, u, from: 'usual' } : { value: result.value, u: result.u, from: 'tests' };

/** Stiffness of strips one way; where only the other way was tested, that with more doubt. */
function modulusOf(leather: StockLeather, tested: (way: Way) => TestResult | null): KnownByWay {
  const { modulus_MPa: usual } = temperNamed(leather.temper);
  const known = (way: Way, other: Way): Known => {
    const result = tested(way);
    const beside = result === null ? tested(other) : null;
    if (beside === null) return knownBy(result, usual, UNTESTED.modulus * usual);
    return { value: beside.value, u: Math.hypot(beside.u, UNTESTED.modulusOtherWay * beside.value), from: 'tests' };
  };
  return { along: known('along', 'across'), across: known('across', 'along') };
}

/** Mean of the readings by callipers and its uncertainty over the piece; null without any. */
function thicknessOf({ callipered_mm: read }: StockLeather): Known | null {
  if (read.length === 0) return null;
  const mean = read.reduce((sum, each) => sum + each, 0) / read.length;
  const squares = read.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  const scatter = read.length > 1 ? Math.sqrt(squares / (read.length - 1)) : 0;
  return { value: mean, u: Math.hypot(scatter, DOUBTS.leather_mm), from: 'tests' };
}
