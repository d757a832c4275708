import { createStore } from 'zustand/vanilla';
import type { FitTarget, JobDocument } from '../../core/index.ts';

/** What is asked of Explore. */
export interface ExploreChoice {
  readonly fieldId: string;
  readonly resultId: string;
  /** Factor on the usual range of the field. */
  readonly zoom: number;
  /** Value of the field at which the curve is read; null for the job's own. */
  readonly reading: number | null;
  readonly pinned: JobDocument | null;
  readonly overlayId: string;
  readonly target: FitTarget;
}

/** The field of the first question, which every job has. */
export const FIRST_FIELD = 'leather.outside';

/** The question in hand, which stays while the maker is elsewhere; at first, how much more a heavier leather needs. */
export const exploreChoice = createStore<ExploreChoice>()(() => ({
  fieldId: FIRST_FIELD,
  resultId: 'foreEdgeAllowance',
  zoom: 1,
  reading: null,
  pinned: null,
  overlayId: 'none',
  target: 'all',
}));
