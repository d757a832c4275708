import type { JobDocument } from '../../core/index.ts';
import type { JobKey } from './jobHistory.ts';

/** Where a job stands on the shelf, and which of its saves this window knows. */
export interface ShelfPlace {
  readonly id: string;
  readonly revision: number;
  /** What stands there as of that save; null where it is not known to be what is on the bench. */
  readonly document: JobDocument | null;
}

const places = new WeakMap<JobKey, ShelfPlace>();

/** The place of a job on the bench; undefined while it has none. */
export const placeOf = (key: JobKey): ShelfPlace | undefined => places.get(key);

export function setPlace(key: JobKey, place: ShelfPlace): void {
  places.set(key, place);
}
