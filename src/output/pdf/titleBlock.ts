import { line, rectangle, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { dayWords } from '../dayWords.ts';
import type { TitleBlock } from '../titleBlock.ts';
import type { PdfCanvas } from './pdfCanvas.ts';
import { darkParts, type SquareCode, squareCode } from './squareCode.ts';

/** Least width of a title block; its height is within this range at any width from there on, mm. */
export const TITLE_BLOCK = { leastWidth: 150, leastHeight: 28, mostHeight: 60 } as const;

const SIZE = { job: 4.4, text: 2.7 } as const;
const LEADING = 1.45;
const PAD = 2;
/** Width of the names of the facts. */
const NAMES = 15;
const FRAME = { width: 0.25, dash: [], ink: [0, 0, 0] } as const;
const INK = [0, 0, 0] as const;

/** Which page of how many. */
export interface PageOf {
  readonly page: number;
  readonly pages: number;
}

/**
 * Height that a title block takes at a width, mm; from `TITLE_BLOCK.leastHeight` to `mostHeight`.
 * @param width at least `TITLE_BLOCK.leastWidth`
 */
export function titleBlockHeight(canvas: PdfCanvas, width: number, block: TitleBlock): number {
  return laidOut(canvas, width, block).height;
}

/**
 * Draws a title block: what the job is, in which version, and the square code that opens it. A job that is too large for a
 * square code says so, and how it goes instead.
 * @param at its upper left corner, page mm
 * @param width at least `TITLE_BLOCK.leastWidth`
 * @param of where the number of pages is known when the block is drawn; the foot of each page has it too
 * @param role of the job's name: on a sheet with a heading of its own it is a second
 * @returns its height, mm
 */
export function drawTitleBlock(
  canvas: PdfCanvas,
  [left, top]: Vec2,
  width: number,
  block: TitleBlock,
  of?: PageOf,
  role: 'H1' | 'H2' = 'H1',
): number {
  const { height, facts, square, room } = laidOut(canvas, width, block);
  canvas.lines(rectangle([left, top - height], [left + width, top]), FRAME);
  let y = top - PAD - SIZE.job;
  canvas.tagged(role, () => canvas.words(block.job, [left + PAD, y], SIZE.job, { width: room * 0.68 }));
  const sheet = of === undefined ? block.sheet : `${block.sheet}, page ${of.page} of ${of.pages}`;
  const wide = Math.min(room * 0.3, canvas.widthOf(sheet, SIZE.text));
  canvas.words(sheet, [left + PAD + room - wide, y], SIZE.text, { width: wide });
  y -= SIZE.job * 0.4;
  canvas.lines([line([left, y], [left + room + 2 * PAD, y])], FRAME);
  y -= 0.8;
  canvas.group('Table', () => {
    for (const { name, lines } of facts)
      canvas.group('TR', () => {
        const base = y - SIZE.text * LEADING;
        canvas.tagged('TH', () => canvas.words(name, [left + PAD, base], SIZE.text, { width: NAMES - 1 }), {
          scope: 'Row',
        });
        canvas.tagged('TD', () => {
          for (const words of lines) {
            y -= SIZE.text * LEADING;
            canvas.words(words, [left + PAD + NAMES, y], SIZE.text, { width: room - NAMES });
          }
        });
      });
  });
  if (square === null) return height;
  const side = square.module * square.modules.length;
  const corner: Vec2 = [left + width - side - 1, top - (height - side) / 2];
  canvas.lines(
    [{ kind: 'line', from: [left + room + 2 * PAD, top], to: [left + room + 2 * PAD, top - height] }],
    FRAME,
  );
  const box = { x: corner[0], y: corner[1] - side, width: side, height: side };
  canvas.tagged('Figure', () => canvas.areas(darkParts(square, corner), INK), {
    alt: `Square code of the address ${block.link}`,
    box,
  });
  return height;
}

/**
 * The line at the foot of a page: what it is, in which version of the job, of which day, and its number.
 * @param what job and sheet, such as `Tide ledger: bench sheet`
 * @param block of a sheet of a job; without it neither version nor day are known
 */
export function footLine(what: string, block: Pick<TitleBlock, 'version' | 'date'> | undefined, of: PageOf): string {
  const said =
    block === undefined ? [] : [`version ${block.version}`, ...(block.date === '' ? [] : [dayWords(block.date)])];
  return [what, ...said, `page ${of.page} of ${of.pages}`].join(', ');
}

function laidOut(canvas: PdfCanvas, width: number, block: TitleBlock) {
  const square = block.link === null ? null : squareCode(block.link);
  const side = square === null ? 0 : square.module * square.modules.length + 2;
  const room = width - side - 2 * PAD;
  const said = [
    ...block.facts,
    {
      name: 'Version',
      value: [block.version, ...(block.date === '' ? [] : [`drawn ${dayWords(block.date)}`])].join(', '),
    },
    ...squareWords(block, square),
  ];
  const facts = said.map(({ name, value }) => ({
    name,
    lines: brokenLines(value, room - NAMES, (part) => canvas.widthOf(part, SIZE.text)),
  }));
  const rows = facts.reduce((sum, { lines }) => sum + lines.length, 0);
  const height = 2 * PAD + SIZE.job * 1.4 + 0.8 + rows * SIZE.text * LEADING;
  return { height: Math.max(TITLE_BLOCK.leastHeight, height, side), facts, square, room };
}

function squareWords({ link, isTooLarge }: TitleBlock, square: SquareCode | null): TitleBlock['facts'] {
  if (link === null && !isTooLarge) return [];
  return square === null
    ? [
        {
          name: 'Code',
          value: 'This job is too large for a square code. Save it as a file and keep that with this sheet.',
        },
      ]
    : [{ name: 'Code', value: 'Photograph the square code with a telephone to open this job in this version.' }];
}
