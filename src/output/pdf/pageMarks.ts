import type { PDFOperator, PDFPage } from '@cantoo/pdf-lib';
import type { OptionalLayers } from './optionalLayers.ts';
import type { Leaf, Structure, TagOptions } from './structure.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/**
 * What the content of one page is: part of the structure, or an artifact such as a rule or a running foot (ISO 32000-1, 14.6 and
 * 14.8.2.2). Nothing is drawn that is neither: words by themselves are a paragraph, lines by themselves an artifact.
 */
export class PageMarks {
  private readonly lib: PdfLib;
  private readonly page: PDFPage;
  readonly structure: Structure;
  private readonly layers: OptionalLayers;
  private isMarked = false;

  constructor(lib: PdfLib, page: PDFPage, structure: Structure, layers: OptionalLayers) {
    this.lib = lib;
    this.page = page;
    this.structure = structure;
    this.layers = layers;
  }

  /** Draws one element of the structure. What is drawn within another element belongs to that one. */
  tagged(role: Leaf, draw: () => void, options: TagOptions = {}): void {
    if (this.isMarked) {
      draw();
      return;
    }
    const id = this.structure.leaf(role, this.page, options);
    this.marked([`/${role}`, `<</MCID ${id}>>`], draw);
  }

  /** Draws what is no part of the text: rules, frames, running heads and feet. */
  artifact(draw: () => void): void {
    if (this.isMarked) draw();
    else this.marked(['/Artifact', '<</Type /Pagination>>'], draw);
  }

  /** Draws on a layer that a viewer can show and hide. */
  optional(layer: string, draw: () => void): void {
    this.begin('/OC', String(this.layers.on(this.page, layer)));
    draw();
    this.page.pushOperators(this.lib.endMarkedContent());
  }

  words(operators: readonly PDFOperator[]): void {
    this.tagged('P', () => this.page.pushOperators(...operators));
  }

  shapes(operators: readonly PDFOperator[]): void {
    this.artifact(() => this.page.pushOperators(...operators));
  }

  private marked([tag, properties]: readonly [string, string], draw: () => void): void {
    this.begin(tag, properties);
    this.isMarked = true;
    draw();
    this.isMarked = false;
    this.page.pushOperators(this.lib.endMarkedContent());
  }

  private begin(tag: string, properties: string): void {
    const { PDFOperator, PDFOperatorNames } = this.lib;
    this.page.pushOperators(PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, [tag, properties]));
  }
}
