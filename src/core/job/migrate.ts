import { isRecord, type JobDocument, patched, valueAt } from './jobDocument.ts';
import { type JobIssue, jobIssue } from './jobIssue.ts';
import type { JobPath } from './jobPath.ts';

/** A document as read from JSON, of whatever version. */
export type JobRecord = JobDocument;

/** Brings a document one version further. It may trust nothing inside the document, and must not change it in place. */
export type Migration = (document: JobRecord) => JobRecord;

/**
 * The steps from version 1 on: the first leads from version 1 to 2, the next from 2 to 3. Being a list it has no gaps,
 * and the current version is one more than its length.
 */
export const JOB_MIGRATIONS: readonly Migration[] = [toVersion2, toVersion3];

/** Strain limit that version 1 took where none was typed, and wrote out. */
const UNTESTED_LIMIT = 0.45;

/**
 * Ease left out was 1 mm; from version 2 on it is sized by the doubt. A strain limit of 45 % was the default written out; a
 * limit now says that the leather was tested.
 */
function toVersion2(document: JobRecord): JobRecord {
  const edges = ['ease.foreEdge_mm', 'ease.head_mm', 'ease.tail_mm'] as const;
  const limits = ['outside', 'pocket', 'lining'].map((piece) => `leather.${piece}.strainLimit` as JobPath);
  // An ease that is no object is refused by `parseJob`, as it was.
  const isEased = document.ease === undefined || isRecord(document.ease);
  return patched(document, [
    ...edges.filter((path) => isEased && valueAt(document, path) === undefined).map((path) => ({ path, value: 1 })),
    ...limits.filter((path) => valueAt(document, path) === UNTESTED_LIMIT).map((path) => ({ path, value: undefined })),
  ]);
}

/** Share of the board that pockets covered up to version 2, where the job gave no depth. */
const HALF_COVERED = 0.5;

/** Pockets covered half of the board; from version 3 on it is a field, usually two thirds. */
function toVersion3(document: JobRecord): JobRecord {
  const { pockets } = document;
  // Pockets that are no object are refused by `parseJob`, as they were.
  const isLeftOut = pockets === undefined || (isRecord(pockets) && pockets.share === undefined);
  return isLeftOut ? patched(document, [{ path: 'pockets.share', value: HALF_COVERED }]) : document;
}

export type Migrated =
  | { readonly ok: true; readonly document: unknown }
  | { readonly ok: false; readonly issue: JobIssue };

/**
 * Brings a job document of any earlier version to the current one.
 * @param value anything; what carries no version number comes back as it is, for `parseJob` to say what is wrong with it
 * @param steps the chain of steps, oldest first
 * @returns the document in the current version, or one issue: a version to come, or a document that does not hold what
 *   its version promises; never throws and never changes `value`
 */
export function migrate(value: unknown, steps: readonly Migration[] = JOB_MIGRATIONS): Migrated {
  if (!isRecord(value) || !Number.isInteger(value.version)) return { ok: true, document: value };
  const current = steps.length + 1;
  const version = value.version as number;
  if (version < 1 || version > current)
    return refused(
      version,
      current === 1 ? '1' : `1 to ${current}`,
      version > current ? 'open it with a newer version of this program' : 'check the number',
    );
  let document: JobRecord = value;
  for (let at = version; at < current; at++) {
    try {
      document = { ...steps[at - 1]!(document), version: at + 1 };
    } catch {
      return refused(version, `a document of version ${version} as it was saved`, 'take an undamaged copy of the file');
    }
  }
  return { ok: true, document };
}

const refused = (version: number, allowed: string, remedy: string): Migrated => ({
  ok: false,
  issue: jobIssue('choice', 'version', String(version), allowed, remedy),
});

/** Brings a document of an earlier version to the current one, so that its fields stand where the form looks for them. */
export function inCurrentVersion(document: JobDocument): JobDocument {
  const migrated = migrate(document);
  // What cannot be brought further stays as it is: parsing it then says what is wrong.
  return migrated.ok ? (migrated.document as JobDocument) : document;
}
