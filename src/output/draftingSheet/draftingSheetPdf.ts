import { type Layer, line, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { drawLegend, layersIn } from '../pdf/legend.ts';
import { SHEETS } from '../pdf/paper.ts';
import { SheetFile, type SheetOptions, type SheetPage } from '../pdf/sheetFile.ts';
import type { Leaf } from '../pdf/structure.ts';
import { drawTitleBlock, footLine } from '../pdf/titleBlock.ts';
import type { TitleBlock } from '../titleBlock.ts';
import { DRAFTED, type Draft, type DraftingSheet } from './draftingSheet.ts';

export interface DraftingSheetOptions extends SheetOptions {
  readonly paper?: 'A4' | 'Letter';
}

const MARGIN = 16;
/** Heights of letters, mm. */
const SIZE = { title: 6.4, piece: 4.6, text: 3.5, point: 4, foot: 2.6 } as const;
const LEADING = 1.4;
/** Indent of a step behind its number, mm. */
const INDENT = 8;
/** Largest figure of a piece, mm. */
const FIGURE = { width: 110, height: 62 } as const;

const RULE = { width: 0.25, dash: [], ink: [60, 60, 60] } as const;

/** Makes the drafting sheet as a PDF: for each piece a figure with its points, and the steps that draw it. */
export async function draftingSheetPdf(
  sheet: DraftingSheet,
  { paper = 'A4', ...options }: DraftingSheetOptions = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const title = `${sheet.title}: drafting sheet`;
  const file = await SheetFile.titled(title, ['plain', 'bold'], options);
  const flow = new PageFlow(file, SHEETS[paper]);
  const { block } = options;
  if (block === undefined) flow.words(title, SIZE.title, { face: 'bold', role: 'H1' });
  else flow.block(block);
  flow.legend(
    layersIn(sheet.drafts.map(({ piece }) => piece)).filter((layer) => DRAFTED.some((drafted) => drafted === layer)),
  );
  flow.down(1);
  for (const words of sheet.introduction) flow.words(words, SIZE.text);
  flow.words(`Caution. ${sheet.caution}`, SIZE.text);
  for (const draft of sheet.drafts) flow.draft(draft);
  if (sheet.notes.length > 0) {
    flow.down(4);
    flow.words('Notes', SIZE.piece, { face: 'bold', role: 'H2' });
    for (const note of sheet.notes) flow.words(note, SIZE.text);
  }
  flow.finish(title, block);
  return file.save(options);
}

type Face = 'plain' | 'bold';

/** Sets words and figures down the page, and on to the next. */
class PageFlow {
  private readonly file: SheetFile<Face>;
  private readonly size: { readonly width: number; readonly height: number };
  private readonly pages: SheetPage<Face>['in'][] = [];
  /** Lower edge of what is set, mm from the foot of the page. */
  private y: number;

  constructor(file: SheetFile<Face>, size: { readonly width: number; readonly height: number }) {
    this.file = file;
    this.size = size;
    this.y = size.height - MARGIN;
    this.pages.push(file.addPage(size).in);
  }

  private get page(): SheetPage<Face>['in'] {
    return this.pages.at(-1)!;
  }

  private get inner(): number {
    return this.size.width - 2 * MARGIN;
  }

  down(by: number): void {
    this.y -= by;
  }

  /** Goes to a new page unless so much room is left. */
  private need(height: number): void {
    if (this.y - height >= MARGIN) return;
    this.pages.push(this.file.addPage(this.size).in);
    this.y = this.size.height - MARGIN;
  }

  private lines(words: string, size: number, face: Face, indent = 0): readonly string[] {
    return brokenLines(words, this.inner - indent, (line) => this.file.widthOf(face, line, size));
  }

  words(words: string, size: number, { face = 'plain' as Face, role = 'P' as Leaf, indent = 0 } = {}): void {
    const lines = this.lines(words, size, face, indent);
    this.need(lines.length * size * LEADING);
    this.page.plain.tagged(role, () => {
      for (const line of lines) {
        this.y -= size * LEADING;
        this.page[face].words(line, [MARGIN + indent, this.y], size);
      }
    });
  }

  /** A step behind its number. */
  private step(words: string, number: number): void {
    this.need(this.lines(words, SIZE.text, 'plain', INDENT).length * SIZE.text * LEADING);
    this.page.plain.group('LI', () => {
      this.page.plain.tagged('Lbl', () =>
        this.page.plain.words(String(number), [MARGIN, this.y - SIZE.text * LEADING], SIZE.text),
      );
      this.words(words, SIZE.text, { role: 'LBody', indent: INDENT });
    });
  }

  block(block: TitleBlock): void {
    this.y -= drawTitleBlock(this.page.plain, [MARGIN, this.y], this.inner, block) + 3;
  }

  legend(layers: readonly Layer[]): void {
    this.y -= drawLegend(this.page.plain, [MARGIN, this.y - 1], this.inner, layers) + 1;
  }

  /** A piece: its name and figure stay together with its first steps. */
  draft({ title, piece, points, steps }: Draft): void {
    const scale = Math.min(FIGURE.width / piece.width, FIGURE.height / piece.height);
    const high = piece.height * scale + 3 * SIZE.point;
    this.down(5);
    this.need(SIZE.piece * LEADING + high + 30);
    this.page.plain.lines([line([MARGIN, this.y], [MARGIN + this.inner, this.y])], RULE);
    this.down(2);
    this.words(title, SIZE.piece, { face: 'bold', role: 'H2' });
    const origin: Vec2 = [MARGIN + (this.inner - piece.width * scale) / 2, this.y - high + 1.5 * SIZE.point];
    const map = { origin, from: [0, 0], scale: [scale, scale] } as const;
    const drawFigure = (): void => {
      for (const layer of DRAFTED)
        this.page.plain.layer(
          layer,
          piece.layers[layer].filter(({ kind }) => kind !== 'text'),
          map,
        );
      for (const { name, at } of points) {
        const [x, y] = [origin[0] + at[0] * scale, origin[1] + at[1] * scale];
        const [isLeft, isLow] = [at[0] === 0, at[1] === 0];
        this.page.bold.words(name, [x + (isLeft ? -3 : 3), y + (isLow ? -1.1 : 0.4) * SIZE.point], SIZE.point, {
          align: 'middle',
        });
      }
    };
    this.page.plain.tagged('Figure', drawFigure, {
      alt: `${title}, with its points ${points.map(({ name }) => name).join(', ')}`,
      box: { x: MARGIN, y: this.y - high, width: this.inner, height: high },
    });
    this.down(high);
    this.page.plain.group('L', () => {
      steps.forEach((step, i) => {
        this.step(step, i + 1);
        this.down(0.7);
      });
    });
  }

  /** Numbers the pages at their feet. */
  finish(title: string, block?: TitleBlock): void {
    this.pages.forEach(({ plain }, i) => {
      const line = footLine(title, block, { page: i + 1, pages: this.pages.length });
      plain.artifact(() => plain.words(line, [MARGIN, MARGIN - 6], SIZE.foot, { width: this.inner }));
    });
  }
}
