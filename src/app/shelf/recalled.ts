import { type JobHistory, MAX_STEPS, noted, type ShelfPlace, type Step, stepOf } from '../state/jobHistory.ts';

/** The history of an earlier visit. */
export interface Recalled {
  readonly past: readonly Step[];
  /** The state that was open; null where it cannot be read. */
  readonly present: Step | null;
  readonly future: readonly Step[];
  readonly places: JobHistory['places'];
}

/**
 * A history with an earlier one round it. Where the page started with another state than was open then, as after a save in
 * another window, that state is a step after it. What was done since the start stays.
 */
export function recalled(state: JobHistory, { past, present, future, places }: Recalled): JobHistory {
  const first = state.past[0] ?? stepOf(state);
  const goesOn = present === null || isSameStep(present, first);
  const isAtStart = state.past.length === 0 && state.future.length === 0;
  const { made } = first.document;
  // What hands have done since stays done, whatever is undone.
  const isMadeSince = JSON.stringify(made) !== JSON.stringify(present?.document.made ?? made);
  const withMade = (step: Step): Step => (isMadeSince && step.key === first.key ? noted(step, made) : step);
  const before = [...past, ...(goesOn ? [] : [present])].map(withMade);
  return {
    ...state,
    past: [...before, ...state.past].slice(-MAX_STEPS),
    future: goesOn && isAtStart ? future.map(withMade) : state.future,
    editing: state.editing && {
      ...state.editing,
      before: recalled(state.editing.before, { past, present, future, places }),
    },
    places: new Map([...places, ...[...state.places].filter(([key, place]) => !isPlaceOf(places.get(key), place))]),
  };
}

/** Whether a recalled place is the one known, so that it may know more of it. */
const isPlaceOf = (recalled: ShelfPlace | undefined, { id, revision, document }: ShelfPlace): boolean =>
  document === null && recalled?.id === id && recalled.revision === revision;

/** Whether two steps, which may have been read from a store, are one. */
export const isSameStep = (a: Step, b: Step): boolean =>
  a.key === b.key && JSON.stringify([a.document, a.typed]) === JSON.stringify([b.document, b.typed]);
