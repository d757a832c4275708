import type { PDFDocument, PDFPage } from '@cantoo/pdf-lib';
import { isDay } from '../../core/index.ts';
import { crc32 } from '../crc32.ts';
import type { TitleBlock } from '../titleBlock.ts';
import { FACES, type Face, letterFile } from './letterFiles.ts';
import { LACKING, Lettering } from './lettering.ts';
import { OptionalLayers } from './optionalLayers.ts';
import { PageMarks } from './pageMarks.ts';
import type { Page } from './paper.ts';
import { PdfCanvas } from './pdfCanvas.ts';
import { PT } from './points.ts';
import { Structure } from './structure.ts';
import { type FileFacts, instant, xmp } from './xmp.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** Options of every sheet. */
export interface SheetOptions {
  /** Day that the sheet is made, ISO 8601, such as `2026-11-27`. Without it the file names none: no clock is read. */
  readonly date?: string;
  /** What stands at the head of a sheet of a job; its day is the day of the file. */
  readonly block?: TitleBlock;
  /** Called with the characters that the sheet's letters lack, if any; a box stands for each. */
  readonly onLacking?: (characters: readonly string[]) => void;
}

/** One page to draw on, a canvas for each face of its letters. */
export interface SheetPage<F extends Face> {
  readonly page: PDFPage;
  readonly in: Readonly<Record<F, PdfCanvas>>;
}

/** Six capitals before the name of a font of which only some glyphs are in the file (ISO 32000-1, 9.6.4). */
const SUBSET = 'CVRWRT';

/** Most lacking signs that are named one by one. */
const MOST_NAMED = 12;

/** Language of every sheet, BCP 47. */
const LANGUAGE = 'en-GB';
const PRODUCER = 'Coverwright';
/** Stands in the file for its identifier until that is known. */
const NO_ID = '0'.repeat(32);

/** A PDF that is being drawn; only the glyphs used are embedded. The same drawing gives the same bytes. */
export class SheetFile<F extends Face> {
  readonly document: PDFDocument;
  private readonly lib: PdfLib;
  private readonly letters: Readonly<Record<F, Lettering>>;
  private readonly pages: SheetPage<F>[] = [];
  private readonly structure = new Structure();
  private readonly layers: OptionalLayers;
  private readonly facts: FileFacts;

  private constructor(lib: PdfLib, document: PDFDocument, letters: Readonly<Record<F, Lettering>>, facts: FileFacts) {
    this.lib = lib;
    this.document = document;
    this.letters = letters;
    this.facts = facts;
    this.layers = new OptionalLayers(lib, document.context);
  }

  /**
   * @param faces the faces that the sheet is set in
   * @returns the file; rejects with a RangeError for a date that is no day, with an Error where the font or the library cannot be fetched
   */
  static async titled<F extends Face>(
    title: string,
    faces: readonly F[],
    { block, date = block?.date || undefined }: Pick<SheetOptions, 'block' | 'date'> = {},
  ): Promise<SheetFile<F>> {
    if (date !== undefined && !isDay(date))
      throw new RangeError(`Got date "${date}"; allowed: a day such as 2026-11-27. Write year, month and day.`);
    // Loaded on demand: these are larger than the rest of the tool's core.
    const [lib, { default: fontkit }, ...files] = await Promise.all([
      import('@cantoo/pdf-lib'),
      import('@cantoo/fontkit'),
      ...faces.map(letterFile),
    ]);
    const document = await lib.PDFDocument.create({ updateMetadata: false });
    document.setTitle(title, { showInWindowTitleBar: true });
    document.setLanguage(LANGUAGE);
    document.setProducer(PRODUCER);
    if (date !== undefined) {
      document.setCreationDate(new Date(instant(date)));
      document.setModificationDate(new Date(instant(date)));
    }
    document.catalog.getOrCreateViewerPreferences().setPrintScaling(lib.PrintScaling.None);
    document.registerFontkit(fontkit);
    const letters = {} as Record<F, Lettering>;
    for (const [i, face] of faces.entries()) {
      const customName = `${SUBSET}+${FACES[face].name}`;
      // Ligatures would hide letters from a text search.
      const features = { liga: false };
      letters[face] = new Lettering(await document.embedFont(files[i]!, { subset: true, customName, features }));
    }
    return new SheetFile(lib, document, letters, { title, language: LANGUAGE, producer: PRODUCER, date });
  }

  /** Width of a line of words, mm. */
  widthOf(face: F, text: string, height: number): number {
    return this.letters[face].widthOf(text, height);
  }

  addPage({ width, height }: Page): SheetPage<F> {
    const page = this.document.addPage([width * PT, height * PT]);
    const marks = new PageMarks(this.lib, page, this.structure, this.layers);
    const canvases = Object.entries<Lettering>(this.letters).map(([face, letters]) => [
      face,
      new PdfCanvas(this.lib, page, letters, marks),
    ]);
    const added = { page, in: Object.fromEntries(canvases) as Record<F, PdfCanvas> };
    this.pages.push(added);
    return added;
  }

  /** The finished file; the foot of its first page names the characters that could not be drawn. */
  async save({ onLacking }: Pick<SheetOptions, 'onLacking'> = {}): Promise<Uint8Array<ArrayBuffer>> {
    const lacking = [...new Set(Object.values<Lettering>(this.letters).flatMap((letters) => [...letters.lacking]))];
    const [first] = this.pages;
    if (lacking.length > 0 && first !== undefined) {
      onLacking?.(lacking);
      const [canvas] = Object.values<PdfCanvas>(first.in);
      canvas!.words(
        `${LACKING} stands for what this sheet's letters lack: ${named(lacking)}. Write it in by hand.`,
        [10, 5.5],
        2.6,
        {
          width: first.page.getWidth() / PT - 20,
        },
      );
    }
    const { lib, document } = this;
    const { context, catalog } = document;
    this.structure.write(lib, document);
    this.layers.write(catalog);
    const about = context.stream(new TextEncoder().encode(xmp(this.facts)), { Type: 'Metadata', Subtype: 'XML' });
    catalog.set(lib.PDFName.of('Metadata'), context.register(about));
    context.trailerInfo.ID = context.obj([lib.PDFHexString.of(NO_ID), lib.PDFHexString.of(NO_ID)]);
    return identified(await document.save({ useObjectStreams: false }));
  }
}

/**
 * Puts the identifier of a file in its place (ISO 32000-1, 14.4): the CRC-32 of each quarter of its bytes, so that equal files have
 * equal ones and different files do not.
 */
function identified(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const quarter = Math.ceil(bytes.length / 4);
  const id = [0, 1, 2, 3]
    .map((part) => crc32(bytes.subarray(part * quarter, (part + 1) * quarter)))
    .map((sum) => sum.toString(16).toUpperCase().padStart(8, '0'))
    .join('');
  const tail = Math.max(0, bytes.length - 1000);
  const text = new TextDecoder('latin1').decode(bytes.subarray(tail));
  for (let at = text.indexOf(NO_ID); at !== -1; at = text.indexOf(NO_ID, at + 1))
    bytes.set(new TextEncoder().encode(id), tail + at);
  return bytes;
}

/** Signs by the Unicode numbers of their characters. */
function named(signs: readonly string[]): string {
  const number = (character: string): string =>
    `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
  const numbers = signs.slice(0, MOST_NAMED).map((sign) => Array.from(sign, number).join(' '));
  const rest = signs.length - numbers.length;
  return `${numbers.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
