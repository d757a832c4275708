import { isRecord, type JobRecord } from '../../core/index.ts';
import type { ShelfKind } from './shelfKind.ts';

/** A record of the shelf's database that cannot be read: left as it is, reported, and exported unchanged. */
export interface DamagedRecord {
  readonly key: IDBValidKey;
  readonly record: unknown;
  readonly why: string | null;
}

const isTime = (value: unknown): boolean => Number.isFinite(value);

/** Whether a value is an object that can be exported as JSON. */
function isDocument(value: unknown): boolean {
  try {
    return isRecord(value) && JSON.stringify(value) !== undefined;
  } catch {
    return false;
  }
}

const FIELDS: Readonly<Record<string, (value: unknown) => boolean>> = {
  id: (value) => typeof value === 'string',
  revision: Number.isInteger,
  name: (value) => typeof value === 'string',
  document: isDocument,
  savedAt: isTime,
  removedAt: (value) => value === null || isTime(value),
};

/** What a maker calls the fields. */
const WORDS: Readonly<Record<string, string>> = {
  id: 'place',
  revision: 'count of saves',
  document: 'measures',
  savedAt: 'day of saving',
  removedAt: 'day of removal',
};

/** Which fields of a record cannot be read, in words; null for a sound record. */
export function whyDamaged(record: unknown): string | null {
  const names = Object.entries(FIELDS)
    .filter(([name, isSound]) => !isSound(isRecord(record) ? record[name] : undefined))
    .map(([name]) => WORDS[name] ?? name);
  const listed = [names.slice(0, -1).join(', '), ...names.slice(-1)].filter((said) => said !== '');
  return names.length === 0 ? null : `${listed.join(' and ')} cannot be read`;
}

/** The document within a damaged record, where it can still be opened, as an object or as its text; null where it cannot. */
export function documentWithin(record: unknown, { open }: Pick<ShelfKind, 'open'>): JobRecord | null {
  const kept = isRecord(record) ? record.document : undefined;
  const document = typeof kept === 'string' ? parsedText(kept) : kept;
  return isDocument(document) && open(document).ok ? (document as JobRecord) : null;
}

function parsedText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The fields of a damaged record that can be read. */
export function soundFields(record: unknown): Readonly<Record<string, unknown>> {
  const entries = isRecord(record) ? Object.entries(record) : [];
  return Object.fromEntries(entries.filter(([name, value]) => FIELDS[name]?.(value) === true));
}

export const isSound = (record: unknown): boolean => whyDamaged(record) === null;

/** A version's record has a document and a time; the database has checked its key. */
export const isSoundVersion = (record: unknown): boolean =>
  isRecord(record) && isDocument(record.document) && isTime(record.savedAt);

/** Any record as JSON; values that JSON lacks become text. */
export function rawText(record: unknown): string {
  const seen = new Set<unknown>();
  const plain = (_name: string, value: unknown): unknown => {
    if (typeof value === 'bigint' || typeof value === 'number') return Number.isFinite(value) ? value : String(value);
    if (typeof value !== 'object' || value === null) return value;
    if (seen.has(value)) return '(stands further up)';
    seen.add(value);
    return value instanceof Map || value instanceof Set ? [...value] : value;
  };
  return `${JSON.stringify(record, plain, 2)}\n`;
}
