import { isRecord, type JobIssue, type JobRecord, jobIssue } from '../../core/index.ts';
import { JOBS } from './jobKind.ts';
import type { ShelfKind } from './shelfKind.ts';

/** Largest file read, in characters: some 100,000 jobs. */
export const MAX_SHELF_CHARACTERS = 100_000_000;

/** The sound documents of a file, and what is wrong with each of the others by its place in the file. */
export interface ReadShelfFile {
  readonly documents: readonly JobRecord[];
  /** Their ids, for each document; undefined where the file gives none. */
  readonly ids: readonly (string | undefined)[];
  readonly broken: readonly BrokenEntry[];
}

/** An entry of a file that could not be read. */
interface BrokenEntry {
  /** Its place in the file, from 0. */
  readonly index: number;
  /** Null without a readable name. */
  readonly name: string | null;
  readonly issues: readonly JobIssue[];
}

const formatOf = ({ records }: ShelfKind): string => `coverwright-${records}`;

/**
 * Writes jobs or leathers as one JSON document, one a line.
 * @param ids of records that are named by them
 */
export const shelfFile = (documents: readonly JobRecord[], kind = JOBS, ids: readonly string[] = []): string =>
  `{"format":"${formatOf(kind)}","version":1,"${kind.records}":[\n${documents
    .map((document, i) => JSON.stringify(ids[i] === undefined ? document : { id: ids[i], ...document }))
    .join(',\n')}\n]}\n`;

/**
 * Reads a file of one document or of many, of any version.
 * @param text of a document, a list of documents, or what `shelfFile` wrote
 * @returns the sound documents, brought to the current version, and the issues of the others; any other file is one broken
 *   entry at index 0; never throws
 */
export function readShelfFile(text: string, kind = JOBS): ReadShelfFile {
  const refused = refusedBy(kind);
  if (text.length > MAX_SHELF_CHARACTERS)
    return refused('too_large', `${millions(text.length)} million characters`, 'import it in parts');
  if (text.trim() === '') return refused('empty', 'nothing', 'choose a file that was exported');
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused('not_json', error instanceof Error ? error.message : String(error), 'choose an undamaged copy');
  }
  const entries = entriesIn(value, kind);
  if (entries === null)
    return refused('choice', `a file of ${kind.records} of another version`, 'open it with a newer version');
  const documents: JobRecord[] = [];
  const ids: (string | undefined)[] = [];
  const broken: BrokenEntry[] = [];
  entries.forEach((entry, index) => {
    const [id, document] = kind.isNamedById ? parted(entry) : [undefined, entry];
    const opened = kind.open(document);
    if (opened.ok) {
      documents.push(opened.document);
      ids.push(id);
    } else broken.push({ index, name: nameIn(entry), issues: opened.issues });
  });
  return { documents, ids, broken };
}

/**
 * Reads a file that the maker chose, as `readShelfFile` does.
 * @returns as `readShelfFile`; a file that the browser cannot read, or that is too large to be tried, is one broken entry
 */
export async function readChosenFile(file: Blob, kind = JOBS): Promise<ReadShelfFile> {
  const refused = refusedBy(kind);
  // A character takes at most 4 bytes, so a larger file is refused whatever is in it.
  if (file.size > 4 * MAX_SHELF_CHARACTERS)
    return refused('too_large', `${millions(file.size)} million bytes`, 'import it in parts');
  try {
    return readShelfFile(await file.text(), kind);
  } catch (error) {
    return refused(
      'unreadable',
      error instanceof Error ? error.message : String(error),
      'choose the file again: it may have been moved, or changed after it was chosen',
    );
  }
}

const millions = (count: number): string => (count / 1e6).toFixed(0);

const refusedBy =
  ({ records }: ShelfKind) =>
  (code: JobIssue['code'], got: string, remedy: string): ReadShelfFile => ({
    documents: [],
    ids: [],
    broken: [{ index: 0, name: null, issues: [jobIssue(code, '(file)', got, `a file of ${records} in JSON`, remedy)] }],
  });

/** One document, a list of them, or an exported shelf; null for a shelf of a later version. */
function entriesIn(value: unknown, kind: ShelfKind): readonly unknown[] | null {
  if (Array.isArray(value)) return value;
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== formatOf(kind))
    return [value];
  const { version, [kind.records]: entries } = value as Partial<Record<string, unknown>>;
  return version === 1 && Array.isArray(entries) ? entries : null;
}

/** The id that stands before a document, where it is one that an address can hold, and the document. */
function parted(entry: unknown): readonly [string | undefined, unknown] {
  if (!isRecord(entry)) return [undefined, entry];
  const { id, ...document } = entry;
  return [typeof id === 'string' && /^[\w-]{1,60}$/.test(id) ? id : undefined, document];
}

function nameIn(entry: unknown): string | null {
  const name = typeof entry === 'object' && entry !== null && 'name' in entry ? entry.name : null;
  return typeof name === 'string' && name.trim() !== '' ? name.slice(0, MAX_SHOWN_NAME) : null;
}

/** Characters of a broken entry's name that are shown; a sound one has at most 200. */
const MAX_SHOWN_NAME = 200;
