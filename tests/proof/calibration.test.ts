import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import type { Fit } from '../../src/core/fold/coverFit.ts';
import type { Job } from '../../src/core/job/jobSchema.ts';
import { normalQuantile } from '../../src/core/math/normal.ts';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import { goesOn, isLoose, trialFits } from '../../src/core/report/coverTrials.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import type { Report } from '../../src/core/report/reportSchema.ts';
import { defined } from '../defined.ts';
import { doubtedDocument, withWidthAt } from '../doubtJob.ts';
import { soundJob } from '../jobArbitrary.ts';
import { LAW_SEED, mostOf } from '../laws.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

/** A book with its cover: what was told of the cover, and how it came out. */
interface Made {
  readonly isToolSized: boolean;
  readonly report: Report;
  readonly nominal: Fit;
  readonly loosest: Job['loosest'];
  readonly truth: { readonly closes: boolean; readonly fits: boolean };
}

const BINS = 10;

/** In thousandths, evenly drawn. */
const thousandths = (min: number, max: number) => fc.integer({ min, max }).map((draw) => draw / 1000);

/** Chance of closing for which the maker gives a width: near 95 in 100, or anything from hopeless to ample. */
const givenChance = fc.oneof(
  { weight: 2, arbitrary: thousandths(942, 958) },
  { weight: 3, arbitrary: thousandths(1, 999) },
);

function madeBooks(count: number): Made[] {
  const drawn = fc.sample(fc.tuple(doubtedDocument, fc.option(givenChance, { nil: null, freq: 2 })), {
    numRuns: count,
    seed: LAW_SEED,
    unbiased: true,
  });
  const seeds = randomDraws(LAW_SEED);
  return drawn.map(([document, chance]) => {
    const job = soundJob(chance === null ? document : withWidthAt(document, normalQuantile(chance)));
    const design = coverDesign(job);
    const fit = defined(trialFits(design, { draws: 1, seed: Math.floor(2 ** 32 * seeds()) })[0]);
    return {
      isToolSized: chance === null && job.ease.foreEdge_mm === null,
      report: designReport(design),
      nominal: design.fits.nominal,
      loosest: job.loosest,
      truth: { closes: fit.closes, fits: goesOn(fit) && !isLoose(fit, job) },
    };
  });
}

interface Bin {
  readonly told: number;
  readonly count: number;
  readonly cameTrue: number;
  /** Binomial standard error of the share that came true, if what was told holds. */
  readonly error: number;
}

function binOf(made: readonly Made[], of: 'closes' | 'fits'): Bin {
  const told = made.map(({ report }) => report.doubt.chance[of]);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    told: mean(told),
    count: made.length,
    cameTrue: mean(made.map(({ truth }) => (truth[of] ? 1 : 0))),
    error: Math.sqrt(mean(told.map((chance) => chance * (1 - chance))) / made.length),
  };
}

const percent = (share: number): string => (100 * share).toFixed(1);

/**
 * Covers whose books are drawn from the doubts that their own reports assume. So this shows that the chances follow from those doubts,
 * and that first order, a straight reading of a strip and normal sums are good enough for that. It is self-consistency, not
 * proof: what leather and rulers do is not in it.
 */
test('covers close and fit as often as their reports say', () => {
  const all = madeBooks(proofSize(5000, 300));
  for (const of of ['closes', 'fits'] as const) {
    const bins = Array.from({ length: BINS }, (_, i) =>
      all.filter(({ report }) => Math.min(BINS - 1, Math.floor(BINS * report.doubt.chance[of])) === i),
    ).flatMap((made) => (made.length === 0 ? [] : [binOf(made, of)]));
    console.info(
      [`${of}: told, covers, came true, standard error, in 100`]
        .concat(
          bins.map((bin) => `${percent(bin.told)}\t${bin.count}\t${percent(bin.cameTrue)}\t${percent(bin.error)}`),
        )
        .join('\n'),
    );
    for (const { told, cameTrue, error } of bins)
      expect(Math.abs(cameTrue - told), `${of}, told ${percent(told)}`).toBeLessThanOrEqual(3 * error + 0.01);
  }

  const near = binOf(
    all.filter(({ report }) => report.doubt.chance.closes >= 0.94 && report.doubt.chance.closes <= 0.96),
    'closes',
  );
  console.info(`told 94 to 96 in 100: ${near.count}, of which ${percent(near.cameTrue)} in 100 close`);
  // A sample is too small for the two points on either side.
  const within = isWholeProof ? 0.02 : 3 * near.error + 0.01;
  expect(Math.abs(near.cameTrue - 0.95)).toBeLessThanOrEqual(within);

  const isLooser = ({ nominal, loosest }: Made): boolean =>
    nominal.closedSlack / 2 > loosest.foreEdge_mm || nominal.head > loosest.head_mm || nominal.tail > loosest.tail_mm;
  const loose = all.filter(isLooser);
  expect(loose.filter(({ report }) => report.verdict === 'fits')).toEqual([]);

  const sized = all.filter(({ isToolSized }) => isToolSized);
  const reaching = sized.filter(({ report }) => report.doubt.reaches);
  const toldToFit = reaching.filter(({ report }) => rowOf(report, 'together') === 'fits');
  const cameToFit = reaching.filter(({ truth }) => truth.fits);
  console.info(
    `sized by the tool: ${sized.length}; some size reaches the share: ${reaching.length}, of which ${toldToFit.length} are ` +
      `told to fit and ${cameToFit.length} do; looser at nominal than the loosest gap: ${loose.length}`,
  );
  const mostMisses = isWholeProof ? 0.1 * reaching.length : mostOf(0.1, reaching.length);
  for (const part of [toldToFit, cameToFit]) expect(reaching.length - part.length).toBeLessThanOrEqual(mostMisses);
  // The two checks above must have had something to check.
  if (isWholeProof) for (const part of [loose, reaching]) expect(part.length).toBeGreaterThan(20);
});

const rowOf = ({ checks }: Report, id: string) => defined(checks.find((check) => check.id === id)).verdict;
