import { type Pose, SEQUENCE_STAGES } from './pose.ts';

/** The movements of a pose: how far each has gone, 0 not begun to 1 done. */
export interface Staging {
  /** Lining, then pockets, from the bench to their place on the outside; turned ends from flat to folded. */
  readonly liningLaid: number;
  readonly pocketsLaid: number;
  /** Pockets swung open for the boards. */
  readonly swungOpen: number;
  /** Outside bent to the shape of the open book. */
  readonly wrapped: number;
  /** Book shown at all, and let down onto the outside. */
  readonly bookShown: number;
  readonly letDown: number;
  /** Pockets swung down over the boards, and head and tail closed on them. */
  readonly swungDown: number;
  readonly closedOn: number;
  /** From the widest opening to the smallest. */
  readonly folded: number;
}

/** A smooth step: 0 before `from`, 1 after `to`, level at both. */
export function step(at: number, from: number, to: number): number {
  const x = Math.max(0, Math.min(1, (at - from) / (to - from)));
  return x * x * (3 - 2 * x);
}

const begin = Object.fromEntries(SEQUENCE_STAGES.map(({ id, from }) => [id, from])) as Record<
  (typeof SEQUENCE_STAGES)[number]['id'],
  number
>;

const FINISHED: Staging = {
  liningLaid: 1,
  pocketsLaid: 1,
  swungOpen: 1,
  wrapped: 1,
  bookShown: 1,
  letDown: 1,
  swungDown: 1,
  closedOn: 1,
  folded: 0,
};

/**
 * Splits a pose into its movements. `at` outside 0 to 1 counts as the nearer end.
 * @param goesIn whether the boards go into the cover; if not, the making stops with the pockets open for the book
 */
export function staging(pose: Pose, goesIn: boolean): Staging {
  if (pose.kind === 'opening') return goesIn ? FINISHED : stopped(FINISHED);
  const at = Math.max(0, Math.min(1, pose.at));
  const setIn = (from: number, to: number): number => {
    const length = begin.fold - begin.setIn;
    return step(at, begin.setIn + from * length, begin.setIn + to * length);
  };
  const stage = {
    liningLaid: step(at, begin.pockets / 3, begin.pockets),
    pocketsLaid: step(at, begin.pockets, begin.setIn),
    swungOpen: setIn(0, 0.25),
    wrapped: setIn(0.1, 0.3),
    bookShown: setIn(0.05, 0.25),
    letDown: setIn(0.25, 0.6),
    swungDown: setIn(0.6, 0.85),
    closedOn: setIn(0.85, 1),
    folded: step(at, begin.fold, begin.closed),
  };
  return goesIn ? stage : stopped(stage);
}

/** The book hovers, the outside stays flat, nothing closes. */
const stopped = (stage: Staging): Staging => ({ ...stage, wrapped: 0, swungDown: 0, closedOn: 0, folded: 0 });
