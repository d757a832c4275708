import { use, useEffect, useState } from 'react';
import { isRecord, type JobDocument } from '../../core/index.ts';
import { useBench, useBenchStore, useDispatch } from '../state/BenchContext.tsx';
import type { Bench } from '../state/bench.ts';
import { type JobKey, placeOf, type ShelfPlace } from '../state/jobHistory.ts';
import { isExample } from './chooseStart.ts';
import { askForLastingStorage, type Lasting } from './lastingStorage.ts';
import type { Opening } from './opening.ts';
import { ShelfKeeper } from './ShelfKeeper.ts';
import { StartedContext } from './StartedContext.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

/** What happened to the open job on the shelf: another window saved or removed it, or edits here became a new job. */
export type Elsewhere = 'saved' | 'removed' | 'parted';

export interface ShelfKeeping {
  readonly trouble: ShelfTrouble | null;
  readonly elsewhere: Elsewhere | null;
  /** Opens the open job as another window has saved it. */
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
  /** Another state that was kept when the page started. */
  readonly other: Opening | null;
  readonly showOther: () => void;
  readonly dismissOther: () => void;
  /** Whether the browser keeps the shelf; null until the first save. */
  readonly lasting: Lasting | null;
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
  const { start, late } = use(StartedContext)!;
  const [other, setOther] = useState(start.other);
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

  const showOther = (): void => {
    if (other === null) return;
    const { written, place } = other;
    const { history } = getState();
    // Another state of the same job is its next revision, so that no second job is made.
    const isSameJob = other.key === history.key || (place !== undefined && place.id === placeOf(history)?.id);
    dispatch({ type: 'open', ...written, place: isSameJob ? undefined : place, isSameJob });
    setOther(null);
  };

  return {
    trouble,
    elsewhere,
    showTheirs: () => void showTheirs(),
    dismiss: () => setElsewhere(null),
    other,
    showOther,
    dismissOther: () => setOther(null),
    lasting,
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
