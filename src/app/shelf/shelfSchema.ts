import type { DBSchema, IDBPDatabase } from 'idb';
import type { JobRecord } from '../../core/index.ts';
import type { JournalHead, JournalRecord } from './journalRecord.ts';

/** A job on the shelf. */
export interface ShelfJob {
  readonly id: string;
  /** Counts the saves; a window that saves must name the one it started from. */
  readonly revision: number;
  readonly name: string;
  readonly document: JobRecord;
  /** Times in ms since 1970. */
  readonly savedAt: number;
  /** When it was removed; null while it stands on the shelf. */
  readonly removedAt: number | null;
}

/** An earlier state of a job. */
export interface JobVersion {
  readonly id: string;
  readonly revision: number;
  readonly document: JobRecord;
  readonly savedAt: number;
}

export interface ShelfSchema extends DBSchema {
  jobs: { key: string; value: ShelfJob };
  versions: { key: [id: string, revision: number]; value: JobVersion };
  journals: { key: string; value: JournalHead };
  steps: { key: [window: string, at: number | string]; value: JournalRecord };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

/** The key of a store's records is at these of their fields. */
export const STORES = {
  jobs: 'id',
  versions: ['id', 'revision'],
  journals: 'window',
  steps: ['window', 'at'],
} as const;

export type StoreName = keyof typeof STORES;
