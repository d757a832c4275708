import type { PDFDict, PDFName, PDFObject, PDFPage, PDFRef } from '@cantoo/pdf-lib';
import { PT } from './points.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** Elements that hold others (ISO 32000-1, 14.8.4). */
export type Grouping = 'Document' | 'Sect' | 'Table' | 'TR' | 'L' | 'LI';
/** Elements that hold what is drawn on one page. */
export type Leaf = 'H1' | 'H2' | 'H3' | 'P' | 'TH' | 'TD' | 'Lbl' | 'LBody' | 'Figure' | 'Caption';

/** What a reader of the tags needs beside the role. */
export interface TagOptions {
  /** What a figure shows, in words. */
  readonly alt?: string;
  /** Where a figure lies on its page, mm from the lower left. */
  readonly box?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** Whether a heading cell heads its column or its row. */
  readonly scope?: 'Column' | 'Row';
}

interface Element {
  readonly role: Grouping | Leaf;
  readonly children: Element[];
  readonly options: TagOptions;
  /** Where a leaf is drawn: its page and the number of its content there. */
  readonly content: { readonly page: PDFPage; readonly id: number } | null;
}

/**
 * The logical structure of a file: what is a heading, a paragraph, a cell, a figure, in reading order, which is the order of
 * drawing (ISO 32000-1, 14.7). Written once, when the file is saved.
 */
export class Structure {
  private readonly top: Element = { role: 'Document', children: [], options: {}, content: null };
  private readonly open: Element[] = [this.top];
  private readonly counts = new Map<PDFPage, number>();

  /** Puts what `within` draws into a grouping element, also across pages. */
  group(role: Grouping, within: () => void): void {
    const element: Element = { role, children: [], options: {}, content: null };
    this.open.at(-1)!.children.push(element);
    this.open.push(element);
    within();
    this.open.pop();
  }

  /** Adds a leaf on a page; returns the number of its content there. */
  leaf(role: Leaf, page: PDFPage, options: TagOptions): number {
    const id = this.counts.get(page) ?? 0;
    this.counts.set(page, id + 1);
    this.open.at(-1)!.children.push({ role, children: [], options, content: { page, id } });
    return id;
  }

  /** Writes the tree into the file. */
  write(lib: PdfLib, document: { readonly context: PDFDict['context']; readonly catalog: PDFDict }): void {
    const { context, catalog } = document;
    const root = context.obj({ Type: 'StructTreeRoot' });
    const rootRef = context.register(root);
    const owners = new Map<PDFPage, PDFRef[]>();
    const written = (element: Element, parent: PDFRef): PDFRef => {
      const { role, children, content } = element;
      const dict = context.obj({ Type: 'StructElem', S: role, P: parent });
      const ref = context.register(dict);
      if (content === null) dict.set(lib.PDFName.of('K'), context.obj(children.map((child) => written(child, ref))));
      else {
        dict.set(lib.PDFName.of('Pg'), content.page.ref);
        dict.set(lib.PDFName.of('K'), lib.PDFNumber.of(content.id));
        const owned = owners.get(content.page) ?? [];
        owned[content.id] = ref;
        owners.set(content.page, owned);
      }
      for (const [name, value] of attributes(lib, context, element)) dict.set(name, value);
      return ref;
    };
    root.set(lib.PDFName.of('K'), written(this.top, rootRef));
    const numbers = [...owners].flatMap(([page, refs], i) => {
      page.node.set(lib.PDFName.of('StructParents'), lib.PDFNumber.of(i));
      page.node.set(lib.PDFName.of('Tabs'), lib.PDFName.of('S'));
      return [lib.PDFNumber.of(i), context.register(context.obj(refs))];
    });
    root.set(lib.PDFName.of('ParentTree'), context.register(context.obj({ Nums: numbers })));
    root.set(lib.PDFName.of('ParentTreeNextKey'), lib.PDFNumber.of(owners.size));
    catalog.set(lib.PDFName.of('StructTreeRoot'), rootRef);
    catalog.set(lib.PDFName.of('MarkInfo'), context.obj({ Marked: true }));
  }
}

function attributes(
  lib: PdfLib,
  context: PDFDict['context'],
  { role, options: { alt, box, scope } }: Element,
): [PDFName, PDFObject][] {
  const found: [PDFName, PDFObject][] = [];
  if (alt !== undefined) found.push([lib.PDFName.of('Alt'), lib.PDFHexString.fromText(alt)]);
  if (role === 'Figure' && box !== undefined) {
    const { x, y, width, height } = box;
    const sides = [x, y, x + width, y + height].map((side) => side * PT);
    found.push([lib.PDFName.of('A'), context.obj({ O: 'Layout', Placement: 'Block', BBox: sides })]);
  }
  if (role === 'TH') found.push([lib.PDFName.of('A'), context.obj({ O: 'Table', Scope: scope ?? 'Column' })]);
  return found;
}
