import { isRiseEstimated, riseOf } from '../../core/book/rise.ts';
import type { CoverDesign } from '../../core/fold/coverDesign.ts';
import { coverSupplies } from '../../core/materials/coverSupplies.ts';
import { workSteps } from '../../core/materials/workSteps.ts';
import { sumLines, type Units } from '../../core/pattern/label.ts';
import { patternDrawing } from '../../core/pattern/patternDrawing.ts';
import { designReport } from '../../core/report/designReport.ts';
import { phrase } from '../../core/report/phrase.ts';
import { type BenchSheet, type Block, heading, item, text } from './block.ts';
import { seamSection } from './seamSection.ts';
import { stepDetail } from './stepDetail.ts';
import { supplySection } from './supplySection.ts';

const REMINDER =
  'Cautions and times are reminders from common practice. The safety data sheet of each product and the local rules come first.';

/**
 * What goes to the bench with a job: how it should fit, sizes with their sums, seam, layers, supplies, and the order of
 * work with each caution at its step.
 * @param units unit of all lengths
 */
export function benchSheetContent(design: CoverDesign, units: Units): BenchSheet {
  const { job } = design;
  const say = phrase(units);
  const supplies = coverSupplies(design);
  const drawing = patternDrawing(design, { units });
  const { book, leather } = job;
  const back =
    book.spine.shape === 'rounded'
      ? `spine rounded by ${say.given(riseOf(book))}${isRiseEstimated(book) ? ' (estimated, not measured)' : ''}`
      : 'flat spine';
  const weight = [...new Set([say.weight(leather.outside.min_mm), say.weight(leather.outside.max_mm)])].join(' to ');
  const notes = [...drawing.notes, ...supplies.notes];
  const [outside] = drawing.pieces;
  const heightSum = JSON.stringify(outside?.sums.find(({ dimension }) => dimension === 'height'));
  return {
    title: job.name,
    subtitles: [
      `Book ${say.given(book.width_mm)} wide, ${say.given(book.height_mm)} high, ${say.given(book.thickness_mm)} thick, ` +
        `${back}, boards ${say.given(book.boardThickness_mm)}. Outside leather ${weight}.`,
      designReport(design, { units }).headline,
    ],
    blocks: [
      heading('Cut sizes'),
      ...drawing.pieces.flatMap((piece) => [
        item(piece.name, `cut ${piece.count}`),
        // A height is written out once: where it is the outside's, its sum is known.
        ...piece.sums.flatMap((sum) => {
          const isKnown = piece !== outside && JSON.stringify(sum) === heightSum;
          return sumLines(isKnown ? { ...sum, parts: [] } : sum, units).map(text);
        }),
      ]),
      ...drawing.lengths.flatMap(({ name, count, sum }) => [
        item(name, `cut ${count}`),
        ...sumLines(sum, units).map(text),
      ]),
      ...seamSection(design, supplies, drawing, say),
      ...supplySection(supplies, job.supplies, say),
      heading('Order of work', true),
      text(REMINDER),
      ...workSteps(job, supplies).flatMap(({ id, name, minutes, cautions }, i): Block[] => [
        item(`${i + 1}. ${name}`, time(minutes), true),
        ...stepDetail(id, design, supplies, say).map(text),
        ...cautions.map((words): Block => ({ kind: 'caution', text: words })),
      ]),
      ...(notes.length === 0 ? [] : [heading('Notes'), ...notes.map(text)]),
    ],
  };
}

/** Minutes as a maker would write them: to 5 min, or in hours. */
function time(minutes: number): string {
  if (minutes === 0) return '';
  const rounded = Math.max(5, Math.round(minutes / 5) * 5);
  if (rounded < 60) return `${rounded} min`;
  const rest = rounded % 60;
  return `${Math.floor(rounded / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}
