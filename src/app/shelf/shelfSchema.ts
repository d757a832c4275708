import type { DBSchema, IDBPDatabase } from 'idb';
import type { JobRecord } from '../../core/index.ts';
import type { JournalHead, JournalRecord } from './journalRecord.ts';

/** A document on a shelf. */
export interface ShelfRecord {
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

/** A job on the shelf. */
export type ShelfJob = ShelfRecord;

/** An earlier state of a document. */
export interface Version {
  readonly id: string;
  readonly revision: number;
  readonly document: JobRecord;
  readonly savedAt: number;
}

export interface ShelfSchema extends DBSchema {
  jobs: { key: string; value: ShelfRecord };
  versions: { key: [id: string, revision: number]; value: Version };
  leathers: { key: string; value: ShelfRecord };
  leatherVersions: { key: [id: string, revision: number]; value: Version };
  journals: { key: string; value: JournalHead };
  steps: { key: [window: string, at: number | string]; value: JournalRecord };
}

export type ShelfDatabase = IDBPDatabase<ShelfSchema>;

/** The key of a store's records is at these of their fields. */
export const STORES = {
  jobs: 'id',
  versions: ['id', 'revision'],
  leathers: 'id',
  leatherVersions: ['id', 'revision'],
  journals: 'window',
  steps: ['window', 'at'],
} as const;

export type StoreName = keyof typeof STORES;

/** Stores of what stands on a shelf, and of its earlier states. */
export type RecordStore = 'jobs' | 'leathers';
export type VersionStore = 'versions' | 'leatherVersions';
