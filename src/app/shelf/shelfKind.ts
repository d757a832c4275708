import type { JobIssue, JobRecord } from '../../core/index.ts';
import type { RecordStore, VersionStore } from './shelfSchema.ts';

/** A document that was opened, in the current version, or what is wrong with it. */
type Opened =
  | { readonly ok: true; readonly document: JobRecord }
  | { readonly ok: false; readonly issues: readonly JobIssue[] };

/** What a shelf keeps: jobs or leathers. */
export interface ShelfKind {
  /** The stores of its records and of their versions; the first names it in notices and in a file of many. */
  readonly records: RecordStore;
  readonly versions: VersionStore;
  /** What a maker calls one of them. */
  readonly noun: string;
  /** Name of one without a name. */
  readonly untitled: string;
  /** Whether others name a record by its id, which then stands in a file of many. */
  readonly isNamedById: boolean;
  /** Opens a document of any version, from outside; never throws. */
  readonly open: (value: unknown) => Opened;
  /** What a copy of a document begins with. */
  readonly copied: (document: JobRecord) => JobRecord;
}
