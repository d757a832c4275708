import {
  type CoverDesign,
  chanceWords,
  designReport,
  easePaid,
  type LetterFaces,
  type Printer,
  printer,
  type Report,
  sumLines,
  whatWouldReach,
} from '../../core/index.ts';
import { type BenchSheet, type Block, heading, item, text } from './block.ts';
import { type Caution, orderOfWork } from './orderOfWork.ts';
import { seamSection } from './seamSection.ts';
import { supplySection } from './supplySection.ts';
import { toolingSection } from './toolingSection.ts';
import { workSource } from './workSource.ts';

export const REMINDER =
  'Cautions and times are reminders from common practice. The safety data sheet of each product and the local rules come first.';

/**
 * Content of the bench sheet: the expected fit, sizes with their sums, seam, layers, supplies, and the order of work
 * with each caution at its step.
 * @param letters of the titles, for where they come too near to something; without them titles are not checked
 */
export function benchSheetContent(design: CoverDesign, letters: LetterFaces = new Map()): BenchSheet {
  const { job } = design;
  const say = printer(job.work.units);
  const source = workSource(design);
  const { supplies, drawing } = source;
  const notes = [...drawing.notes, ...supplies.notes];
  const [outside] = drawing.pieces;
  const report = designReport(design);
  const heightSum = JSON.stringify(outside?.sums.find(({ dimension }) => dimension === 'height'));
  return {
    headline: report.headline,
    drawing,
    blocks: [
      heading('Cut sizes'),
      ...drawing.pieces.flatMap((piece) => [
        item(piece.name, `cut ${piece.count}`),
        // A height equal to the outside's is printed without its parts, which stand there already.
        ...piece.sums.flatMap((sum) => {
          const isKnown = piece !== outside && JSON.stringify(sum) === heightSum;
          return sumLines(isKnown ? { ...sum, parts: [] } : sum, say).map(text);
        }),
      ]),
      ...drawing.lengths.flatMap(({ name, count, sum }) => [
        item(name, `cut ${count}`),
        ...sumLines(sum, say).map(text),
      ]),
      ...howSure(report, say),
      ...seamSection(design, supplies, drawing, say),
      ...toolingSection(design, supplies.tooling, letters, say),
      ...supplySection(supplies, job, say),
      heading('Order of work', true),
      text(REMINDER),
      ...orderOfWork(source, say).flatMap(({ name, time, figures, words, troubles, cautions, done }, i): Block[] => [
        item(
          `${i + 1}. ${name}`,
          [time, done ?? ''].filter((part) => part !== '').join(', '),
          done === null ? 'open' : 'ticked',
        ),
        ...(figures.length === 0 ? [] : [text(`${figures.map((each) => `${each.name}: ${each.text}`).join('. ')}.`)]),
        ...[...words, ...troubles].map(text),
        ...cautions.map(cautionBlock),
      ]),
      ...(notes.length === 0 ? [] : [heading('Notes'), ...notes.map(text)]),
    ],
  };
}

/** The chance wished and reached, and what the ease that is worked out pays for. */
function howSure(report: Report, say: Printer): Block[] {
  const { doubt, origin } = report;
  const { share, chance } = doubt;
  return [
    heading('How sure'),
    text(
      `By the ${origin}. Wished: fits in ${chanceWords(share)}. Reached: ${chanceWords(chance.fits)}, if the doubts assumed are right. ${whatWouldReach(report)}`.trim(),
    ),
    ...easePaid(doubt).map(({ name, whole, main }) =>
      text(
        `${name} ${say.small(whole, 1)}: ${main.map(({ words, costs_mm }) => `${words} ${say.small(costs_mm)}`).join(', ')}.`,
      ),
    ),
  ];
}

/** A caution in full where it is first due; afterwards its number and subject. */
const cautionBlock = ({ number, subject, words, isFirst }: Caution): Block => ({
  kind: 'caution',
  number,
  text: isFirst ? `Caution ${number}. ${words}` : `See caution ${number}: ${subject}.`,
});
