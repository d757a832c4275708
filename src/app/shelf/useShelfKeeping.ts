import { use, useCallback, useEffect, useState } from 'react';
import { isRecord, type JobDocument } from '../../core/index.ts';
import { useBench, useBenchStore, useDispatch } from '../state/BenchContext.tsx';
import type { Bench } from '../state/bench.ts';
import { type JobKey, placeOf, type ShelfPlace } from '../state/jobHistory.ts';
import { isExample } from './chooseStart.ts';
import { askForLastingStorage, isLasting, type Lasting } from './lastingStorage.ts';
import { type LeftState, leftOver } from './leftOver.ts';
import type { Opening } from './opening.ts';
import { ShelfKeeper } from './ShelfKeeper.ts';
import { StartedContext } from './StartedContext.ts';
import { COUNTS, type Lost } from './shelfCount.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

/** What happened to the open job on the shelf: another window saved or removed it, or edits here became a new job. */
export type Elsewhere = 'saved' | 'removed' | 'parted';

/** A kept state that is not the one shown. */
export interface Offered {
  readonly opening: Opening;
  /** True for one that a window which is gone has left. */
  readonly isLeft: boolean;
  /** How many more wait. */
  readonly more: number;
}

export interface ShelfKeeping {
  readonly trouble: ShelfTrouble | null;
  readonly elsewhere: Elsewhere | null;
  /** Opens the open job as another window has saved it. */
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
  /** The next of the other states that were kept when the page started. */
  readonly offered: Offered | null;
  readonly showOffered: () => void;
  readonly dismissOffered: () => void;
  /** Covers that the browser has deleted. */
  readonly lost: Lost | null;
  readonly dismissLost: () => void;
  /** Deletes a shelf that cannot be read, with all that is on it, and puts the open job on a new one. */
  readonly beginAnew: () => Promise<void>;
  /** Whether the browser keeps the shelf; null until it was asked, with the first save. */
  readonly lasting: Lasting | null;
  readonly askAgain: () => void;
  /** Writes a waiting state at once. */
  readonly flush: () => Promise<void>;
}

/** Keeps the open job on the shelf, and watches what other windows do to it. An untouched example is not kept. */
export function useShelfKeeping(): ShelfKeeping {
  const { getState, subscribe } = useBenchStore();
  const dispatch = useDispatch();
  const key = useBench(({ history }) => history.key);
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const [elsewhere, setElsewhere] = useState<Elsewhere | null>(null);
  const [lasting, setLasting] = useState<Lasting | null>(null);
  const { start, late, journal } = use(StartedContext)!;
  const [other, setOther] = useState(start.other);
  const [left, setLeft] = useState<readonly LeftState[]>([]);
  const [lost, setLost] = useState<Lost | null>(null);
  // A save before the shelf has answered could make a second job.
  const [isAsked, setAsked] = useState(late === null);
  const [keeper] = useState(() => {
    const places = {
      get: (job: JobKey) => getState().history.places.get(job),
      set: (job: JobKey, place: ShelfPlace) => dispatch({ type: 'place', key: job, place }),
    };
    return new ShelfKeeper(theShelf, places, (kept) => {
      setTrouble(kept.what === 'trouble' ? kept.trouble : null);
      if (kept.what === 'trouble') return;
      if (getState().history.key === kept.key) setElsewhere(kept.what === 'parted' ? 'parted' : null);
      void askOnce().then(setLasting);
    });
  });

  useEffect(() => {
    void late?.then((said) => {
      const { place, key } = said.first ?? {};
      if (place !== undefined && key !== undefined) dispatch({ type: 'place', key, place });
      setOther(said.other);
      setAsked(true);
    });
  }, [late, dispatch]);

  useEffect(() => {
    if (!isAsked) return;
    const keep = ({ history }: Bench, before?: Bench): void => {
      const { document, parsed } = history;
      if (document === before?.history.document && history.key === before.history.key) return;
      if (parsed.ok && (placeOf(history) !== undefined || !isExample(document))) keeper.keep(history.key, document);
    };
    keep(getState());
    return subscribe(keep);
  }, [isAsked, keeper, getState, subscribe]);

  /** Puts the open job on the shelf again, which has lost it. */
  const putBack = useCallback(async (): Promise<void> => {
    await keeper.flush();
    const { history } = getState();
    const { key, document, parsed } = history;
    const place = placeOf(history);
    if (!parsed.ok || (place === undefined && isExample(document))) return;
    const id = place?.id ?? key;
    const standing = await theShelf.get(id);
    if (standing.ok || standing.trouble.kind !== 'missing') return;
    const added = await theShelf.add(document, id);
    if (!added.ok) return setTrouble(added.trouble);
    dispatch({ type: 'place', key, place: { id: added.value.id, revision: added.value.revision, document } });
  }, [keeper, getState, dispatch]);

  useEffect(() => {
    void Promise.resolve(late).then(() => {
      const found = COUNTS.jobs.lost();
      setLost(found);
      if (found !== null) void putBack();
    });
  }, [late, putBack]);

  useEffect(() => {
    let isWanted = true;
    void journal.then(async (kept) => {
      if (kept === null) return;
      // Its history is then back.
      await kept.flush();
      const offered = (await late)?.other ?? start.other;
      const known = (): readonly JobDocument[] => {
        const { history } = getState();
        const steps = [...history.past, history, ...history.future, ...(offered === null ? [] : [offered.written])];
        return steps.map(({ document }) => document);
      };
      const states = await leftOver(theShelf.connection, navigator.locks, known, Date.now());
      if (isWanted) setLeft(states);
    });
    return () => {
      isWanted = false;
    };
  }, [journal, late, start, getState]);

  useEffect(() => void isLasting(navigator.storage).then((is) => is && setLasting('granted')), []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the note about one job does not concern the next
  useEffect(() => setElsewhere(null), [key]);

  useEffect(() => {
    const onHide = (): void => {
      if (window.document.visibilityState === 'hidden') void keeper.flush();
    };
    window.document.addEventListener('visibilitychange', onHide);
    return () => window.document.removeEventListener('visibilitychange', onHide);
  }, [keeper]);

  useEffect(() => {
    /** Takes over what another window has ticked; false where more than that is another, here or there. */
    const tookTicks = async (id: string): Promise<boolean> => {
      const { history } = getState();
      const theirs = await theShelf.get(id);
      if (!theirs.ok || getState().history !== history || placeOf(history)?.document !== history.document) return false;
      const { revision, document } = theirs.value;
      if (withoutTicks(document) !== withoutTicks(history.document)) return false;
      dispatch({ type: 'made', made: isRecord(document.made) ? document.made : {} });
      dispatch({ type: 'place', key: history.key, place: { id, revision, document: getState().history.document } });
      return true;
    };
    return theShelf.watch(async ({ id, what, revision }) => {
      const place = placeOf(getState().history);
      if (place?.id !== id || place.revision >= revision) return;
      if (what === 'saved' && (await tookTicks(id))) return;
      setElsewhere(what === 'removed' ? 'removed' : 'saved');
    });
  }, [getState, dispatch]);

  const showTheirs = async (): Promise<void> => {
    await keeper.flush();
    const place = placeOf(getState().history);
    const theirs = place && (await theShelf.get(place.id));
    if (!theirs) return;
    if (!theirs.ok) return setTrouble(theirs.trouble);
    const { id, revision, document } = theirs.value;
    dispatch({ type: 'open', document, place: { id, revision, document } });
  };

  const opening = other ?? left[0]?.opening;
  const more = left.length - (other === null ? 1 : 0);
  const offered = opening === undefined ? null : { opening, isLeft: other === null, more };

  const dismissOffered = (): void => {
    setOther(null);
    if (other !== null) return;
    void left[0]?.close();
    setLeft(left.slice(1));
  };

  const showOffered = (): void => {
    if (opening === undefined) return;
    const { written, place } = opening;
    const { history } = getState();
    // Another state of the same job is its next revision, so that no second job is made.
    const isSameJob = opening.key === history.key || (place !== undefined && place.id === placeOf(history)?.id);
    dispatch({ type: 'open', ...written, place: isSameJob ? undefined : place, isSameJob });
    dismissOffered();
  };

  const beginAnew = async (): Promise<void> => {
    await keeper.flush();
    const begun = await theShelf.beginAnew();
    setTrouble(begun.ok ? null : begun.trouble);
    if (begun.ok) await putBack();
  };

  return {
    trouble,
    elsewhere,
    showTheirs: () => void showTheirs(),
    dismiss: () => setElsewhere(null),
    offered,
    showOffered,
    dismissOffered,
    lost,
    dismissLost: () => {
      COUNTS.jobs.dismissLost();
      setLost(null);
    },
    beginAnew,
    lasting,
    askAgain: () => void askForLastingStorage(navigator.storage).then(setLasting),
    flush: () => keeper.flush(),
  };
}

const withoutTicks = (document: JobDocument): string => JSON.stringify({ ...document, made: undefined });

let asked: Promise<Lasting> | null = null;

/** Asked once per window, because the browser may show the maker a prompt. */
function askOnce(): Promise<Lasting> {
  asked ??= askForLastingStorage(navigator.storage);
  return asked;
}
