import { type Drawing, isTracing, mirroredDrawing, pieceWords } from '../../core/index.ts';
import { drawCheckPage } from './checkPage.ts';
import { type PagePart, pagePlan } from './pagePlan.ts';
import { checkPaper, type Paper } from './paper.ts';
import { fitToPageSuspicion, type MeasuredBars, printerScale } from './printerScale.ts';
import { SheetFile, type SheetOptions } from './sheetFile.ts';
import { drawFrame, drawPart, joiningMarks, tileName } from './tilePage.ts';
import { frameOf } from './tiling.ts';
import { footLine } from './titleBlock.ts';

export interface PdfOptions extends SheetOptions {
  readonly paper?: Paper;
  /** Seen from the flesh side, for tracing there. */
  readonly mirrored?: boolean;
  /** The check bars as measured on an earlier print, for which the drawing is corrected. */
  readonly bars?: MeasuredBars;
}

/** A template of more pages is taken for a mistake. */
const MOST_PAGES = 400;

/**
 * Makes the true-size template as a PDF: check bars and tile map, the tiles of large pieces, smaller pieces where there is room.
 *
 * The same drawing and options give the same bytes. Pieces that are cut twice are printed once.
 * @returns the file; rejects with RangeError for an unknown paper, bars more than a tenth off, or over 400 pages
 */
export async function patternPdf(drawing: Drawing, options: PdfOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const { paper = 'A4', mirrored = false, bars } = options;
  checkPaper(paper);
  const scale = printerScale(bars);
  const seen = mirrored ? mirroredDrawing(drawing) : drawing;
  const plan = pagePlan(seen, paper, scale);
  const count = plan.pages.length;
  if (count > MOST_PAGES)
    throw new RangeError(
      `Got a pattern of ${count} pages; allowed: ${MOST_PAGES}. Choose a larger paper or a roll, or take the SVG or DXF file.`,
    );

  const { block } = options;
  const file = await SheetFile.titled(drawing.title, ['plain'], options);
  const suspicion = bars === undefined ? null : fitToPageSuspicion(bars, paper);
  const sheet = block?.sheet ?? (drawing.pieces.every(isTracing) ? 'Tracings' : 'Template');
  const marks = new Map(plan.tiled.map(({ piece, tiling }) => [piece, joiningMarks(piece, tiling)]));
  plan.pages.forEach(({ page, parts }, i) => {
    const canvas = file.addPage(page).in.plain;
    if (i === 0) drawCheckPage(canvas, { block, drawing: seen, plan, paper, scale, bars, suspicion, mirrored });
    for (const part of parts) {
      const alt = `${partWords(part)}, in true size, ${seen.faceUp}${part.isTurned ? ', its head at the right' : ''}`;
      canvas.tagged('Figure', () => drawPart(canvas, page, part, marks.get(part.piece) ?? [], scale), {
        alt,
        box: frameOf(page),
      });
    }
    const shown = [...(i === 0 ? ['check bars'] : []), ...parts.map(partWords)].join('; ');
    const foot = footLine(`${sheet}, print at actual size, 100 %`, block, { page: i + 1, pages: count });
    canvas.artifact(() => drawFrame(canvas, page, [`${drawing.title}: ${shown}`, foot]));
  });
  return file.save(options);
}

/** `Outside, cut 1, tile B1 (column 2 of 3, row 1 of 1)`. */
function partWords({ piece, tile: on }: PagePart): string {
  if (on === null) return pieceWords(piece);
  const { of, tile } = on;
  return `${pieceWords(piece)}, tile ${tileName(tile)} (column ${tile.column + 1} of ${of.columns}, row ${tile.row + 1} of ${of.rows})`;
}
