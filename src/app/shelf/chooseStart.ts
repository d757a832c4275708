import { EXAMPLE_JOBS, inCurrentVersion, type JobDocument } from '../../core/index.ts';
import type { JobKey, ShelfPlace } from '../state/jobHistory.ts';
import type { Kept } from '../state/keptJob.ts';
import { fromCopy, NOTHING, type Opening, placeOfCopy, type Start } from './opening.ts';
import type { ShelfJob } from './shelfSchema.ts';

/**
 * Chooses between the open job as it was kept and the shelf. The quick copy reaches the disk seconds after a key, the shelf
 * is written after a pause, and a browser may have no journal; so after a kill either may be the older one.
 *
 * A later save of the same job is recognised by its revision, which does not depend on a clock; of another job by its time.
 * @param kept the quick copy or what the journal has later, null where there is neither
 * @param standing the jobs on the shelf, last saved first
 */
export function chooseStart(kept: Kept | null, standing: readonly ShelfJob[]): Start {
  const newest = standing[0];
  if (kept === null) return newest === undefined ? NOTHING : only(fromShelf(newest));
  const { mark = Number.POSITIVE_INFINITY } = kept;
  // Its first save stands under its key, whether or not the window heard of it.
  const place = kept.place ?? (kept.key === undefined ? undefined : { id: kept.key, revision: 0, isSaved: false });
  const own = standing.find(({ id }) => id === place?.id);

  if (newest !== undefined && newest.savedAt > mark && newest !== own) {
    if (isSame(newest.document, kept.document)) return only(goingOnFrom(newest, kept, kept.document));
    const other = hasItsOwn(kept) ? { ...fromCopy(kept), place: unsavedPlace(kept, own) } : null;
    return { first: fromShelf(newest), other, aside: null };
  }
  if (own === undefined) return only(fromCopy(kept));
  if (isSame(own.document, kept.document)) return only(goingOnFrom(own, kept, kept.document));
  // The shelf has nothing later: the copy continues from it.
  if (own.revision <= place!.revision) return only(goingOnFrom(own, kept, null));
  if (place!.isSaved) return only(fromShelf(own, kept.key));
  const [copy, saved] = [goingOnFrom(own, kept, null), fromShelf(own, kept.key)];
  return mark > own.savedAt ? { first: copy, other: saved, aside: own } : { first: saved, other: copy, aside: own };
}

/**
 * As `chooseStart`, where the copy is shown already: offers what should have been shown instead.
 * @param journalled the copy, or what the journal has later
 */
export function chooseLate(copy: Kept | null, journalled: Kept | null, standing: readonly ShelfJob[]): Start {
  const start = chooseStart(journalled, standing);
  if (start.first === null) return start;
  if (copy === null) return { first: null, other: start.first, aside: null };
  const own = standing.find(({ id }) => id === (copy.place?.id ?? copy.key));
  const isShown = start.first.savedAt === null && isSame(start.first.written.document, copy.document);
  if (isShown) return start;
  if (own === undefined || own.id !== start.first.place?.id)
    return { first: { ...fromCopy(copy), place: unsavedPlace(copy, own) }, other: start.first, aside: null };
  // The copy is not saved until it is edited; what it then overwrites is kept as a version.
  return { first: goingOnFrom(own, copy, copy.document), other: start.first, aside: own };
}

const only = (first: Opening): Start => ({ ...NOTHING, first });

const fromShelf = ({ id, revision, document, savedAt }: ShelfJob, key?: JobKey): Opening => ({
  written: { document, typed: {} },
  place: { id, revision, document },
  key,
  savedAt,
});

/** The copy as the next state of a job on the shelf; `document` is the state that need not be saved again. */
const goingOnFrom = ({ id, revision }: ShelfJob, kept: Kept, document: JobDocument | null): Opening => ({
  ...fromCopy(kept),
  place: { id, revision, document },
});

/** The place of a copy that was not saved, unless its job was saved meanwhile: it then becomes a new job. */
export const unsavedPlace = (kept: Kept, own: ShelfJob | undefined): ShelfPlace | undefined =>
  own !== undefined && own.revision === kept.place?.revision ? placeOfCopy(kept) : undefined;

const EXAMPLES = new Set(EXAMPLE_JOBS.map(({ document }) => JSON.stringify(document)));

/** Whether a document is an unchanged example, which is not kept on the shelf. */
export const isExample = (document: JobDocument): boolean => EXAMPLES.has(JSON.stringify(inCurrentVersion(document)));

/** Whether a copy holds a state that is kept nowhere else. */
export const hasItsOwn = ({ place, document }: Kept): boolean =>
  place === undefined ? !isExample(document) : !place.isSaved;

const isSame = (a: JobDocument, b: JobDocument): boolean =>
  JSON.stringify(inCurrentVersion(a)) === JSON.stringify(inCurrentVersion(b));
