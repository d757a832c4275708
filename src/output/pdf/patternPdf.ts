import { type Drawing, mirroredDrawing, pieceWords } from '../../core/index.ts';
import { drawCheckPage, type TiledPiece } from './checkPage.ts';
import { checkPaper, type Page, type Paper, SHEETS } from './paper.ts';
import type { PdfCanvas } from './pdfCanvas.ts';
import { fitToPageSuspicion, type MeasuredBars, printerScale } from './printerScale.ts';
import { SheetFile, type SheetOptions } from './sheetFile.ts';
import { drawTile, joiningMarks, tileName } from './tilePage.ts';
import { tiling } from './tiling.ts';

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
 * Makes the true-size template as a PDF: a page with check bars and tile map, then the tiles of each piece.
 *
 * The same drawing and options give the same bytes. Pieces that are cut twice are printed once.
 * @returns the file; rejects with RangeError for an unknown paper, bars more than a tenth off, or over 400 pages
 */
export async function patternPdf(drawing: Drawing, options: PdfOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const { paper = 'A4', mirrored = false, bars } = options;
  checkPaper(paper);
  const scale = printerScale(bars);
  const seen = mirrored ? mirroredDrawing(drawing) : drawing;
  let pages = 1;
  const tiled = seen.pieces.map((piece): TiledPiece => {
    const tiles = tiling(piece, paper, scale);
    const firstPage = pages + 1;
    pages += tiles.tiles.length;
    return { piece, tiling: tiles, firstPage };
  });
  if (pages > MOST_PAGES)
    throw new RangeError(
      `Got a pattern of ${pages} pages; allowed: ${MOST_PAGES}. Choose a larger paper or a roll, or take the SVG or DXF file.`,
    );

  const file = await SheetFile.titled(drawing.title, ['plain'], options);
  const add = (page: Page): PdfCanvas => file.addPage(page).in.plain;

  const page = typeof paper === 'string' ? SHEETS[paper] : { width: paper.roll_mm, height: 297 };
  const suspicion = bars === undefined ? null : fitToPageSuspicion(bars, paper);
  drawCheckPage(add(page), { drawing: seen, tiled, pages, page, paper, scale, bars, suspicion, mirrored });
  for (const { piece, tiling, firstPage } of tiled) {
    const marks = joiningMarks(piece, tiling);
    tiling.tiles.forEach((tile, i) => {
      const which =
        tiling.tiles.length === 1
          ? ''
          : `, tile ${tileName(tile)} (column ${tile.column + 1} of ${tiling.columns}, row ${tile.row + 1} of ${tiling.rows})`;
      const footer = `${drawing.title}: ${pieceWords(piece)}${which}. Page ${firstPage + i} of ${pages}. Print at actual size, 100 %.`;
      drawTile(add(tiling.page), piece, tiling, tile, marks, scale, footer);
    });
  }
  return file.save(options);
}
