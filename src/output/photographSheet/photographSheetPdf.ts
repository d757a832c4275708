import {
  type CheckBar,
  line,
  MARK_SIDE,
  MARKED_PAPERS,
  type MarkedPage,
  type MarkedPaper,
  markedPage,
  rectangle,
  type Vec2,
} from '../../core/index.ts';
import { markCells } from '../../sight/markCells.ts';
import { brokenLines } from '../brokenLines.ts';
import type { PdfCanvas } from '../pdf/pdfCanvas.ts';
import { SheetFile, type SheetOptions } from '../pdf/sheetFile.ts';
import { darkParts, squareCode } from '../pdf/squareCode.ts';
import { pagesBeside } from './sheetPages.ts';
import { barLength, stepWords, TITLE } from './sheetWords.ts';

export interface PhotographSheetOptions extends Pick<SheetOptions, 'date' | 'onLacking'> {
  readonly units?: 'mm' | 'in';
  readonly paper?: MarkedPaper;
  /** 1 to 6 on A4, 1 to 4 on Letter. */
  readonly pages?: number;
  /** Name of the job; '' for none. */
  readonly job?: string;
  /** Address for the square code; null for none. */
  readonly link?: string | null;
}

const INK = [0, 0, 0] as const;
const BAR = { width: 0.3, dash: [], ink: INK } as const;
/** Thin, so that its middle is the end of the bar to a twentieth of a millimetre. */
const END = { width: 0.1, dash: [], ink: INK } as const;
const RULE = { width: 0.2, dash: [], ink: [60, 60, 60] } as const;
const SIZE = { title: 6, text: 3.6, small: 3.2 } as const;
const LEADING = 1.45;
/** Half the length of the stroke at the end of a bar. */
const STROKE = 2.5;
/** White between marks and words, mm: more than a cell of a mark. */
const CLEAR = 6;

/**
 * Draws the sheet on which a book is photographed: marks of known place round the rim of every page, two bars that show how true the
 * print is, and on the first page what to do. The same options give the same bytes.
 *
 * @returns the file; rejects with a RangeError for a number of pages that the paper does not have
 */
export async function photographSheetPdf({
  units = 'mm',
  paper = 'A4',
  pages = 2,
  job = '',
  link = null,
  date,
  onLacking,
}: PhotographSheetOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const most = MARKED_PAPERS[paper].pages;
  if (!(Number.isInteger(pages) && pages >= 1 && pages <= most))
    throw new RangeError(`Got ${pages} pages; allowed: 1 to ${most} on ${paper}. Choose one of these.`);
  const file = await SheetFile.titled(TITLE, ['plain', 'bold'], { date });
  for (let number = 1; number <= pages; number++) {
    const page = markedPage(paper, number - 1);
    const canvases = file.addPage(page).in;
    const { plain, bold } = canvases;
    const onPage = ([x, y]: Vec2): Vec2 => [x + page.width / 2, y + page.height / 2];
    const box = inner(page, onPage);
    let { top } = box;
    const edge = `Page ${number} of ${pages} (${paper}). This edge is up: it lies away from you.`;
    top -= SIZE.small;
    const heading = number === 1 ? 'H1' : 'H2';
    bold.tagged(heading, () => {
      arrowUp(bold, [box.left + 1.5, top - 0.6]);
      bold.words(edge, [box.left + 5, top], SIZE.small, { width: box.width - 5 });
    });
    if (number === 1) top = drawWords(canvases, { units, pages, job, link, page }, { ...box, top: top - 5 });
    drawBars(plain, page, units, onPage);
    plain.tagged('Figure', () => drawMarks(plain, page, onPage), {
      alt: `${page.marks.length} black squares by which the photographs are measured`,
      box: { x: 0, y: 0, width: page.width, height: page.height },
    });
  }
  return file.save({ onLacking });
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly low: number;
}

/** Room for words within the marks and the bars. */
function inner({ width, height, bars }: MarkedPage, onPage: (point: Vec2) => Vec2): Box {
  const margin = height / 2 - bars.along.to[1];
  const left = onPage(bars.along.from)[0] + CLEAR;
  const rim = Math.max(margin, 8) + MARK_SIDE + CLEAR / 2;
  return { left, top: height - rim, width: width - rim - left, low: onPage(bars.across.from)[1] + CLEAR };
}

function drawMarks(canvas: PdfCanvas, { marks }: MarkedPage, onPage: (point: Vec2) => Vec2): void {
  canvas.areas(
    marks.flatMap(({ id, corners }) => {
      const modules = markCells(id);
      return darkParts({ modules, module: MARK_SIDE / modules.length }, onPage(corners[0]));
    }),
    INK,
  );
}

function drawBars(canvas: PdfCanvas, { bars }: MarkedPage, units: 'mm' | 'in', onPage: (point: Vec2) => Vec2): void {
  const [from, to] = [onPage(bars.across.from), onPage(bars.across.to)];
  canvas.lines([line(from, to)], BAR);
  canvas.lines(
    [from, to].map(([x, y]) => line([x, y - STROKE], [x, y + STROKE])),
    END,
  );
  const [low, high] = [onPage(bars.along.from), onPage(bars.along.to)];
  canvas.lines([line(low, high)], BAR);
  canvas.lines(
    [low, high].map(([x, y]) => line([x - STROKE, y], [x + STROKE, y])),
    END,
  );
  const said = (bar: CheckBar, name: string): string =>
    `${name} bar: ${barLength(bar, units)} from end stroke to end stroke`;
  const middle = (low[1] + high[1]) / 2;
  canvas.words(said(bars.across, 'Lower'), [low[0] + CLEAR, from[1] + 1.6], SIZE.small);
  canvas.words(said(bars.along, 'Upright'), [low[0] - 1.6, middle - 30], SIZE.small, { rotation: Math.PI / 2 });
}

interface Said extends Required<Pick<PhotographSheetOptions, 'units' | 'pages' | 'job' | 'link'>> {
  readonly page: MarkedPage;
}

/** What to do, where the lengths are written, how the pages lie and the square code. Returns the y below all. */
function drawWords(
  { plain, bold }: Readonly<Record<'plain' | 'bold', PdfCanvas>>,
  { units, pages, job, link, page }: Said,
  { left, top, width, low }: Box,
): number {
  let y = top - SIZE.title;
  bold.tagged('H2', () => bold.words(job === '' ? TITLE : `${TITLE}: ${job}`, [left, y], SIZE.title, { width }));
  y -= 3;
  plain.group('L', () =>
    stepWords(units, pages).forEach((words, i) => {
      plain.group('LI', () => {
        const lines = brokenLines(words, width - 7, (part) => plain.widthOf(part, SIZE.text));
        y -= 1.6;
        bold.tagged('Lbl', () => bold.words(`${i + 1}`, [left, y - SIZE.text * LEADING], SIZE.text));
        plain.tagged('LBody', () => {
          for (const said of lines) {
            y -= SIZE.text * LEADING;
            plain.words(said, [left + 7, y], SIZE.text);
          }
        });
      });
    }),
  );
  y -= 5;
  for (const said of [
    `Lower bar, meant to be ${barLength(page.bars.across, units)}. My ruler shows`,
    `Upright bar, meant to be ${barLength(page.bars.along, units)}. My ruler shows`,
    'Thickness of the closed book, not pressed together',
  ]) {
    y -= 9;
    const start = left + plain.widthOf(said, SIZE.text) + 2;
    plain.tagged('P', () => {
      plain.words(said, [left, y], SIZE.text);
      plain.lines([line([start, y - 0.8], [start + 24, y - 0.8])], RULE);
      plain.words(units, [start + 26, y], SIZE.text);
    });
  }
  const square = link === null ? null : squareCode(link);
  const side = square === null ? 0 : square.module * square.modules.length;
  y -= 6;
  const floor = low + SIZE.small * 2;
  drawLaidOut(plain, page, pages, { left, top: y, width: width - side - CLEAR, low: floor });
  if (square !== null && y - side > floor - CLEAR) {
    const corner: Vec2 = [left + width - side, y];
    plain.tagged('Figure', () => plain.areas(darkParts(square, corner), INK), {
      alt: `Square code of the address ${link}`,
      box: { x: corner[0], y: y - side, width: side, height: side },
    });
  }
  return y;
}

/** The pages laid side by side with the book in their middle, from above. */
function drawLaidOut(canvas: PdfCanvas, { width, height }: MarkedPage, pages: number, box: Box): void {
  const beside = pagesBeside(pages);
  const rows = Math.ceil(pages / beside);
  const scale = Math.min(box.width / (beside * width), Math.min(box.top - box.low, 48) / (rows * height), 0.16);
  const [w, h] = [width * scale, height * scale];
  const [whole, high] = [beside * w, rows * h];
  const draw = (): void => {
    for (let page = 0; page < pages; page++) {
      const x = box.left + (page % beside) * w;
      const y = box.top - (Math.floor(page / beside) + 1) * h;
      canvas.lines(rectangle([x + 0.3, y + 0.3], [x + w - 0.3, y + h - 0.3]), RULE);
      canvas.words(`${page + 1}`, [x + 1.5, y + h - 4], SIZE.small);
    }
    const middle: Vec2 = [box.left + whole / 2, box.top - high / 2];
    const half: Vec2 = [Math.min(0.3 * w * Math.min(beside, 2), 0.27 * whole), Math.min(0.33 * h * rows, 0.3 * high)];
    const [a, b]: [Vec2, Vec2] = [
      [middle[0] - half[0], middle[1] - half[1]],
      [middle[0] + half[0], middle[1] + half[1]],
    ];
    canvas.area([a, [b[0], a[1]], b, [a[0], b[1]]], [255, 255, 255]);
    canvas.lines(rectangle(a, b), BAR);
    canvas.lines([line([a[0] + 1.4, a[1]], [a[0] + 1.4, b[1]])], RULE);
    canvas.words('book', [middle[0], middle[1] - 1], SIZE.small, { align: 'middle' });
  };
  canvas.tagged('Figure', draw, {
    alt: `${pages === 1 ? 'The page' : `The ${pages} pages, ${beside} beside each other,`} with the book in the middle, its spine to the left`,
    box: { x: box.left, y: box.top - high, width: whole, height: high },
  });
}

const arrowUp = (canvas: PdfCanvas, [x, y]: Vec2): void =>
  canvas.lines(
    [line([x, y], [x, y + 4]), line([x, y + 4], [x - 1.2, y + 2.4]), line([x, y + 4], [x + 1.2, y + 2.4])],
    BAR,
  );
