import { brokenLines } from '../brokenLines.ts';
import { SHEETS } from '../pdf/paper.ts';
import { PT } from '../pdf/pdfCanvas.ts';
import { SheetFile, type SheetOptions } from '../pdf/sheetFile.ts';
import { CAUTION, type CustomerSheet, type Said } from './customerSheet.ts';

export interface CustomerSheetOptions extends SheetOptions {
  readonly paper?: 'A4' | 'Letter';
  readonly withPrice?: boolean;
  /** Pictures as JPEG files, all of one shape; none where the scene cannot be drawn. */
  readonly pictures?: readonly { readonly jpeg: Uint8Array; readonly caption: string }[];
}

const MARGIN = 18;
const GUTTER = 8;
/** Letter heights, mm. */
const SIZE = { title: 8, number: 7, text: 3.8, small: 3 } as const;
const LEADING = 1.4;
const RULE = { width: 0.25, dash: [], ink: [60, 60, 60] } as const;

/**
 * Makes the customer's sheet: one page with the pictures, the fit in plain words with its three numbers, and what the cover
 * is made of. The same sheet and options give the same bytes; the words can be selected.
 */
export async function customerSheetPdf(
  sheet: CustomerSheet,
  { paper = 'A4', withPrice = true, pictures = [], onLacking }: CustomerSheetOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await SheetFile.titled(sheet.title, ['plain', 'bold']);
  const { width, height } = SHEETS[paper];
  const {
    page,
    in: { plain, bold },
  } = file.addPage({ width, height });
  const inner = width - 2 * MARGIN;
  const rule = (y: number): void => plain.lines([{ kind: 'line', from: [MARGIN, y], to: [width - MARGIN, y] }], RULE);
  const paragraph = (words: string, top: number, left: number, room: number, size: number = SIZE.text): number =>
    brokenLines(words, room, (part) => plain.widthOf(part, size)).reduce((y, line) => {
      plain.words(line, [left, y - size], size);
      return y - size * LEADING;
    }, top);

  let y = height - MARGIN - SIZE.title;
  bold.words(sheet.title, [MARGIN, y], SIZE.title, { width: inner });
  y -= 4;
  plain.words(sheet.lead, [MARGIN, y - SIZE.text], SIZE.text);
  y -= SIZE.text + 5;
  rule(y);
  y -= 6;

  const each = (inner - GUTTER * (pictures.length - 1)) / Math.max(1, pictures.length);
  let lowest = y;
  for (const [i, { jpeg, caption }] of pictures.entries()) {
    const image = await file.document.embedJpg(jpeg);
    const tall = (each * image.height) / image.width;
    const x = MARGIN + i * (each + GUTTER);
    page.drawImage(image, { x: x * PT, y: (y - tall) * PT, width: each * PT, height: tall * PT });
    plain.words(caption, [x, y - tall - 4.5], SIZE.small);
    lowest = Math.min(lowest, y - tall - 12);
  }
  y = paragraph(sheet.fit, lowest, MARGIN, inner) - 6;

  const third = inner / sheet.numbers.length;
  const ends = sheet.numbers.map(({ name, value, means }, i) => {
    const left = MARGIN + i * third;
    bold.words(value, [left, y - SIZE.number], SIZE.number, { width: third - GUTTER });
    bold.words(name, [left, y - SIZE.number - 6], SIZE.small, { width: third - GUTTER / 2 });
    return paragraph(means, y - SIZE.number - 7.5, left, third - GUTTER / 2, SIZE.small);
  });
  y = Math.min(...ends) - 5;
  rule(y);
  y -= 5;

  const price: Said[] =
    withPrice && sheet.price !== null
      ? [{ name: 'Price', value: [sheet.price.amount, sheet.price.without].filter(Boolean).join(', ') }]
      : [];
  for (const { name, value } of [...sheet.facts, ...price]) {
    bold.words(name, [MARGIN, y - SIZE.text], SIZE.text);
    y = paragraph(value, y, MARGIN + 28, inner - 28) - 1.5;
  }
  plain.words(CAUTION, [MARGIN, MARGIN], SIZE.small, { width: inner });
  return file.save({ onLacking });
}
