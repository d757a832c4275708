import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One node of the logical structure: a role with nodes under it, or the words of a piece of content. */
export interface ReadTag {
  readonly role: string;
  readonly alt?: string;
  readonly children: readonly ReadTag[];
  /** Words of the content that belongs to it directly. */
  readonly words: string;
}

export interface ReadDocument {
  readonly title: string | undefined;
  readonly language: string | null;
  readonly created: string | undefined;
  readonly id: string;
  readonly isTagged: boolean;
  readonly preferences: Readonly<Record<string, unknown>>;
  /** Fields of the XMP metadata. */
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly layers: readonly string[];
  readonly pages: readonly ReadDocumentPage[];
}

interface ReadDocumentPage {
  readonly tags: ReadTag;
  /** Words that belong to nothing, neither to the structure nor to an artifact. */
  readonly unmarked: string;
  readonly artifacts: string;
}

interface Node {
  readonly role?: string;
  readonly type?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

/** Reads what a PDF says of itself and of its structure, with an independent reader. */
export async function readDocument(bytes: Uint8Array): Promise<ReadDocument> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const about = await file.getMetadata();
  const info = about.info as Readonly<Record<string, string | undefined>>;
  const metadata = about.metadata as unknown as Iterable<[string, unknown]> | null;
  const layers = await file.getOptionalContentConfig();
  const pages: ReadDocumentPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const content = await page.getTextContent({ includeMarkedContent: true });
    const byId = new Map<string, string>();
    const open: string[] = [];
    let [unmarked, artifacts] = ['', ''];
    for (const item of content.items) {
      if ('str' in item) {
        const within = open.findLast((id) => id !== 'layer');
        if (within === undefined) unmarked += item.str;
        else if (within === 'artifact') artifacts += item.str;
        else byId.set(within, `${byId.get(within) ?? ''} ${item.str}`.trim());
      } else if (item.type === 'endMarkedContent') open.pop();
      else if (item.id) open.push(item.id);
      else open.push('tag' in item && item.tag === 'Artifact' ? 'artifact' : 'layer');
    }
    const tagOf = (node: Node): ReadTag => {
      const children = node.children ?? [];
      const own = children.filter(({ type }) => type === 'content');
      return {
        role: node.role ?? '',
        ...(node.alt === undefined ? {} : { alt: node.alt }),
        children: children.filter(({ role }) => role !== undefined).map(tagOf),
        words: own.map(({ id }) => byId.get(id ?? '') ?? '').join(' '),
      };
    };
    const tree = (await page.getStructTree()) as Node | null;
    pages.push({ tags: tagOf(tree ?? {}), unmarked: unmarked.trim(), artifacts });
  }
  const mark = (await file.getMarkInfo()) as { Marked?: boolean } | null;
  const read = {
    title: info.Title,
    language: info.Language ?? null,
    created: info.CreationDate,
    id: file.fingerprints[0] ?? '',
    isTagged: mark?.Marked === true,
    preferences: ((await file.getViewerPreferences()) ?? {}) as Record<string, unknown>,
    metadata: metadata === null ? {} : Object.fromEntries(metadata),
    layers: [...layers].map(([, { name }]) => name ?? ''),
    pages,
  };
  await file.destroy();
  return read;
}

/** All tags of a tree in reading order. */
export const flatTags = (tag: ReadTag): ReadTag[] => [tag, ...tag.children.flatMap(flatTags)];
