import { inCurrentVersion, isRecord } from '../../core/index.ts';
import type { JobKey, Step } from '../state/jobHistory.ts';

/** Bump it when the records below change: a journal of another version is then not read. */
export const JOURNAL_VERSION = 1;

/** What a window's journal holds beside its steps. */
export interface JournalHead {
  readonly window: string;
  readonly version: number;
  /** Position of the open step. */
  readonly at: number;
  /** When it was written, as `mark` of the quick copy. */
  readonly mark: number;
  readonly places: readonly JournalPlace[];
  /** True once its state was offered to another window and answered there. */
  readonly isAnswered?: boolean;
}

/** Place of a job on the shelf; `savedAt` is the position of the step that was saved there last, null for none of these. */
export type JournalPlace = readonly [key: JobKey, place: { id: string; revision: number; savedAt: number | null }];

/** A step at its position on the line of undo and redo, or a long text of steps. */
export type JournalRecord = StepRecord | TextRecord;

interface StepRecord {
  readonly window: string;
  readonly at: number;
  readonly key: JobKey;
  /** JSON. */
  readonly document: string;
  readonly typed: Step['typed'];
}

interface TextRecord {
  readonly window: string;
  readonly at: string;
  readonly text: string;
}

/** A text of more characters, as a drawing of the maker's own, is kept once for all steps that have it. */
const LONG = 2000;

/** Begins what stands in a document for a long text; a text that begins so itself is treated as a long one. */
const MARK = '\u0000';

const isApart = (value: unknown): value is string =>
  typeof value === 'string' && (value.length > LONG || value.startsWith(MARK));

/** The texts of a document that are kept apart. */
export function textsApart(value: unknown): readonly string[] {
  if (isApart(value)) return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsApart) : [];
}

/** A step as it is kept. `nameOf` gives the name of a text that is kept apart. */
export function stepRecord(
  window: string,
  at: number,
  { key, document, typed }: Step,
  nameOf: (text: string) => string,
): StepRecord {
  const written = JSON.stringify(document, (_, value) => (isApart(value) ? MARK + nameOf(value) : value));
  return { window, at, key, document: written, typed };
}

/** The texts that are kept apart, by name. */
export function textsIn(records: readonly { readonly record: unknown }[]): ReadonlyMap<string, string> {
  const texts = records.flatMap(({ record }) =>
    isRecord(record) && typeof record.at === 'string' && typeof record.text === 'string'
      ? ([[record.at, record.text]] as const)
      : [],
  );
  return new Map(texts);
}

/** The step of a record, or null where it is damaged or a text of it is gone. */
export function readStep(record: unknown, texts: ReadonlyMap<string, string>): Step | null {
  if (!isRecord(record) || typeof record.key !== 'string' || typeof record.document !== 'string') return null;
  if (!isTyped(record.typed)) return null;
  const textOf = (name: string): string => {
    const text = texts.get(name);
    if (text === undefined) throw new Error(`The text ${name} is gone.`);
    return text;
  };
  try {
    const { document } = record;
    // The rule that reads every value takes its time, so it is used only where there is such a text.
    const value: unknown = document.includes('"\\u0000')
      ? JSON.parse(document, (_, value) =>
          typeof value === 'string' && value.startsWith(MARK) ? textOf(value.slice(MARK.length)) : value,
        )
      : JSON.parse(document);
    return isRecord(value) ? { key: record.key, document: inCurrentVersion(value), typed: record.typed } : null;
  } catch {
    return null;
  }
}

const isTyped = (typed: unknown): typed is Step['typed'] =>
  isRecord(typed) &&
  Object.values(typed).every(
    (each) => isRecord(each) && typeof each.text === 'string' && (each.unit === 'mm' || each.unit === 'in'),
  );

/** Whether a record is the head of a journal that this version reads. */
export function isHead(record: unknown): record is JournalHead {
  return (
    isRecord(record) &&
    record.version === JOURNAL_VERSION &&
    typeof record.window === 'string' &&
    Number.isInteger(record.at) &&
    Number.isFinite(record.mark) &&
    Array.isArray(record.places) &&
    record.places.every(isPlace)
  );
}

function isPlace(entry: unknown): boolean {
  if (!Array.isArray(entry) || typeof entry[0] !== 'string' || !isRecord(entry[1])) return false;
  const { id, revision, savedAt } = entry[1];
  return typeof id === 'string' && Number.isInteger(revision) && (savedAt === null || Number.isInteger(savedAt));
}
