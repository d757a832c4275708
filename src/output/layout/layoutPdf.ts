import { line, printer, type Segment, textWidth, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { LAYER_STYLES, type LayerStyle } from '../layerStyle.ts';
import { SHEETS, type SheetName } from '../pdf/paper.ts';
import type { PdfCanvas } from '../pdf/pdfCanvas.ts';
import { SheetFile, type SheetOptions } from '../pdf/sheetFile.ts';
import { drawTitleBlock, footLine, TITLE_BLOCK } from '../pdf/titleBlock.ts';
import { arrowLines, boxOf, crossLines, type LayoutSheet, nameText, sheetBox } from './layoutSheet.ts';
import { scaleBar } from './scaleBar.ts';

export interface LayoutPdfOptions extends SheetOptions {
  readonly paper?: SheetName;
}

const MARGIN = 12;
const SIZE = { text: 2.9, title: 5, foot: 2.4 } as const;
const LEADING = 1.45;
/** Names of pieces on the paper, mm: at most, and least that is read. */
const NAME = { most: 3.2, least: 1.8 } as const;
/** Room of the scale bar with its words, mm. */
const BAR = 9;

/** Scales of reduction (ISO 5455), and beyond. */
const SCALES = [1, 2, 5, 10, 20, 50, 100, 200];

const HIDE: LayerStyle = { width: 0.5, dash: [], ink: [110, 70, 30] };
const DEFECT: LayerStyle = { width: 0.3, dash: [1.5, 0.8], ink: [150, 20, 60] };

/**
 * Makes the leather with the pieces laid on it as one page to scale, upright or across, whichever shows it larger: with a title block
 * where one is given, a scale bar, and the names of small pieces below.
 */
export async function layoutPdf(
  sheet: LayoutSheet,
  { paper = 'A4', ...options }: LayoutPdfOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await SheetFile.titled(sheet.title, ['plain'], options);
  const { width, height } = SHEETS[paper];
  const measure = (words: string): number => file.widthOf('plain', words, SIZE.text);
  const { x, y } = sheetBox(sheet);
  const [wide, high] = [x[1] - x[0], y[1] - y[0]];
  // How high the title block is shows only on a page: the most is taken.
  const head = options.block === undefined ? SIZE.title * LEADING : TITLE_BLOCK.mostHeight;
  const ways = [
    { width, height },
    { width: height, height: width },
  ].map((page) => {
    const inner = page.width - 2 * MARGIN;
    const rows = sheet.words.flatMap((words) => brokenLines(words, inner, measure));
    // One row more for the names of what is small.
    const room = page.height - 2 * MARGIN - head - BAR - (rows.length + 3) * SIZE.text * LEADING;
    const scale = SCALES.find((each) => wide / each <= inner && high / each <= room) ?? SCALES.at(-1)!;
    return { page, inner, rows, room, scale };
  });
  const { page, inner, rows, scale } = ways.reduce((best, way) => (way.scale < best.scale ? way : best));
  const { plain } = file.addPage(page).in;
  let top = page.height - MARGIN;
  if (options.block === undefined) {
    top -= SIZE.title;
    plain.tagged('H1', () => plain.words(sheet.title, [MARGIN, top], SIZE.title, { width: inner }));
    top -= 2;
  } else {
    top -= drawTitleBlock(plain, [MARGIN, top], inner, options.block, { page: 1, pages: 1 }) + 2;
  }
  plain.tagged('P', () => {
    for (const words of [...rows, `Scale 1:${scale}.`]) {
      top -= SIZE.text * LEADING;
      plain.words(words, [MARGIN, top], SIZE.text);
    }
  });
  top -= 3;
  const origin: Vec2 = [MARGIN + (inner - wide / scale) / 2, top - high / scale];
  const place = ([px, py]: Vec2): Vec2 => [origin[0] + (px - x[0]) / scale, origin[1] + (py - y[0]) / scale];
  const small = drawnSheet(plain, sheet, place, scale, {
    x: MARGIN,
    y: origin[1],
    width: inner,
    height: high / scale,
  });
  const low = drawBar(plain, sheet, [MARGIN, origin[1] - 4], inner, scale);
  if (small.length > 0) {
    const key = brokenLines(small.map((name, i) => `${i + 1} ${name}`).join(', '), inner, measure);
    plain.tagged('P', () => {
      for (const [i, words] of key.entries())
        plain.words(words, [MARGIN, low - (i + 1) * SIZE.text * LEADING], SIZE.text);
    });
  }
  plain.artifact(() =>
    plain.words(footLine(sheet.title, options.block, { page: 1, pages: 1 }), [MARGIN, MARGIN - 6], SIZE.foot, {
      width: inner,
    }),
  );
  return file.save(options);
}

/** Draws leather, defects, pieces and crosses as one figure. @returns names of the pieces that only have a number on them */
function drawnSheet(
  canvas: PdfCanvas,
  sheet: LayoutSheet,
  place: (point: Vec2) => Vec2,
  scale: number,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): readonly string[] {
  const round = (polygon: readonly Vec2[]): Segment[] =>
    polygon.map((from, i) => line(place(from), place(polygon[(i + 1) % polygon.length]!)));
  const lines = (pairs: readonly (readonly [Vec2, Vec2])[]): Segment[] =>
    pairs.map(([from, to]) => line(place(from), place(to)));
  const small: string[] = [];
  canvas.tagged(
    'Figure',
    () => {
      canvas.optional('hide', () => canvas.lines(round(sheet.outline), HIDE));
      if (sheet.defects.length > 0)
        canvas.optional('defects', () => canvas.lines(sheet.defects.flatMap(round), DEFECT));
      canvas.optional('crosses', () => canvas.lines(lines(sheet.crosses.flatMap(crossLines)), LAYER_STYLES.mark));
      for (const piece of sheet.pieces) {
        canvas.lines(round(piece.polygon), LAYER_STYLES.cut);
        canvas.lines(lines(arrowLines(piece.arrow)), LAYER_STYLES.direction);
        const { at, height, rotation, text } = nameText(piece, NAME.most * scale);
        const isRead = height / scale >= NAME.least;
        if (!isRead && !small.includes(text)) small.push(text);
        const words = isRead ? text : String(small.indexOf(text) + 1);
        const size = isRead ? height / scale : NAME.least;
        canvas.words(words, place(at), size, {
          rotation,
          align: 'middle',
          width: isRead ? textWidth(text, size) : size * 4,
        });
      }
    },
    { alt: `${sheet.title}: ${sheet.pieces.map(({ name }) => name.toLowerCase()).join(', ')}`, box },
  );
  return small;
}

/** Draws the scale bar with its length. @returns what it ends at, page mm */
function drawBar(canvas: PdfCanvas, sheet: LayoutSheet, [left, top]: Vec2, inner: number, scale: number): number {
  const { x } = boxOf(sheet.outline);
  const length = scaleBar(Math.min(x[1] - x[0], inner * scale), sheet.units);
  const end = left + length / scale;
  canvas.lines(
    [
      line([left, top], [end, top]),
      line([left, top - 1.5], [left, top + 1.5]),
      line([end, top - 1.5], [end, top + 1.5]),
    ],
    LAYER_STYLES.cut,
  );
  canvas.words(printer(sheet.units).size(length), [end + 2, top - SIZE.text * 0.35], SIZE.text);
  return top - 2;
}
