import { EXAMPLE_JOBS, inCurrentVersion, type JobDocument } from '../../core/index.ts';
import type { ShelfPlace, Written } from '../state/jobHistory.ts';
import type { Kept } from '../state/keptJob.ts';
import type { ShelfJob } from './shelfDatabase.ts';

/** A job to open. */
export interface Opening {
  readonly written: Written;
  /** Undefined for one that is not on the shelf. */
  readonly place: ShelfPlace | undefined;
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

/**
 * Chooses between the quick copy of the open job and the shelf. The copy is written at every key but reaches the disk
 * seconds later, the shelf is written after a pause but is on disk at once; so after a kill either may be the older one.
 *
 * A later save of the same job is recognised by its revision, which does not depend on a clock; of another job by its time.
 * @param kept the quick copy, null where there is none
 * @param standing the jobs on the shelf, last saved first
 */
export function chooseStart(kept: Kept | null, standing: readonly ShelfJob[]): Start {
  const newest = standing[0];
  if (kept === null) return newest === undefined ? NOTHING : only(fromShelf(newest));
  const { place, mark = Number.POSITIVE_INFINITY } = kept;
  const own = standing.find(({ id }) => id === place?.id);

  if (newest !== undefined && newest.savedAt > mark && newest !== own) {
    if (isSame(newest.document, kept.document)) return only(goingOnFrom(newest, kept, kept.document));
    const other = hasItsOwn(kept) ? fromCopy(kept, unsavedPlace(kept, own)) : null;
    return { first: fromShelf(newest), other, aside: null };
  }
  if (own === undefined) return only(fromCopy(kept, keptPlace(kept)));
  if (isSame(own.document, kept.document)) return only(goingOnFrom(own, kept, kept.document));
  // The shelf has nothing later: the copy continues from it.
  if (own.revision <= place!.revision) return only(goingOnFrom(own, kept, null));
  if (place!.isSaved) return only(fromShelf(own));
  const [copy, saved] = [goingOnFrom(own, kept, null), fromShelf(own)];
  return mark > own.savedAt ? { first: copy, other: saved, aside: own } : { first: saved, other: copy, aside: own };
}

/** As `chooseStart`, where the copy is shown already: offers what should have been shown instead. */
export function chooseLate(kept: Kept | null, standing: readonly ShelfJob[]): Start {
  const start = chooseStart(kept, standing);
  if (start.first?.savedAt == null) return start;
  if (kept === null) return { first: null, other: start.first, aside: null };
  const own = standing.find(({ id }) => id === kept.place?.id);
  if (own === undefined || own.id !== start.first.place?.id)
    return { first: fromCopy(kept, unsavedPlace(kept, own)), other: start.first, aside: null };
  // The copy is not saved until it is edited; what it then overwrites is kept as a version.
  return { first: goingOnFrom(own, kept, kept.document), other: start.first, aside: own };
}

const NOTHING: Start = { first: null, other: null, aside: null };

const only = (first: Opening): Start => ({ first, other: null, aside: null });

const fromShelf = ({ id, revision, document, savedAt }: ShelfJob): Opening => ({
  written: { document, typed: {} },
  place: { id, revision, document },
  savedAt,
});

const fromCopy = (written: Kept, place: ShelfPlace | undefined): Opening => ({ written, place, savedAt: null });

/** The copy as the next state of a job on the shelf; `document` is the state that need not be saved again. */
const goingOnFrom = ({ id, revision }: ShelfJob, kept: Kept, document: JobDocument | null): Opening =>
  fromCopy(kept, { id, revision, document });

const keptPlace = ({ place, document }: Kept): ShelfPlace | undefined =>
  place && { id: place.id, revision: place.revision, document: place.isSaved ? document : null };

/** The place of a copy that was not saved, unless its job was saved meanwhile: it then becomes a new job. */
const unsavedPlace = (kept: Kept, own: ShelfJob | undefined): ShelfPlace | undefined =>
  own !== undefined && own.revision === kept.place?.revision ? keptPlace(kept) : undefined;

const EXAMPLES = new Set(EXAMPLE_JOBS.map(({ document }) => JSON.stringify(document)));

/** Whether a document is an unchanged example, which is not kept on the shelf. */
export const isExample = (document: JobDocument): boolean => EXAMPLES.has(JSON.stringify(inCurrentVersion(document)));

/** Whether a copy holds a state that is kept nowhere else. */
const hasItsOwn = ({ place, document }: Kept): boolean => (place === undefined ? !isExample(document) : !place.isSaved);

const isSame = (a: JobDocument, b: JobDocument): boolean =>
  JSON.stringify(inCurrentVersion(a)) === JSON.stringify(inCurrentVersion(b));
