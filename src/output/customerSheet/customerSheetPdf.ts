import { rectangle, segmentStart, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { SHEETS } from '../pdf/paper.ts';
import { PT } from '../pdf/points.ts';
import { SheetFile, type SheetOptions, type SheetPage } from '../pdf/sheetFile.ts';
import type { Leaf } from '../pdf/structure.ts';
import { drawTitleBlock, footLine, titleBlockHeight } from '../pdf/titleBlock.ts';
import type { TitleBlock } from '../titleBlock.ts';
import type { CustomerSheet } from './customerSheet.ts';
import type { RoomKind, RoomPicture } from './roomPicture.ts';
import type { Compared } from './whyThisLeather.ts';

export interface CustomerSheetOptions extends SheetOptions {
  readonly paper?: 'A4' | 'Letter';
  /** Pictures as JPEG files, all of one shape; none where the scene cannot be drawn. */
  readonly pictures?: readonly { readonly jpeg: Uint8Array; readonly caption: string }[];
  /** The maker's mark as a PNG file. */
  readonly mark?: Uint8Array | null;
}

const MARGIN = 18;
const GUTTER = 8;
/** Letter heights, mm. */
const SIZE = { title: 8, heading: 4.6, fit: 4.6, text: 3.6, small: 3, foot: 2.4 } as const;
const LEADING = 1.4;
/** Space after a sentence and after a part, mm. */
const AFTER = { sentence: 1.2, part: 5 } as const;
const RULE = { width: 0.25, dash: [], ink: [60, 60, 60] } as const;
const MARK = { width: 44, height: 22 } as const;
/** Most of the page's height that the pictures take. */
const PICTURES = 0.22;
/** Height of the picture of the room at most, mm. */
const ROOM_HEIGHT = 22;
/** What each colour is stands in so many columns. */
const KEY_COLUMNS = 2;
/** A line to be written on: its height and the words under it, mm. */
const BLANK = { height: 12, words: 5 } as const;

const COLOURS: Readonly<Record<RoomKind, readonly [number, number, number]>> = {
  board: [201, 189, 163],
  lining: [223, 230, 234],
  pocket: [234, 217, 190],
  outside: [107, 68, 35],
  room: [31, 66, 105],
  overrun: [106, 27, 77],
};

type Face = 'plain' | 'bold';
type File = SheetFile<Face>;

/**
 * Makes the customer's sheet with its pictures: the same words as the page. The same sheet and options give the same bytes; the
 * words can be selected. What does not fit on one page goes on a second, no part broken between them.
 */
export async function customerSheetPdf(
  sheet: CustomerSheet,
  { paper = 'A4', pictures = [], mark = null, ...options }: CustomerSheetOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const file = await SheetFile.titled(sheet.title, ['plain', 'bold'], options);
  const flow = new Flow(file, SHEETS[paper]);
  await head(flow, sheet, mark);
  await coverPictures(flow, pictures);
  flow.part(flow.tallOf(sheet.fit, flow.inner, SIZE.fit), () => flow.sentence(sheet.fit, { size: SIZE.fit }));
  passages(flow, sheet.passages);
  madeOf(flow, sheet.madeOf);
  weights(flow, sheet.weights);
  const { heading, sentence, blanks } = sheet.agreement;
  const tall =
    7 +
    AFTER.part +
    flow.tallOf(sentence, flow.inner) +
    BLANK.height +
    BLANK.words +
    flow.tallOf(sheet.caution, flow.inner);
  flow.part(tall, () => {
    flow.sentence(sheet.caution, { size: SIZE.small });
    flow.y -= AFTER.part;
    flow.heading(heading);
    flow.sentence(sentence);
    flow.blanks(blanks);
  });
  if (options.block !== undefined) flow.block(options.block);
  flow.finish(sheet.title, options.block);
  return file.save(options);
}

/** A pen that goes down the page, and on to the next where a part has no room. */
class Flow {
  readonly file: File;
  readonly inner: number;
  /** Where the next line begins, mm from the foot. */
  y = 0;
  page: SheetPage<Face>;
  private readonly pages: SheetPage<Face>[] = [];
  private readonly size: { readonly width: number; readonly height: number };

  constructor(file: File, size: { readonly width: number; readonly height: number }) {
    this.file = file;
    this.size = size;
    this.inner = size.width - 2 * MARGIN;
    this.page = this.turn();
  }

  turn(): SheetPage<Face> {
    this.page = this.file.addPage(this.size);
    this.pages.push(this.page);
    this.y = this.size.height - MARGIN;
    return this.page;
  }

  /** The title block, where the page has room for it: it is for the maker, and no page is spent on it. */
  block(block: TitleBlock): void {
    const { plain } = this.page.in;
    if (this.y - titleBlockHeight(plain, this.inner, block) >= MARGIN)
      this.y -= drawTitleBlock(plain, [MARGIN, this.y], this.inner, block, undefined, 'H2');
  }

  /** Numbers the pages at their feet. */
  finish(title: string, block: TitleBlock | undefined): void {
    this.pages.forEach(({ in: { plain } }, i) => {
      const line = footLine(title, block, { page: i + 1, pages: this.pages.length });
      plain.artifact(() => plain.words(line, [MARGIN, MARGIN - 8], SIZE.foot, { width: this.inner }));
    });
  }

  get pageHeight(): number {
    return this.size.height;
  }

  /** Draws a part of this height, on the next page where it does not fit on this one. */
  part(height: number, draw: () => void): void {
    if (this.y - height < MARGIN) this.turn();
    draw();
    this.y -= AFTER.part;
  }

  lines(words: string, width: number, size: number = SIZE.text, face: Face = 'plain'): string[] {
    return brokenLines(words, width, (part) => this.file.widthOf(face, part, size));
  }

  tallOf(words: string, width: number, size: number = SIZE.text): number {
    return this.lines(words, width, size).length * size * LEADING + AFTER.sentence;
  }

  sentence(
    words: string,
    { left = 0, width = this.inner, size = SIZE.text, face = 'plain' as Face, role = 'P' }: Partial<SentenceStyle> = {},
  ): void {
    this.page.in.plain.tagged(role, () => {
      for (const line of this.lines(words, width, size, face)) {
        this.page.in[face].words(line, [MARGIN + left, this.y - size], size, { width });
        this.y -= size * LEADING;
      }
    });
    this.y -= AFTER.sentence;
  }

  heading(words: string, left = 0): void {
    const at: Vec2 = [MARGIN + left, this.y - SIZE.heading];
    this.page.in.bold.tagged('H2', () => this.page.in.bold.words(words, at, SIZE.heading));
    this.y -= SIZE.heading * LEADING + AFTER.sentence;
  }

  rule(y = this.y): void {
    const [from, to] = [MARGIN, MARGIN + this.inner];
    this.page.in.plain.lines([{ kind: 'line', from: [from, y], to: [to, y] }], RULE);
  }

  /** Lines to be written on, side by side. */
  blanks(names: readonly string[]): void {
    const each = (this.inner - GUTTER * (names.length - 1)) / names.length;
    this.y -= BLANK.height;
    for (const [i, name] of names.entries()) {
      const left = MARGIN + i * (each + GUTTER);
      this.page.in.plain.lines([{ kind: 'line', from: [left, this.y], to: [left + each, this.y] }], RULE);
      this.page.in.plain.words(name, [left, this.y - SIZE.small - 1], SIZE.small, { width: each });
    }
    this.y -= BLANK.words;
  }
}

interface SentenceStyle {
  readonly left: number;
  readonly width: number;
  readonly size: number;
  readonly face: Face;
  readonly role: Leaf;
}

async function head(flow: Flow, { title, lead, date }: CustomerSheet, mark: Uint8Array | null): Promise<void> {
  const top = flow.y;
  let room = flow.inner;
  if (mark !== null) {
    const image = await flow.file.document.embedPng(mark);
    const scale = Math.min(MARK.width / image.width, MARK.height / image.height);
    const [width, height] = [image.width * scale, image.height * scale];
    const at = { x: (MARGIN + flow.inner - width) * PT, y: (top - height) * PT };
    const { page, in: canvases } = flow.page;
    canvases.plain.tagged('Figure', () => page.drawImage(image, { ...at, width: width * PT, height: height * PT }), {
      alt: 'Mark of the maker',
      box: { x: at.x / PT, y: at.y / PT, width, height },
    });
    room -= width + GUTTER;
  }
  flow.y -= SIZE.title;
  const { bold } = flow.page.in;
  bold.tagged('H1', () => bold.words(title, [MARGIN, flow.y], SIZE.title, { width: room }));
  flow.y -= 4;
  flow.sentence(lead, { width: room });
  if (date !== '') flow.sentence(date, { width: room });
  if (mark !== null) flow.y = Math.min(flow.y, top - MARK.height - 2);
  flow.rule();
  flow.y -= AFTER.part;
}

async function coverPictures(flow: Flow, pictures: CustomerSheetOptions['pictures'] = []): Promise<void> {
  const each = (flow.inner - GUTTER * (pictures.length - 1)) / Math.max(1, pictures.length);
  const top = flow.y;
  for (const [i, { jpeg, caption }] of pictures.entries()) {
    const image = await flow.file.document.embedJpg(jpeg);
    const tall = Math.min((each * image.height) / image.width, PICTURES * flow.pageHeight);
    const wide = (tall * image.width) / image.height;
    const x = MARGIN + i * (each + GUTTER);
    const at = { x: x * PT, y: (top - tall) * PT };
    const { page, in: canvases } = flow.page;
    const { plain } = canvases;
    plain.tagged('Figure', () => page.drawImage(image, { ...at, width: wide * PT, height: tall * PT }), {
      alt: `The cover on the book. ${caption}`,
      box: { x, y: top - tall, width: wide, height: tall },
    });
    plain.tagged('Caption', () => plain.words(caption, [x, top - tall - 4.5], SIZE.small, { width: each }));
    flow.y = Math.min(flow.y, top - tall - 5 - AFTER.part);
  }
}

/** Side by side, as tall as the tallest. */
function passages(flow: Flow, all: CustomerSheet['passages']): void {
  const each = (flow.inner - GUTTER * (all.length - 1)) / all.length;
  const tall = all.map(
    ({ sentences, picture }) =>
      SIZE.heading * LEADING +
      AFTER.sentence +
      sentences.reduce((sum, words) => sum + flow.tallOf(words, each), 0) +
      (picture === null ? 0 : pictureHeight(flow, picture, each)),
  );
  flow.part(Math.max(...tall), () => {
    const top = flow.y;
    for (const [i, { heading, sentences, picture }] of all.entries()) {
      const left = i * (each + GUTTER);
      flow.y = top;
      flow.heading(heading, left);
      for (const words of sentences) flow.sentence(words, { left, width: each });
      if (picture !== null) roomDrawing(flow, picture, left, each);
    }
    flow.y = top - Math.max(...tall);
  });
}

const scaleOf = ({ box: { low, high } }: RoomPicture, width: number): number =>
  Math.min(width / (high[0] - low[0]), ROOM_HEIGHT / (high[1] - low[1]));

const pictureHeight = (flow: Flow, picture: RoomPicture, width: number): number =>
  (picture.box.high[1] - picture.box.low[1]) * scaleOf(picture, width) +
  flow.tallOf(picture.words, width, SIZE.small) +
  Math.ceil(picture.key.length / KEY_COLUMNS) * SIZE.small * LEADING +
  4;

function roomDrawing(flow: Flow, picture: RoomPicture, left: number, width: number): void {
  const { low, high } = picture.box;
  const scale = scaleOf(picture, width);
  const { plain } = flow.page.in;
  const drawShapes = (): void => {
    for (const { kind, outline } of picture.shapes)
      plain.area(
        outline.map(([u, v]): Vec2 => [MARGIN + left + (u - low[0]) * scale, flow.y - (high[1] - v) * scale]),
        COLOURS[kind],
      );
  };
  const height = (high[1] - low[1]) * scale;
  plain.tagged('Figure', drawShapes, {
    alt: picture.words,
    box: { x: MARGIN + left, y: flow.y - height, width: (high[0] - low[0]) * scale, height },
  });
  flow.y -= (high[1] - low[1]) * scale + 2;
  flow.sentence(picture.words, { left, width, size: SIZE.small });
  const each = width / KEY_COLUMNS;
  for (const [i, { kind, words }] of picture.key.entries()) {
    const side = SIZE.small;
    const at = MARGIN + left + (i % KEY_COLUMNS) * each;
    plain.area(rectangle([at, flow.y - side], [at + side, flow.y]).map(segmentStart), COLOURS[kind]);
    plain.words(words, [at + side + 1.5, flow.y - side + 0.5], SIZE.small, { width: each - side - 2.5 });
    if (i % KEY_COLUMNS === KEY_COLUMNS - 1 || i === picture.key.length - 1) flow.y -= side * LEADING;
  }
}

/** The weights side by side, the chosen one in bold letters. */
function weights(flow: Flow, { heading, rows, columns, sentences }: Compared): void {
  const first = flow.inner * 0.4;
  const each = (flow.inner - first) / columns.length;
  const row = SIZE.text * LEADING + 0.8;
  const tall =
    SIZE.heading * LEADING +
    (rows.length + 1) * row +
    sentences.reduce((sum, words) => sum + flow.tallOf(words, flow.inner), 0) +
    3;
  flow.part(tall, () => {
    flow.heading(heading);
    const { plain } = flow.page.in;
    const line = (name: string, values: readonly string[], role: 'TH' | 'TD'): void => {
      const y = flow.y - SIZE.text;
      plain.group('TR', () => {
        const head = (): void => plain.words(name, [MARGIN, y], SIZE.text, { width: first - 2 });
        plain.tagged(name === '' ? 'TD' : 'TH', head, { scope: 'Row' });
        for (const [i, value] of values.entries()) {
          const face = columns[i]?.isChosen ? 'bold' : 'plain';
          const at: Vec2 = [MARGIN + first + i * each, y];
          plain.tagged(role, () => flow.page.in[face].words(value, at, SIZE.text, { width: each - 2 }));
        }
      });
      flow.y -= row;
    };
    plain.group('Table', () => {
      line(
        '',
        columns.map(({ name }) => name),
        'TH',
      );
      flow.rule(flow.y + 0.6);
      for (const [k, name] of rows.entries())
        line(
          name,
          columns.map(({ values }) => values[k] ?? ''),
          'TD',
        );
    });
    flow.y -= 1.5;
    for (const words of sentences) flow.sentence(words);
  });
}

function madeOf(flow: Flow, { heading, facts }: CustomerSheet['madeOf']): void {
  const left = Math.max(...facts.map(({ name }) => flow.file.widthOf('bold', name, SIZE.text))) + 4;
  const width = flow.inner - left;
  const tall = facts.reduce(
    (sum, { value }) => sum + flow.tallOf(value, width),
    SIZE.heading * LEADING + AFTER.sentence,
  );
  flow.part(tall, () => {
    flow.heading(heading);
    const { bold } = flow.page.in;
    bold.group('Table', () => {
      for (const { name, value } of facts)
        bold.group('TR', () => {
          const at: Vec2 = [MARGIN, flow.y - SIZE.text];
          bold.tagged('TH', () => bold.words(name, at, SIZE.text, { width: left - 2 }), { scope: 'Row' });
          flow.sentence(value, { left, width, role: 'TD' });
        });
    });
  });
}
