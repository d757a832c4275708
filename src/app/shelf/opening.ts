import type { JobKey, ShelfPlace, Written } from '../state/jobHistory.ts';
import type { Kept } from '../state/keptJob.ts';
import type { ShelfJob } from './shelfSchema.ts';

/** A job to open. */
export interface Opening {
  readonly written: Written;
  /** Undefined for one that is not on the shelf. */
  readonly place: ShelfPlace | undefined;
  /** Key of the job in an earlier visit. */
  readonly key?: JobKey | undefined;
  /** When it was saved on the shelf, ms since 1970; null for the quick copy. */
  readonly savedAt: number | null;
}

/** What the page starts with. */
export interface Start {
  /** Null where nothing is kept: the example. */
  readonly first: Opening | null;
  /** Another kept state that differs, to be offered. */
  readonly other: Opening | null;
  /** The shelf's state of the first job, to be kept as a version because the next save overwrites it. */
  readonly aside: ShelfJob | null;
}

/** The start of a first visit. */
export const NOTHING: Start = { first: null, other: null, aside: null };

/** A kept copy as a job to open. Apart from `chooseStart`, which comes with the shelf, so that it opens without one. */
export const fromCopy = (kept: Kept): Opening => ({
  written: kept,
  place: placeOfCopy(kept),
  key: kept.key,
  savedAt: null,
});

/** The place that a copy had on the shelf. */
export const placeOfCopy = ({ place, document }: Kept): ShelfPlace | undefined =>
  place && { id: place.id, revision: place.revision, document: place.isSaved ? document : null };
