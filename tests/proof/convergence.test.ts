import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { elasticOverRange } from '../../src/core/fitReport.ts';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { createElasticSolvers, type ElasticFit } from '../../src/core/fold/elastic/elasticFit.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { RANGE_POINTS } from '../../src/core/leather/leatherModel.ts';
import { evenRangeDocument, fullRangeDocument } from '../fullRangeJob.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { LAW_SEED, mostOf } from '../laws.ts';
import { proofSize } from './proofSize.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/**
 * Books and leathers as makers have them: one in three a paperback with covers of 0.2 to 0.5 mm, and every other outside cut
 * narrower or wider than the tool would.
 */
const bookLikeDocument = fc
  .record({
    document: jobDocument,
    thinCover: fc.option(between(0.2, 0.5), { nil: null, freq: 2 }),
    wider: fc.option(between(-5, 15), { nil: null, freq: 1 }),
  })
  .map(({ document, thinCover, wider }) => {
    const job =
      thinCover === null
        ? document
        : { ...document, book: { ...document.book, kind: 'paperback' as const, boardThickness_mm: thinCover } };
    if (wider === null) return job;
    const width = coverDesign(soundJob(job)).pieces.outside.width + wider;
    return { ...job, pattern: { outsideWidth_mm: width, rounding_mm: 0 } };
  });

/** Draws `jobs` designs that can go on: somewhere in the weight range the boards go in. */
function designsThatGoOn(documents: fc.Arbitrary<unknown>, jobs: number): CoverDesign[] {
  const designs: CoverDesign[] = [];
  for (const document of fc.sample(documents, { seed: LAW_SEED, numRuns: 12 * jobs })) {
    const parsed = parseJob(JSON.parse(JSON.stringify(document)));
    if (!parsed.ok) continue;
    const design = coverDesign(parsed.job);
    if (RANGE_POINTS.some((point) => design.fits[point].seats)) designs.push(design);
    if (designs.length === jobs) break;
  }
  return designs;
}

const solvesOf = ({ closed, rest, spare, seats }: ElasticFit) => ({ closed, ...rest, spare, ...seats });

interface Survey {
  readonly jobs: number;
  /** Jobs of which some solve did not converge. */
  readonly failed: number;
  /** By kind of solve, how many ended in each status. */
  readonly statuses: Readonly<Record<string, Record<string, number>>>;
  /** By kind of solve and what it said beyond its status, how many jobs failed so. */
  readonly reasons: Readonly<Record<string, number>>;
  /** Of all jobs and of the failed ones, how many are of a kind that nobody would make; the first that fits counts. */
  readonly causes: Readonly<Record<string, { jobs: number; failed: number }>>;
}

/** What sets a job apart from a cover that somebody would make. */
function oddityOf({ needs, fits }: CoverDesign): string {
  const { book, leathers } = needs.nominal;
  if (leathers.outside.foldThickness > book.thickness) return 'leather thicker than the book';
  if (fits.nominal.closedSlack > 10 * book.thickness) return 'spare wrap over ten thicknesses of the book';
  return 'neither';
}

function survey(designs: readonly CoverDesign[]): Survey {
  const solvers = createElasticSolvers();
  const statuses: Record<string, Record<string, number>> = {};
  const reasons: Record<string, number> = {};
  const causes: Record<string, { jobs: number; failed: number }> = {};
  let failed = 0;
  for (const design of designs) {
    const elastic = elasticOverRange(design, solvers);
    const said = new Set<string>();
    for (const point of RANGE_POINTS) {
      for (const [kind, result] of Object.entries(solvesOf(elastic[point]))) {
        if (result === null) continue;
        statuses[kind] ??= {};
        statuses[kind][result.status] = (statuses[kind][result.status] ?? 0) + 1;
        const message = 'message' in result ? result.message : '';
        if (result.status !== 'converged') said.add(`${kind}: ${message.replace(/\d+(\.\d+)?/g, 'N')}`);
      }
    }
    const oddity = oddityOf(design);
    causes[oddity] ??= { jobs: 0, failed: 0 };
    const cause = causes[oddity];
    cause.jobs++;
    if (said.size === 0) continue;
    for (const reason of said) reasons[reason] = (reasons[reason] ?? 0) + 1;
    cause.failed++;
    failed++;
  }
  return { jobs: designs.length, failed, statuses, reasons, causes };
}

/**
 * Shares that have to converge. A job has converged where its closed cover, spare wrap, seats and three rests have, in the leather
 * as the job has it; the ends of the ranges of rests do not count, since a row can do without.
 *
 * With one field in three at an end of its range many draws are no book (see the table by cause), and the share that is reached
 * differs: 0.95 with the usual seed, some 0.75 with SEED=77. What is left: metres of creased leather round a book of a few mm, and
 * pocket leather of some 0.2 mm, which folds away at the fore-edge under a firm pull.
 */
const KINDS = [
  { name: 'book-like jobs', documents: bookLikeDocument, whole: 200, sample: 6, jobs: 0.99, closed: 0.999 },
  { name: 'the schema, drawn evenly', documents: evenRangeDocument, whole: 100, sample: 3, jobs: 0.95, closed: 0.97 },
  { name: 'the schema and its ends', documents: fullRangeDocument, whole: 60, sample: 2, jobs: 0.85, closed: 0.95 },
] as const;

describe.each(KINDS)('the elastic strip over $name', ({ name, documents, whole, sample, ...least }) => {
  test('converges for the share of jobs and of closed covers that it has reached', () => {
    const { jobs, failed, statuses, reasons, causes } = survey(designsThatGoOn(documents, proofSize(whole, sample)));
    console.info(`${name}: all solves converged in ${jobs - failed} of ${jobs} jobs that can go on`);
    console.table(statuses);
    console.table(reasons);
    console.table(causes);
    expect(jobs).toBe(proofSize(whole, sample));
    expect(failed).toBeLessThanOrEqual(mostOf(1 - least.jobs, jobs));
    const { converged = 0, ...rest } = statuses.closed ?? {};
    const open = Object.values(rest).reduce((sum, count) => sum + count, 0);
    expect(open).toBeLessThanOrEqual(mostOf(1 - least.closed, converged + open));
  });
});
