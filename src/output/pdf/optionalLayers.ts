import type { PDFDict, PDFName, PDFPage, PDFRef } from '@cantoo/pdf-lib';
import { LAYERS } from '../../core/index.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** What a layer of a drawing is called in the list of a PDF viewer. */
export const optionalName = (layer: string): string => layer.toUpperCase();

const ORDER: readonly string[] = LAYERS.map(optionalName);

/** Layers that a viewer can show and hide (optional content, ISO 32000-1, 8.11); all are shown and printed. */
export class OptionalLayers {
  private readonly lib: PdfLib;
  private readonly context: PDFDict['context'];
  private readonly refs = new Map<string, PDFRef>();
  private readonly names = new Map<PDFPage, Map<string, PDFName>>();

  constructor(lib: PdfLib, context: PDFDict['context']) {
    this.lib = lib;
    this.context = context;
  }

  /** The name by which a page's content refers to a layer. */
  on(page: PDFPage, layer: string): PDFName {
    const { lib, context } = this;
    const known = this.names.get(page) ?? new Map<string, PDFName>();
    this.names.set(page, known);
    let name = known.get(layer);
    if (name === undefined) {
      name = lib.PDFName.of(`Layer${known.size}`);
      known.set(layer, name);
      const { Resources: resources } = page.node.normalizedEntries();
      const key = lib.PDFName.of('Properties');
      const listed = resources.lookupMaybe(key, lib.PDFDict) ?? context.obj({});
      resources.set(key, listed);
      listed.set(name, this.refOf(layer));
    }
    return name;
  }

  private refOf(layer: string): PDFRef {
    let ref = this.refs.get(layer);
    if (ref === undefined) {
      ref = this.context.register(this.context.obj({ Type: 'OCG', Name: this.lib.PDFHexString.fromText(layer) }));
      this.refs.set(layer, ref);
    }
    return ref;
  }

  /** Lists the layers in the file: those of a drawing in their order, then others as they came. */
  write(catalog: PDFDict): void {
    if (this.refs.size === 0) return;
    const { lib, context } = this;
    const place = (name: string): number => (ORDER.includes(name) ? ORDER.indexOf(name) : ORDER.length);
    const refs = [...this.refs].sort(([a], [b]) => place(a) - place(b)).map(([, ref]) => ref);
    const shown = { Name: lib.PDFHexString.fromText('All'), BaseState: 'ON', Order: refs, ON: refs };
    catalog.set(lib.PDFName.of('OCProperties'), context.obj({ OCGs: refs, D: shown }));
  }
}
