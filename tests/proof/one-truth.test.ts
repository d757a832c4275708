import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { answerQuestion } from '../../src/app/explore/answerQuestion.ts';
import type { Answers } from '../../src/app/explore/exploreMessage.ts';
import { shownChecks } from '../../src/app/panel/shownChecks.ts';
import { askedAgain, createBench, gaveUp } from '../../src/app/state/bench.ts';
import { startHistory } from '../../src/app/state/jobHistory.ts';
import {
  type Check,
  coverDesign,
  createElasticSolvers,
  elasticOverRange,
  fitReport,
  foldedCover,
  type Job,
  type JobDocument,
  RESULT_ORIGINS,
  type Report,
  type ResultOrigin,
} from '../../src/core/index.ts';
import { withStrip } from '../../src/core/report/withStrip.ts';
import { WORDS } from '../../src/core/words/words.ts';
import { benchSheetContent } from '../../src/output/benchSheet/benchSheetContent.ts';
import { gapRange, REPORT_COLUMNS, reportRow } from '../../src/output/catalogue/reportColumns.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { PLAIN_OFFER } from '../../src/output/customerSheet/offer.ts';
import { MODEL_ORIGIN } from '../../src/output/model/modelParts.ts';
import { customerFragment, readCustomerFragment } from '../../src/output/shareLink/customerLink.ts';
import { readShareFragment, shareFragment } from '../../src/output/shareLink/shareLink.ts';
import { lines, run, scratch } from '../cli/commandLine.ts';
import { defined } from '../defined.ts';
import { jobDocument, soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases } from '../laws.ts';
import { proofSize } from './proofSize.ts';

/** What one door says of a job. What a door does not say is left out. */
interface Told {
  readonly origin: ResultOrigin;
  readonly verdict: string;
  readonly headline?: string;
  readonly chance?: Report['doubt']['chance'];
  readonly gaps?: ReturnType<typeof gapRange>;
  /** Verdict, value and limit of every row that decides. */
  readonly rows?: readonly unknown[];
}

/** Rows that decide the verdict: those of the quick model. */
const deciding = (checks: readonly Check[]) =>
  checks
    .filter(({ origin }) => origin === 'quick model')
    .map(({ id, verdict, state, value, limit }) => ({ id, verdict, state, value, limit }));

const told = (report: Report): Told => ({
  origin: report.origin,
  verdict: report.verdict,
  headline: report.headline,
  chance: { ...report.doubt.chance },
  gaps: gapRange(report),
  rows: deciding(report.checks),
});

const files = scratch('one-truth-');
afterAll(files.remove);

/** Cells of a line of a table, those with commas quoted. */
const cellsOf = (row: string): string[] =>
  Array.from(row.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g), ([, cell = '']) => cell);

const solvers = createElasticSolvers();

/** What every door says of a job, the doors with the springy model only where they are asked for. */
async function doors(document: JobDocument, job: Job, isSolved: boolean): Promise<Record<string, Told>> {
  const found: Record<string, Told> = {};
  const bench = createBench(startHistory({ document, typed: {} }, document));
  const screen = (name: string): void => {
    const { report, settled } = bench.getState();
    const shown = shownChecks(report, settled);
    found[name] = { ...told(report), rows: deciding(shown) };
    for (const { id, origin } of shown.filter(({ id }) => id === 'seats' || id === 'springsOpen'))
      expect(['quick model', report.origin], `${name} ${id}`).toContain(origin);
  };
  screen('screen at once');
  bench.setState(gaveUp('no worker', () => {}));
  screen('screen without workers');
  bench.setState(askedAgain);
  if (isSolved) {
    const { design, report } = bench.getState();
    const solved = withStrip(report, design, elasticOverRange(design, solvers));
    bench.setState({ report: solved, settled: solved, elastic: { status: 'solved' } });
    screen('screen');
    found.fit = told(JSON.parse((await run('fit', ['-'], JSON.stringify(document))).stdout));
  }
  found['fit --quick'] = told(JSON.parse((await run('fit', ['--quick', '-'], JSON.stringify(document))).stdout));

  files.file('job.json', JSON.stringify(document));
  found.catalogue = told(JSON.parse((await run('catalogue', [files.folder])).stdout));
  const [names, cells] = lines((await run('catalogue', [files.folder, '--to', 'csv'])).stdout).map(cellsOf);
  const expected = reportRow(job.name, fitReport(job));
  const cell = (name: (typeof REPORT_COLUMNS)[number]): string => defined(cells?.[defined(names).indexOf(name)]);
  found['catalogue as a table'] = {
    origin: cell('origin') as ResultOrigin,
    verdict: cell('verdict'),
    gaps: { smallest_mm: Number(cell('gap.smallest_mm')), largest_mm: Number(cell('gap.largest_mm')) },
  };
  expect(Number(cell('chance.fits_percent'))).toBe(expected[REPORT_COLUMNS.indexOf('chance.fits_percent')]);

  const sheet = benchSheetContent(coverDesign(job));
  const said = sheet.blocks.flatMap((block) => ('text' in block ? [block.text] : []));
  found['bench sheet'] = {
    origin: defined(RESULT_ORIGINS.find((origin) => said.some((text) => text.startsWith(`By the ${origin}. `)))),
    verdict: fitReport(job).verdict,
    headline: sheet.headline,
  };

  const opened = readShareFragment(defined(shareFragment(document)));
  if (!opened.ok) throw new Error('the link does not open');
  found.link = told(fitReport(opened.job));

  const sent = readCustomerFragment(defined(customerFragment(document, job, PLAIN_OFFER)));
  if (!sent.ok) throw new Error('the customer’s link does not open');
  const theirs = createBench(startHistory({ document: sent.document, typed: {} }, sent.document)).getState();
  const page = customerSheet(theirs.design, theirs.report, sent.offer);
  found['customer’s page'] = { ...told(theirs.report), verdict: page.verdict };
  const rests = page.passages.flatMap(({ sentences }) => sentences).join(' ');
  if (coverDesign(job).fits.nominal.staysOpen !== null)
    expect(rests).toMatch(/springs open when let go is being worked out|do not go in/);

  const range = { from: job.book.width_mm - 1, to: job.book.width_mm + 1, count: 2 };
  const { curve } = answerQuestion({
    kind: 'curve',
    document,
    overlay: null,
    fieldId: 'book.width_mm',
    resultId: 'head',
    range,
  }) as Answers['curve'];
  const here = defined(curve.points.find(({ at }) => at === curve.field.present));
  if ('issue' in here) throw new Error('the curve does not pass through the job');
  found.curve = { origin: 'quick model', verdict: here.verdict };
  expect(here.readings[0]?.values.thin).toBe(fitReport(job).fit.thin.head_mm);
  return found;
}

/** Doors that must say so: which origin each may have. */
const ORIGIN_OF: Readonly<Record<string, readonly ResultOrigin[]>> = {
  'screen at once': ['being worked out'],
  'screen without workers': ['not known'],
  // Where the boards do not go in, or the search for a balance does not end.
  screen: ['springy model', 'not known', 'quick model'],
  fit: ['springy model', 'not known', 'quick model'],
  'customer’s page': ['being worked out'],
};

/** A job as the tool sizes it, or cut narrower or wider than that. */
const anyDocument = fc
  .record({ document: jobDocument, wider: fc.option(fc.double({ min: -15, max: 25, noNaN: true }), { nil: null }) })
  .map(({ document, wider }) => ({
    ...document,
    name: 'a cover',
    pattern: wider === null ? {} : { outsideWidth_mm: coverDesign(soundJob(document)).pieces.outside.width + wider },
  }));

test('every door says the same of a job, and where its figures come from', async () => {
  const cases = proofSize(200, lawCases(60));
  let number = 0;
  const seen: Record<string, number> = {};
  await checkLaw(
    fc.asyncProperty(anyDocument, async (drawn) => {
      const job = soundJob(drawn);
      const document = drawn as unknown as JobDocument;
      const found = await doors(document, job, number++ % 5 === 0);
      const truth = told(fitReport(job));
      expect(truth.origin).toBe('quick model');
      for (const [door, says] of Object.entries(found)) {
        const { origin, ...figures } = says;
        expect(ORIGIN_OF[door] ?? ['quick model'], door).toContain(origin);
        seen[`${door}: ${origin}`] = (seen[`${door}: ${origin}`] ?? 0) + 1;
        expect({ ...truth, ...figures, origin: truth.origin }, door).toEqual(truth);
      }
      // The screen and the command line with the springy model agree in that too.
      if (found.fit) expect(found.fit.origin).toBe(found.screen?.origin);
    }),
    { cases },
  );
  console.info('one truth:', JSON.stringify(seen));
});

test('a model file says where its shape comes from, as the cover that it shows does', () => {
  const design = coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 3,
      name: '',
      book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
      leather: { outside: { min_mm: 1.6, max_mm: 2 } },
    }),
  );
  expect(foldedCover(design, { kind: 'opening', angle: 0 }).origin).toBe(MODEL_ORIGIN);
  expect(foldedCover(design, { kind: 'opening', angle: 0 }, 'nominal', () => null).origin).toBe('not known');
});

test('the models are words of the vocabulary', () => {
  for (const origin of RESULT_ORIGINS.filter((origin) => origin.endsWith('model'))) expect(WORDS).toContain(origin);
});
