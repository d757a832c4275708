import { rectangle } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { SHEETS } from '../pdf/paper.ts';
import { SheetFile, type SheetOptions } from '../pdf/sheetFile.ts';
import type { COVER_COLUMNS } from './coversTable.ts';

export interface CoversSheetOptions extends Pick<SheetOptions, 'date'> {
  readonly paper?: 'A4' | 'Letter';
}

const MARGIN = 14;
/** Letter heights, mm. */
const SIZE = { title: 6, text: 3.2, head: 2.8, column: 2 } as const;
const LEADING = 1.4;
/** Height of a row to be written in, and of the heading, mm. */
const ROW = { writing: 9.5, head: 11 } as const;
const RULE = { width: 0.2, dash: [], ink: [90, 90, 90] } as const;

const TITLE = 'Finished covers';

const INTRODUCTION =
  'Write down each cover when it is handed over. Close the book, push it home and read each gap from the board edge to its stop. ' +
  'Minus is an overrun. Type the rows into a table whose first row is the small names: it shows how good the predictions were.';

/** What is written in each column, its name in the table, and its share of the width. */
const COLUMNS: readonly (readonly [string, (typeof COVER_COLUMNS)[number], number])[] = [
  ['Cover', 'id', 4],
  ['Book height', 'book_height', 2.2],
  ['Book width', 'book_width', 2.2],
  ['Thickness', 'book_thickness', 2.2],
  ['Unit', 'unit', 1.2],
  ['Leather', 'leather', 2.4],
  ['Pockets', 'pockets', 2.2],
  ['Cut width', 'cut_width', 2.2],
  ['Cut height', 'cut_height', 2.2],
  ['Gap front', 'gap_front', 2],
  ['Gap back', 'gap_back', 2],
  ['Gap head', 'gap_head', 2],
  ['Gap tail', 'gap_tail', 2],
  ['Note', 'note', 4],
];

/** A page across to write finished covers on by hand, with the columns of the table that `validate` reads. Equal options, equal bytes. */
export async function coversSheetPdf({
  paper = 'A4',
  date,
}: CoversSheetOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const file = await SheetFile.titled(TITLE, ['plain', 'bold'], { date });
  const { width: height, height: width } = SHEETS[paper];
  const { plain, bold } = file.addPage({ width, height }).in;
  const inner = width - 2 * MARGIN;
  let y = height - MARGIN - SIZE.title;
  bold.tagged('H1', () => bold.words(TITLE, [MARGIN, y], SIZE.title));
  y -= 4;
  plain.tagged('P', () => {
    for (const line of brokenLines(INTRODUCTION, inner, (words) => plain.widthOf(words, SIZE.text))) {
      y -= SIZE.text * LEADING;
      plain.words(line, [MARGIN, y], SIZE.text);
    }
  });
  y -= 4;

  const shares = COLUMNS.reduce((sum, [, , share]) => sum + share, 0);
  const rows = Math.floor((y - MARGIN - ROW.head) / ROW.writing);
  const low = y - ROW.head - rows * ROW.writing;
  let x = MARGIN;
  plain.group('Table', () =>
    plain.group('TR', () => {
      for (const [title, name, share] of COLUMNS) {
        const wide = (inner * share) / shares;
        const place = { width: wide - 2 };
        plain.tagged('TH', () => {
          bold.words(title, [x + 1, y - 4.6], SIZE.head, place);
          plain.words(name, [x + 1, y - 8.6], SIZE.column, place);
        });
        plain.lines(rectangle([x, low], [x + wide, y]), RULE);
        x += wide;
      }
    }),
  );
  for (let i = 0; i < rows; i++) {
    const at = y - ROW.head - i * ROW.writing;
    plain.lines([{ kind: 'line', from: [MARGIN, at], to: [MARGIN + inner, at] }], RULE);
  }
  return file.save();
}
