import { addScaled, circle, distance, line, rectangle, type Segment, subtract, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import type { LayerStyle } from '../layerStyle.ts';
import { drawCardGap } from '../pdf/cardGap.ts';
import { SHEETS } from '../pdf/paper.ts';
import type { PdfCanvas } from '../pdf/pdfCanvas.ts';
import { SheetFile, type SheetOptions } from '../pdf/sheetFile.ts';
import { type Figure, type Measure, placed } from './figure.ts';
import { frontFigure, openFigure, tailFigure, wrapFigure } from './figures.ts';
import { printedRuler } from './printedRuler.ts';
import { ASKED, INTRODUCTION, RULER_NOTE, TICKS, TITLE } from './sheetWords.ts';

export interface MeasuringSheetOptions extends Pick<SheetOptions, 'date'> {
  readonly units?: 'mm' | 'in';
  readonly paper?: 'A4' | 'Letter';
}

const MARGIN = 16;
/** Letter heights, mm. */
const SIZE = { title: 6.4, text: 3.4, small: 3, badge: 3.6 } as const;
const LEADING = 1.35;
const ROW = 8.4;
const BADGE = 2.4;
const ARROW = 1.6;

const STYLE: Readonly<Record<'outline' | 'thin' | 'strip' | 'measure', LayerStyle>> = {
  outline: { width: 0.4, dash: [], ink: [0, 0, 0] },
  thin: { width: 0.12, dash: [], ink: [90, 90, 90] },
  strip: { width: 0.5, dash: [2, 1], ink: [20, 60, 110] },
  measure: { width: 0.22, dash: [], ink: [0, 0, 0] },
};

/**
 * Makes the form for a customer who measures the book: one page with line drawings, lines to write on, and a printed
 * ruler to check with a bank card. The same options give the same bytes; the words can be selected.
 */
export async function measuringSheetPdf({
  units = 'mm',
  paper = 'A4',
  date,
}: MeasuringSheetOptions = {}): Promise<Uint8Array<ArrayBuffer>> {
  const file = await SheetFile.titled(TITLE, ['plain', 'bold'], { date });
  const { width, height } = SHEETS[paper];
  const { plain, bold } = file.addPage({ width, height }).in;
  const inner = width - 2 * MARGIN;
  let y = height - MARGIN - SIZE.title;

  bold.tagged('H1', () => bold.words(TITLE, [MARGIN, y], SIZE.title));
  y -= 3;
  y = paragraph(plain, INTRODUCTION[units], [MARGIN, y], inner, SIZE.text);
  y -= 6;
  y = writingLines(plain, y, inner, ['Book', 'Your name', 'Date']);

  for (const [left, right] of [
    [frontFigure(), tailFigure()],
    [wrapFigure(), openFigure()],
  ] as const) {
    y -= Math.max(left.height, right.height) + 6;
    y -= 5;
    for (const [figure, x] of [
      [left, MARGIN],
      [right, MARGIN + inner / 2],
    ] as const) {
      const box = { x, y: y + 5, width: inner / 2, height: figure.height };
      const letters = [...figure.measures, ...(figure.pointers ?? [])].map(({ letter }) => letter).join(', ');
      plain.tagged('Figure', () => drawFigure(plain, figure, [x, y + 5]), {
        alt: `${figure.caption}: where ${letters} ${letters.length === 1 ? 'is' : 'are'} measured`,
        box,
      });
      plain.tagged('Caption', () => plain.words(figure.caption, [x + 2, y], SIZE.small));
    }
  }

  y -= 8;
  for (const { letter, name, how } of ASKED) {
    const lines = brokenLines(how, inner - 90, (words) => plain.widthOf(words, SIZE.small));
    plain.tagged('P', () => {
      badge(plain, letter, [MARGIN + BADGE, y - 1]);
      bold.words(name, [MARGIN + 8, y - 2], SIZE.text, { width: 40 });
      lines.forEach((words, i) => {
        const top = lines.length > 1 ? 0.6 : -2;
        plain.words(words, [MARGIN + 50, y + top - i * SIZE.small * LEADING], SIZE.small);
      });
    });
    plain.lines([line([width - MARGIN - 36, y - 3], [width - MARGIN - 8, y - 3])], STYLE.thin);
    plain.words(units, [width - MARGIN - 6, y - 2.5], SIZE.text);
    y -= ROW;
  }

  y -= 2;
  for (const [question, ...answers] of TICKS) {
    plain.words(question, [MARGIN, y], SIZE.text);
    let x = MARGIN + 50;
    for (const answer of answers) {
      plain.lines(rectangle([x, y - 0.5], [x + 3.2, y + 2.7]), STYLE.measure);
      plain.words(answer, [x + 5, y], SIZE.text);
      x += 13 + plain.widthOf(answer, SIZE.text);
    }
    y -= 6;
  }

  drawRuler(plain, units, [MARGIN, 10], inner);
  return file.save({});
}

/** Sets lines of words downward from `at`. Returns the y of the last one. */
function paragraph(canvas: PdfCanvas, words: string, [x, y]: Vec2, width: number, size: number): number {
  let at = y;
  canvas.tagged('P', () => {
    for (const text of brokenLines(words, width, (part) => canvas.widthOf(part, size))) {
      at -= size * LEADING;
      canvas.words(text, [x, at], size);
    }
  });
  return at;
}

function writingLines(canvas: PdfCanvas, y: number, inner: number, names: readonly string[]): number {
  const each = inner / names.length;
  names.forEach((name, i) => {
    const x = MARGIN + i * each;
    const start = x + canvas.widthOf(name, SIZE.text) + 2;
    canvas.words(name, [x, y - 3], SIZE.text);
    canvas.lines([line([start, y - 4], [x + each - 4, y - 4])], STYLE.thin);
  });
  return y - 4;
}

function drawFigure(canvas: PdfCanvas, { outline, thin, strip, measures, pointers = [] }: Figure, at: Vec2): void {
  const put = (segments: readonly Segment[]): Segment[] => segments.map((segment) => placed(segment, at));
  canvas.lines(put(thin), STYLE.thin);
  canvas.lines(put(outline), STYLE.outline);
  canvas.lines(put(strip), STYLE.strip);
  for (const { letter, from, to } of measures)
    drawMeasure(canvas, { letter, from: addScaled(from, at, 1), to: addScaled(to, at, 1) });
  for (const { letter, from, to } of pointers) {
    const [start, tip] = [addScaled(from, at, 1), addScaled(to, at, 1)];
    const along = direction(start, tip);
    canvas.lines([line(addScaled(start, along, BADGE), tip), ...arrow(tip, along)], STYLE.measure);
    badge(canvas, letter, start);
  }
}

/** A line with arrows at its ends and its letter in the middle; a short one has the letter beyond its end. */
function drawMeasure(canvas: PdfCanvas, { letter, from, to }: Measure): void {
  const length = distance(from, to);
  const along = direction(from, to);
  const isShort = length < 4 * BADGE;
  const middle = addScaled(from, along, isShort ? length + 2 * ARROW + BADGE + 0.6 : length / 2);
  const back: Vec2 = [-along[0], -along[1]];
  const shafts = isShort
    ? [line(addScaled(from, along, -2 * ARROW), from), line(to, addScaled(to, along, 2 * ARROW))]
    : [line(from, addScaled(middle, along, -BADGE)), line(addScaled(middle, along, BADGE), to)];
  // A short measure is pointed at from outside.
  const heads = isShort ? [...arrow(from, along), ...arrow(to, back)] : [...arrow(from, back), ...arrow(to, along)];
  canvas.lines([...shafts, ...heads], STYLE.measure);
  badge(canvas, letter, middle);
}

function direction(from: Vec2, to: Vec2): Vec2 {
  const [x, y] = subtract(to, from);
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}

/** The two strokes of an arrow that points along a unit vector. */
const arrow = (tip: Vec2, along: Vec2): Segment[] =>
  [0.35, -0.35].map((side) => line(tip, addScaled(addScaled(tip, along, -ARROW), [-along[1], along[0]], side * ARROW)));

function badge(canvas: PdfCanvas, letter: string, [x, y]: Vec2): void {
  canvas.lines([circle([x, y], BADGE)], STYLE.measure);
  canvas.words(letter, [x, y - 0.36 * SIZE.badge], SIZE.badge, { align: 'middle' });
}

function drawRuler(canvas: PdfCanvas, units: 'mm' | 'in', [x, y]: Vec2, room: number): void {
  const { ticks, figures } = printedRuler(units, room);
  canvas.lines(
    ticks.map((tick) => placed(tick, [x, y])),
    STYLE.measure,
  );
  for (const { text, at } of figures) canvas.words(text, [x + at, y + 7], SIZE.small, { align: 'middle' });
  // Above the figures, where no tick of the ruler can be taken for a mark.
  drawCardGap(canvas, [x, y + 10.5]);
  paragraph(canvas, RULER_NOTE, [x, y + 27.5], room, SIZE.small);
}
