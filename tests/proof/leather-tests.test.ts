import { expect, test } from 'vitest';
import { leatherTestResults } from '../../src/core/leatherTest/leatherTestResults.ts';
import { pooled } from '../../src/core/leatherTest/pooled.ts';
import type { TestResult } from '../../src/core/leatherTest/testResult.ts';
import { testsSchema } from '../../src/core/leatherTest/testSchema.ts';
import { normalDraw, randomDraws } from '../../src/core/math/randomDraws.ts';
import { hangingStrip } from '../core/leatherTest/hangingStrip.ts';
import { defined } from '../defined.ts';
import { LAW_SEED, mostOf } from '../laws.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

const draws = randomDraws(LAW_SEED);
const between = (low: number, high: number): number => low + (high - low) * draws();

/** A figure as it is read: off by a normal error of half what is stated, which is two standard uncertainties. */
const read = (truth: number, error: number): number => truth + (error / 2) * normalDraw(draws);

interface Run {
  readonly truth: number;
  /** How far strips of one hide differ at most, as a standard deviation: assumptions, no source. */
  readonly differ: number;
  /** A reading of a strip with a figure of its own, drawn anew each time. */
  readonly reading: (own: number) => object;
}

type Results = ReturnType<typeof leatherTestResults>;

interface Proof {
  readonly name: string;
  readonly list: 'folds' | 'bends' | 'droops' | 'changes' | 'creases';
  readonly run: () => Run;
  readonly result: (results: Results) => TestResult | null;
}

function fold(): Run {
  const truth = between(0.1, 0.8);
  return {
    truth,
    differ: 0.04,
    reading: (own) => {
      const t = between(1, 3.2);
      return { thickness_mm: read(t, 0.1), fold_mm: read(2 * t * (1 + own), 0.1), error_mm: 0.1 };
    },
  };
}

function bend(): Run {
  const truth = between(0.45, 0.75);
  return {
    truth,
    differ: 0.04,
    reading: (own) => {
      const [t, r, angle_deg] = [between(1, 3.2), between(2, 10), draws() < 0.5 ? 90 : 180];
      const length = ((angle_deg * Math.PI) / 180) * (r + own * t);
      return {
        thickness_mm: read(t, 0.1),
        radius_mm: read(r, 0.1),
        angle_deg,
        length_mm: read(length, 0.2),
        error_mm: 0.2,
        callipers_mm: 0.1,
      };
    },
  };
}

/** The overhang is chosen so that the strip bends well but does not hang: k = w L^3 / EI from 1 to 20. */
function droop(): Run {
  const truth = 20 * 10 ** draws();
  const density = between(700, 1100);
  return {
    truth,
    differ: 0.08 * truth,
    reading: (own) => {
      const [t, width, length] = [between(1.2, 3.2), between(20, 40), 420];
      const weight = density * 1e-6 * t * width * length;
      const line = (weight * 9.80665e-3) / length;
      const rigidity = (own * width * t ** 3) / 12;
      const overhang = Math.min(395, Math.cbrt((between(1, 20) * rigidity) / line));
      const { droop: share } = hangingStrip((line * overhang ** 3) / rigidity);
      return {
        thickness_mm: read(t, 0.1),
        width_mm: read(width, 1),
        length_mm: read(length, 1),
        overhang_mm: read(overhang, 1),
        droop_mm: read(overhang * share, 1),
        weight_g: read(weight, 0.5),
        error_mm: 1,
        callipers_mm: 0.1,
        scales_g: 0.5,
      };
    },
  };
}

function change(): Run {
  const truth = between(-0.03, 0.01);
  return {
    truth,
    differ: 0.002,
    reading: (own) => {
      const before = between(90, 210);
      return { before_mm: read(before, 0.4), after_mm: read(before * (1 + own), 0.4), error_mm: 0.4 };
    },
  };
}

/** Set falls by a tenth or so from five minutes to a day; what is hidden is the set after a day, or after a week. */
function crease(hidden: 'day' | 'week'): Run {
  const [atDay, perDecade] = [between(0.4, 0.85), between(0, 0.03)];
  const lostAt = (minutes: number): number => perDecade * Math.log10(minutes / 1440);
  const truth = atDay - (hidden === 'day' ? 0 : lostAt(10_080));
  return {
    truth,
    differ: 0.01,
    reading: (own) => {
      const angleAt = (minutes: number): number => 180 * (1 - atDay + lostAt(minutes) - (own - truth));
      return { fiveMinutes_deg: read(angleAt(5), 4), day_deg: read(angleAt(1440), 4), error_deg: 4 };
    },
  };
}

const PROOFS: readonly Proof[] = [
  { name: 'hard fold: bend ratio', list: 'folds', run: fold, result: ({ bendRatio }) => bendRatio.across },
  { name: 'round a block: K', list: 'bends', run: bend, result: ({ neutral }) => neutral.across },
  { name: 'droop: E', list: 'droops', run: droop, result: ({ modulus_MPa }) => modulus_MPa.across },
  { name: 'marks: change of size', list: 'changes', run: change, result: ({ change: found }) => found.across },
  { name: 'crease: set after a day', list: 'creases', run: () => crease('day'), result: (all) => all.creaseSet.across },
  {
    name: 'crease: set after a week',
    list: 'creases',
    run: () => crease('week'),
    result: (all) => all.creaseSetWeek.across,
  },
];

const percent = (share: number): string => (100 * share).toFixed(1);

/**
 * Readings drawn from a hidden truth with the errors that they state: of one strip, whose own figure is hidden, and of three strips of
 * a hide, whose mean is. The droop is that of the elastica under its own weight, found in another way than the tool's. So this shows
 * that first order is good enough and that pooling keeps its word; not that leather is elastic and even.
 */
test.each(PROOFS)('$name is within its stated 95 in 100', ({ name, list, run, result }) => {
  const runs = proofSize(1000, 100);
  for (const strips of [1, 3]) {
    const counted = { within: 0, again: 0, give: 0 };
    for (let i = 0; i < runs; i++) {
      const { truth, differ, reading } = run();
      const scatter = strips === 1 ? 0 : differ * draws();
      const readings = Array.from({ length: strips }, () => reading(truth + scatter * normalDraw(draws)));
      const tests = testsSchema.parse({ [list]: readings });
      const { value, u, again } = defined(result(leatherTestResults(tests, { worked: 'dry' })));
      if (Math.abs(value - truth) <= 1.96 * u) counted.within++;
      counted.again += again.length;
      counted.give += (1.96 * u) / runs;
    }
    console.info(
      `${name}, strips ${strips}: within ${percent(counted.within / runs)} in 100 of ${runs} runs; ` +
        `on average give or take ${counted.give.toPrecision(2)}; asked for again ${counted.again}`,
    );
    // 93 to 97 in 100 of one strip; of three that differ a point less or more, see below.
    const further = strips === 1 ? 0 : 0.01;
    expect(runs - counted.within).toBeLessThanOrEqual(isWholeProof ? (0.07 + further) * runs : mostOf(0.06, runs));
    if (isWholeProof) expect(counted.within).toBeLessThanOrEqual((0.97 + further) * runs);
  }
});

/**
 * Hides whose strips differ from one another by up to four times the error of reading. Where they do not differ at all the scatter that
 * chance makes is taken for theirs, so a few more than 95 are within; where they differ much, few strips say little of how much, and
 * fewer are. By how much is held.
 */
test('the mean of a hide whose strips differ is within its stated error in about as many', () => {
  const runs = proofSize(1000, 100);
  for (const strips of [2, 3, 5, 8])
    for (const scatter of [0, 0.5, 1, 2, 4]) {
      let within = 0;
      for (let i = 0; i < runs; i++) {
        const strip = (_: unknown, place: number) => ({
          value: normalDraw(draws) + scatter * normalDraw(draws),
          u: 1,
          place,
        });
        const { value, u } = defined(pooled(Array.from({ length: strips }, strip)));
        if (Math.abs(value) <= 1.96 * u) within++;
      }
      console.info(`strips ${strips}, differing by ${scatter} u: within ${percent(within / runs)} in 100`);
      expect(runs - within).toBeLessThanOrEqual(mostOf(strips === 2 ? 0.17 : 0.09, runs));
      expect(within).toBeLessThanOrEqual(mostOf(0.98, runs));
    }
});
