import type { JobDocument } from '../../core/job/jobDocument.ts';
import type { JobKey } from './jobHistory.ts';

/** Where a job stands on the shelf, and which of its saves this window knows. */
export interface Place {
  readonly id: string;
  readonly revision: number;
  /** What stands there as of that save; null where it is not known to be what is on the bench. */
  readonly document: JobDocument | null;
}

const places = new WeakMap<JobKey, Place>();

/** The place of a job on the bench; undefined while it has none. */
export const placeOf = (key: JobKey): Place | undefined => places.get(key);

export function setPlace(key: JobKey, place: Place): void {
  places.set(key, place);
}
