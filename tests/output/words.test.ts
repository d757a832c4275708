import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { cardDesign } from '../../src/core/mockup/cardDesign.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { benchSheetPdf } from '../../src/output/benchSheet/benchSheetPdf.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { customerSheetPdf } from '../../src/output/customerSheet/customerSheetPdf.ts';
import { measuringSheetPdf } from '../../src/output/measuringSheet/measuringSheetPdf.ts';
import { patternPdf } from '../../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { run } from '../cli/commandLine.ts';
import { soundJob } from '../jobArbitrary.ts';
import { hyphenMinus, wordsAgainst } from '../wordsAgainst.ts';
import { readPdf } from './pdfReading.ts';

const [tide, choir] = [EXAMPLE_JOBS[0].document, EXAMPLE_JOBS[1].document];

/** Jobs that between them print every part of a sheet: laced and stitched, lined, with fittings, turned, too small, in inches. */
const JOBS: readonly (readonly [name: string, document: object])[] = [
  ...EXAMPLE_JOBS.map(({ id, document }) => [id, document] as const),
  ['lined and stitched, with fittings', { ...tide, ...fitted(), seam: { method: 'stitching' } }],
  ['with turned ends, cased', { ...tide, pockets: { construction: 'turned' }, making: { state: 'cased' } }],
  [
    'too small, in inches',
    { ...choir, pattern: { outsideWidth_mm: 360, outsideHeight_mm: 200 }, work: { units: 'in' } },
  ],
];

function fitted() {
  return {
    leather: { outside: { min_mm: 1.6, max_mm: 2, foldThickness_mm: 1.2 }, lining: { min_mm: 0.7, max_mm: 0.8 } },
    construction: { lining: 'full', mouth: 'curved', strap: {}, penLoop: {}, ribbon: {} },
  };
}

const pageTexts = async (bytes: Uint8Array): Promise<string[]> =>
  (await readPdf(bytes)).map(({ words }) => words.map(({ text }) => text).join(' '));

const amiss = (texts: readonly string[]): string[] =>
  texts.flatMap((text) => [...wordsAgainst(text), ...hyphenMinus(text)]);

describe('what is printed goes by the words of the vocabulary', () => {
  test.each(JOBS)('of a job %s', async (_name, document) => {
    const design = coverDesign(soundJob(document));
    const { job } = design;
    const report = designReport(design);
    const printed = [
      await pageTexts(await benchSheetPdf(design)),
      await pageTexts(await customerSheetPdf(customerSheet(design, report))),
      await pageTexts(await patternPdf(patternDrawing(design))),
      await pageTexts(await patternPdf(patternDrawing(cardDesign(job, job.mockup.card)))),
      [patternSvg(patternDrawing(design)).replace(/<[^>]*>/g, ' ')],
      report.checks.flatMap(({ title, message, remedy, state }) => [title, message, remedy, state]),
      [report.headline],
    ].flat();
    expect(printed.join(' ').length).toBeGreaterThan(2000);
    expect(amiss(printed)).toEqual([]);
  });

  test.each(['mm', 'in'] as const)('on the measuring sheet in %s', async (units) => {
    const printed = await pageTexts(await measuringSheetPdf({ units }));
    expect(printed.join(' ')).toContain('Paper strip round the closed book');
    expect(amiss(printed)).toEqual([]);
  });

  test.each(['fit', 'catalogue', 'validate'])('in the help of %s', async (command) => {
    const { stdout } = await run(command, ['--help']);
    expect(stdout.length).toBeGreaterThan(200);
    expect(wordsAgainst(stdout)).toEqual([]);
  });
});
