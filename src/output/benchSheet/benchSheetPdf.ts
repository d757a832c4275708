import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { type CoverDesign, rectangle, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { SHEETS } from '../pdf/paper.ts';
import type { PdfCanvas } from '../pdf/pdfCanvas.ts';
import { drawPieces } from '../pdf/piecesFigure.ts';
import { SheetFile, type SheetOptions, type SheetPage } from '../pdf/sheetFile.ts';
import { drawTitleBlock, footLine, titleBlockHeight } from '../pdf/titleBlock.ts';
import { titleBlock } from '../titleBlock.ts';
import { benchSheetContent } from './benchSheetContent.ts';
import { type Columns, lineStep, type Measure, type SetBlock, sections, setInColumns } from './sheetFlow.ts';

export interface BenchSheetOptions extends SheetOptions {
  readonly paper?: 'A4' | 'Letter';
}

const BENCH_SHEET = 'Bench sheet';

const MARGIN = 14;
const GUTTER = 9;
/** Letter heights that are tried until a section takes one page, mm. */
const BODIES = [3.8, 3.6, 3.4, 3.2, 3, 2.8, 2.6, 2.4, 2.2, 2] as const;
const HEADLINE = 3.4;
const FOOTER = 2.4;
/** Least and largest height of the drawing of the pieces, mm; within them it takes what the words leave of the first page. */
const DRAWING = { least: 55, most: 110 } as const;
/** Between lines to write on, and the least height of a page's end that is ruled for it, mm. */
const WRITING = { step: 8, least: 30 } as const;
/** Share of the letters' height that lies above the base line. */
const ASCENT = 0.75;

const RULE = { width: 0.25, dash: [], ink: [60, 60, 60] } as const;
const WARNING = { width: 0.35, dash: [], ink: [60, 60, 60] } as const;
const THIN = { width: 0.1, dash: [], ink: [90, 90, 90] } as const;
const BOX = { width: 0.2, dash: [], ink: [60, 60, 60] } as const;

/**
 * Makes the bench sheet of a job as a PDF: on its front title block, drawing of the pieces, sizes with sums, seam and supplies; on
 * its back the order of work with cautions, and lines to write on.
 *
 * The same design and options give the same bytes. Only a job with very many pieces takes more than two pages.
 * @param design the result of `coverDesign`
 */
export async function benchSheetPdf(
  design: CoverDesign,
  {
    paper = 'A4',
    block = titleBlock({ sheet: BENCH_SHEET, job: design.job, design, document: design.job }),
    ...options
  }: BenchSheetOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const content = benchSheetContent(design, await lettersOf(design.job.tooling.designs));
  const title = `${block.job}: bench sheet`;
  const file = await SheetFile.titled(title, ['plain', 'bold'], { block, ...options });
  const { width, height } = SHEETS[paper];
  const pages: SheetPage<'plain' | 'bold'>['in'][] = [];
  const pageAt = (index: number) => {
    while (pages.length <= index) pages.push(file.addPage({ width, height }).in);
    return pages[index]!;
  };
  const first = pageAt(0);
  const inner = width - 2 * MARGIN;
  const measure: Measure = (words, size, isBold) => file.widthOf(isBold ? 'bold' : 'plain', words, size);
  const headline = brokenLines(content.headline, inner, (line) => measure(line, HEADLINE, true));
  const blockHeight = titleBlockHeight(first.plain, inner, block);
  const drawingTop = MARGIN + blockHeight + 2 + headline.length * lineStep(HEADLINE) + 3;
  const columns: Columns = {
    left: MARGIN,
    width: (inner - GUTTER) / 2,
    between: GUTTER,
    count: 2,
    bottom: height - MARGIN - FOOTER - 2,
    firstTop: drawingTop + DRAWING.least + 4,
    top: MARGIN,
  };
  let set: readonly SetBlock[] = [];
  for (const section of sections(content.blocks)) {
    const from = set.length === 0 ? 0 : set.at(-1)!.page + 1;
    const own = from === 0 ? columns : { ...columns, firstTop: columns.top };
    let placed: readonly SetBlock[] = [];
    for (const body of BODIES) {
      placed = setInColumns(section, own, body, measure);
      if (placed.every(({ page }) => page === 0)) break;
    }
    set = [...set, ...placed.map((each) => ({ ...each, page: from + each.page }))];
  }
  // What the words leave of the first page goes to the drawing.
  const spare = Math.min(DRAWING.most - DRAWING.least, columns.bottom - endOf(set, 0));
  set = set.map((each) => (each.page === 0 ? { ...each, top: each.top + spare } : each));
  const last = set.at(-1)!.page;
  const of = { page: 1, pages: last + 1 };

  drawTitleBlock(first.plain, [MARGIN, height - MARGIN], inner, block, of);
  first.plain.tagged('P', () => {
    headline.forEach((line, i) => {
      const y = height - MARGIN - blockHeight - 2 - i * lineStep(HEADLINE) - HEADLINE * ASCENT;
      first.bold.words(line, [MARGIN, y], HEADLINE);
    });
  });
  const drawingHeight = DRAWING.least + spare;
  const box = { x: MARGIN, y: height - drawingTop - drawingHeight, width: inner, height: drawingHeight };
  drawPieces(first.plain, box, content.drawing);
  for (const each of set) draw(each, pageAt(each.page), height);
  ruleForWriting(pages[last]!.plain, { top: height - endOf(set, last) - 6, low: MARGIN + FOOTER + 4, width: inner });
  pages.forEach(({ plain: canvas }, i) => {
    const line = footLine(title, block, { ...of, page: i + 1 });
    canvas.artifact(() => canvas.words(line, [MARGIN, MARGIN - FOOTER], FOOTER, { width: inner }));
  });
  return file.save(options);
}

/** Lower end of what is set on a page, mm from above. */
const endOf = (set: readonly SetBlock[], page: number): number =>
  Math.max(
    MARGIN,
    ...set.filter((each) => each.page === page).map(({ top, lines, size }) => top + lines.length * lineStep(size)),
  );

/** Rules the rest of the page for what the maker writes down at work. */
function ruleForWriting(canvas: PdfCanvas, { top, low, width }: { top: number; low: number; width: number }): void {
  if (top - low < WRITING.least) return;
  canvas.words('Written while making', [MARGIN, top - 3], 3);
  const count = Math.floor((top - 3 - low) / WRITING.step);
  const lines = Array.from({ length: count }, (_, i) => rule(MARGIN, MARGIN + width, top - 3 - (i + 1) * WRITING.step));
  canvas.lines(lines, THIN);
}

const rule = (from: number, to: number, y: number) => ({ kind: 'line', from: [from, y], to: [to, y] }) as const;

const ROLES = { heading: 'H2', item: 'H3', text: 'P', caution: 'P' } as const;

function draw(
  { block, lines, left, top, width, size }: SetBlock,
  canvas: { plain: PdfCanvas; bold: PdfCanvas },
  height: number,
) {
  const isStrong = block.kind === 'heading' || block.kind === 'item';
  const baseOf = (i: number): number => height - top - i * lineStep(size) - size * ASCENT;
  const aside = block.kind === 'item' ? block.aside : '';
  canvas.plain.tagged(ROLES[block.kind], () => {
    lines.forEach((line, i) => {
      (isStrong ? canvas.bold : canvas.plain).words(line, [left, baseOf(i)], size);
    });
    if (block.kind === 'item' && aside !== '') {
      const end = left + width - canvas.plain.widthOf(aside, size) - (block.box === 'none' ? 0 : size * 1.4);
      canvas.plain.words(aside, [end, baseOf(0)], size);
    }
  });
  const bottom = height - top - lines.length * lineStep(size) + size * (1.4 - 1);
  if (block.kind === 'heading') canvas.plain.lines([rule(left, left + width, bottom - size * 0.15)], RULE);
  if (block.kind === 'caution') cautionSign(canvas, String(block.number), [left - size, baseOf(0)], size);
  if (block.kind === 'item') {
    const end = left + width;
    const box = block.box === 'none' ? 0 : size;
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
  // The sentence beside it begins with its number.
  bold.artifact(() => bold.words(number, [x, y], 0.62 * size, { align: 'middle' }));
}
