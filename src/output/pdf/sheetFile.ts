import type { PDFDocument, PDFPage } from '@cantoo/pdf-lib';
import { FACES, type Face, letterFile } from './letterFiles.ts';
import { LACKING, Lettering } from './lettering.ts';
import type { Page } from './paper.ts';
import { PdfCanvas, PT } from './pdfCanvas.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** Options of every sheet. */
export interface SheetOptions {
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

/** Most lacking characters that are named one by one. */
const MOST_NAMED = 12;

/** A PDF that is being drawn; only the glyphs used are embedded. The same drawing gives the same bytes. */
export class SheetFile<F extends Face> {
  readonly document: PDFDocument;
  private readonly lib: PdfLib;
  private readonly letters: Readonly<Record<F, Lettering>>;
  private readonly pages: SheetPage<F>[] = [];

  private constructor(lib: PdfLib, document: PDFDocument, letters: Readonly<Record<F, Lettering>>) {
    this.lib = lib;
    this.document = document;
    this.letters = letters;
  }

  /**
   * @param faces the faces that the sheet is set in
   * @returns the file; rejects with an Error where the font or the library cannot be fetched
   */
  static async titled<F extends Face>(title: string, faces: readonly F[]): Promise<SheetFile<F>> {
    // Loaded on demand: these are larger than the rest of the tool's core.
    const [lib, { default: fontkit }, ...files] = await Promise.all([
      import('@cantoo/pdf-lib'),
      import('@cantoo/fontkit'),
      ...faces.map(letterFile),
    ]);
    const document = await lib.PDFDocument.create({ updateMetadata: false });
    document.setTitle(title);
    document.setProducer('Coverwright');
    document.registerFontkit(fontkit);
    const letters = {} as Record<F, Lettering>;
    for (const [i, face] of faces.entries()) {
      const customName = `${SUBSET}+${FACES[face].name}`;
      // Ligatures would hide letters from a text search.
      const features = { liga: false };
      letters[face] = new Lettering(await document.embedFont(files[i]!, { subset: true, customName, features }));
    }
    return new SheetFile(lib, document, letters);
  }

  /** Width of a line of words, mm. */
  widthOf(face: F, text: string, height: number): number {
    return this.letters[face].widthOf(text, height);
  }

  addPage({ width, height }: Page): SheetPage<F> {
    const page = this.document.addPage([width * PT, height * PT]);
    const canvases = Object.entries<Lettering>(this.letters).map(([face, letters]) => [
      face,
      new PdfCanvas(this.lib, page, letters),
    ]);
    const added = { page, in: Object.fromEntries(canvases) as Record<F, PdfCanvas> };
    this.pages.push(added);
    return added;
  }

  /** The finished file; the foot of its first page names the characters that could not be drawn. */
  save({ onLacking }: SheetOptions): Promise<Uint8Array<ArrayBuffer>> {
    const lacking = [...new Set(Object.values<Lettering>(this.letters).flatMap((letters) => [...letters.lacking]))];
    const [first] = this.pages;
    if (lacking.length > 0 && first !== undefined) {
      onLacking?.(lacking);
      const [canvas] = Object.values<PdfCanvas>(first.in);
      canvas!.words(`${LACKING} stands for what this sheet's letters lack: ${named(lacking)}`, [10, 5.5], 2.6, {
        width: first.page.getWidth() / PT - 20,
      });
    }
    return this.document.save({ useObjectStreams: false });
  }
}

/** Characters by their Unicode numbers. */
function named(characters: readonly string[]): string {
  const numbers = characters
    .slice(0, MOST_NAMED)
    .map((character) => `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`);
  const rest = characters.length - numbers.length;
  return `${numbers.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
