import type { PDFFont, PDFHexString } from '@cantoo/pdf-lib';
import { visualRuns } from './visualRuns.ts';

/** Stands for a sign (a grapheme cluster, Unicode Standard Annex 29) that the font lacks; the sheet says which it was. */
export const LACKING = '□';

/** Characters that are not drawn by themselves: joiners, direction marks, variation selectors. */
const UNSEEN = /\p{Default_Ignorable_Code_Point}|\p{Cc}/gu;

/** Size at which the width of a character is measured once, for all sizes. */
const UNIT = 1000;

/** One face of a sheet's embedded font. */
export class Lettering {
  /** Signs to draw that the font lacks, in the order of their first use. */
  readonly lacking = new Set<string>();
  private readonly font: PDFFont;
  private readonly known: ReadonlySet<number>;
  private readonly widths = new Map<string, number>();

  constructor(font: PDFFont) {
    this.font = font;
    this.known = new Set(font.getCharacterSet());
  }

  get ref() {
    return this.font.ref;
  }

  /** Width of a line of words at a letter height, in the unit of the height. */
  widthOf(text: string, height: number): number {
    let sum = 0;
    for (const character of this.drawable(text)) sum += this.widthOfCharacter(character);
    return (sum * height) / UNIT;
  }

  /** The words as glyph numbers; this also puts the glyphs into the file. */
  encoded(text: string): readonly PDFHexString[] {
    return visualRuns(this.drawable(text, this.lacking)).map((run) => this.font.encodeText(run));
  }

  private widthOfCharacter(character: string): number {
    let width = this.widths.get(character);
    if (width === undefined) {
      width = this.font.widthOfTextAtSize(character, UNIT);
      this.widths.set(character, width);
    }
    return width;
  }

  private drawable(text: string, lacking?: Set<string>): string {
    const written = text.normalize('NFC').replace(/\s/gu, ' ');
    if (this.has(written)) return written.replace(UNSEEN, '');
    // What a reader takes for one sign, as an emoji of several characters, is one box.
    return Array.from(new Intl.Segmenter().segment(written), ({ segment }) => {
      if (this.has(segment)) return segment.replace(UNSEEN, '');
      lacking?.add(segment);
      return LACKING;
    }).join('');
  }

  private has(text: string): boolean {
    return Array.from(text.replace(UNSEEN, '')).every((character) => this.known.has(character.codePointAt(0)!));
  }
}
