import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { type CoverDesign, rectangle, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { SHEETS } from '../pdf/paper.ts';
import type { PdfCanvas } from '../pdf/pdfCanvas.ts';
import { SheetFile, type SheetOptions, type SheetPage } from '../pdf/sheetFile.ts';
import { benchSheetContent } from './benchSheetContent.ts';
import { type Columns, lineStep, type Measure, type SetBlock, setInColumns } from './sheetFlow.ts';

export interface BenchSheetOptions extends SheetOptions {
  readonly paper?: 'A4' | 'Letter';
}

const MARGIN = 14;
const GUTTER = 9;
/** Letter heights that are tried until the sheet takes two pages, mm. */
const BODIES = [3.2, 3, 2.8, 2.6, 2.4, 2.2, 2] as const;
const MOST_PAGES = 2;
const TITLE = 6;
const SUBTITLE = 3;
const FOOTER = 2.4;
/** Share of the letters' height that lies above the base line. */
const ASCENT = 0.75;

const RULE = { width: 0.25, dash: [], ink: [60, 60, 60] } as const;
const WARNING = { width: 0.35, dash: [], ink: [60, 60, 60] } as const;
const BOX = { width: 0.2, dash: [], ink: [60, 60, 60] } as const;

/**
 * Makes the bench sheet of a job as a PDF: sizes with sums, seam and supplies on its front, order of work with cautions on
 * its back.
 *
 * The same design and options give the same bytes. Only a job with very many pieces takes more than two pages.
 * @param design the result of `coverDesign`
 */
export async function benchSheetPdf(
  design: CoverDesign,
  { paper = 'A4', onLacking }: BenchSheetOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const content = benchSheetContent(design, await lettersOf(design.job.tooling.designs));
  const file = await SheetFile.titled(`${content.title}: bench sheet`, ['plain', 'bold']);
  const { width, height } = SHEETS[paper];
  const pages: SheetPage<'plain' | 'bold'>['in'][] = [];
  const pageAt = (index: number) => {
    while (pages.length <= index) pages.push(file.addPage({ width, height }).in);
    return pages[index]!;
  };
  const first = pageAt(0);
  const measure: Measure = (words, size, isBold) => file.widthOf(isBold ? 'bold' : 'plain', words, size);
  const subtitle = content.subtitles.flatMap((words) =>
    brokenLines(words, width - 2 * MARGIN, (line) => measure(line, SUBTITLE, false)),
  );
  const headEnd = MARGIN + TITLE + 2 + subtitle.length * lineStep(SUBTITLE) + 2;
  const columns: Columns = {
    left: MARGIN,
    width: (width - 2 * MARGIN - GUTTER) / 2,
    between: GUTTER,
    count: 2,
    bottom: height - MARGIN - FOOTER - 2,
    firstTop: headEnd + 4,
    top: MARGIN,
  };
  let set: readonly SetBlock[] = [];
  for (const body of BODIES) {
    set = setInColumns(content.blocks, columns, body, measure);
    if (set.every(({ page }) => page < MOST_PAGES)) break;
  }

  first.bold.words(content.title, [MARGIN, height - MARGIN - TITLE * ASCENT], TITLE, {
    width: width - 2 * MARGIN - 40,
  });
  const name = 'Bench sheet';
  first.plain.words(name, [width - MARGIN - measure(name, 4, false), height - MARGIN - TITLE * ASCENT], 4);
  subtitle.forEach((line, i) => {
    const y = height - MARGIN - TITLE - 2 - i * lineStep(SUBTITLE) - SUBTITLE * ASCENT;
    first.plain.words(line, [MARGIN, y], SUBTITLE);
  });
  first.plain.lines([rule(MARGIN, width - MARGIN, height - headEnd)], RULE);
  for (const block of set) draw(block, pageAt(block.page), height);
  pages.forEach(({ plain: canvas }, i) => {
    canvas.words(`${content.title}. Page ${i + 1} of ${pages.length}.`, [MARGIN, MARGIN - FOOTER], FOOTER, {
      width: width - 2 * MARGIN,
    });
  });
  return file.save({ onLacking });
}

const rule = (from: number, to: number, y: number) => ({ kind: 'line', from: [from, y], to: [to, y] }) as const;

function draw(
  { block, lines, left, top, width, size }: SetBlock,
  canvas: { plain: PdfCanvas; bold: PdfCanvas },
  height: number,
) {
  const isStrong = block.kind === 'heading' || block.kind === 'item';
  const baseOf = (i: number): number => height - top - i * lineStep(size) - size * ASCENT;
  lines.forEach((line, i) => {
    (isStrong ? canvas.bold : canvas.plain).words(line, [left, baseOf(i)], size);
  });
  const bottom = height - top - lines.length * lineStep(size) + size * (1.4 - 1);
  if (block.kind === 'heading') canvas.plain.lines([rule(left, left + width, bottom - size * 0.15)], RULE);
  if (block.kind === 'caution') cautionSign(canvas, String(block.number), [left - size, baseOf(0)], size);
  if (block.kind === 'item') {
    const end = left + width;
    const box = block.box === 'none' ? 0 : size;
    const asideWidth = canvas.plain.widthOf(block.aside, size);
    if (block.aside !== '') canvas.plain.words(block.aside, [end - asideWidth - box * 1.4, baseOf(0)], size);
    if (box > 0) {
      const [x, y] = [end - box, baseOf(0) - size * 0.1];
      canvas.plain.lines(rectangle([x, y], [end, y + box]), BOX);
      if (block.box === 'ticked') {
        const at = (across: number, up: number): Vec2 => [x + across * box, y + up * box];
        const turn = at(0.42, 0.22);
        const strokes = [
          { kind: 'line', from: at(0.2, 0.5), to: turn },
          { kind: 'line', from: turn, to: at(0.82, 0.8) },
        ] as const;
        canvas.plain.lines(strokes, WARNING);
      }
    }
  }
}

/** A triangle round the number of a caution, standing on the base line at its middle. */
function cautionSign(
  { plain, bold }: { plain: PdfCanvas; bold: PdfCanvas },
  number: string,
  [x, y]: Vec2,
  size: number,
): void {
  const [half, low, top] = [0.72 * size, y - 0.15 * size, y + 1.1 * size];
  const corners: readonly Vec2[] = [
    [x - half, low],
    [x + half, low],
    [x, top],
  ];
  const sides = corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % 3]! }) as const);
  plain.lines(sides, WARNING);
  bold.words(number, [x, y], 0.62 * size, { align: 'middle' });
}
