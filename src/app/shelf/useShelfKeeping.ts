import { use, useEffect, useRef, useState } from 'react';
import { useBench } from '../state/BenchContext.tsx';
import { FIRST_JOB } from '../state/jobHistory.ts';
import { keepJob } from '../state/keptJob.ts';
import { placeOf, setPlace } from '../state/place.ts';
import { isExample, type Opening } from './chooseStart.ts';
import { askForLastingStorage, type Lasting } from './lastingStorage.ts';
import { ShelfKeeper } from './ShelfKeeper.ts';
import { StartedContext } from './StartedContext.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

/** What has become of the open job on the shelf: another window saved or removed it, or what was done here left it. */
export type Elsewhere = 'saved' | 'removed' | 'parted';

export interface ShelfKeeping {
  readonly trouble: ShelfTrouble | null;
  readonly elsewhere: Elsewhere | null;
  /** Opens the open job as another window has saved it. */
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
  /** A state that was kept too when the page started, and is not the one shown. */
  readonly other: Opening | null;
  readonly showOther: () => void;
  readonly dismissOther: () => void;
  /** What the browser said to keeping the shelf; null until the first save. */
  readonly lasting: Lasting | null;
  /** Writes what waits to be written. */
  readonly flush: () => Promise<void>;
}

/** Keeps the open job on the shelf, and hears what other windows do to it. An untouched example is not kept. */
export function useShelfKeeping(): ShelfKeeping {
  const { history, dispatch } = useBench();
  const { document, key, parsed } = history;
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const [elsewhere, setElsewhere] = useState<Elsewhere | null>(null);
  const [lasting, setLasting] = useState<Lasting | null>(null);
  const { start, late } = use(StartedContext)!;
  const [other, setOther] = useState(start.other);
  // A save before the shelf has said what it holds could part from it.
  const [isAsked, setAsked] = useState(late === null);
  const latest = useRef(history);
  useEffect(() => {
    latest.current = history;
  }, [history]);

  const [keeper] = useState(
    () =>
      new ShelfKeeper(theShelf, (kept) => {
        setTrouble(kept.what === 'trouble' ? kept.trouble : null);
        if (kept.what === 'trouble') return;
        // The quick copy tells the place after the save, and that no save is later than it.
        keepJob(latest.current);
        if (latest.current.key === kept.key) setElsewhere(kept.what === 'parted' ? 'parted' : null);
        void askOnce().then(setLasting);
      }),
  );

  useEffect(() => {
    void late?.then((said) => {
      if (said.first?.place !== undefined) setPlace(FIRST_JOB, said.first.place);
      setOther(said.other);
      setAsked(true);
    });
  }, [late]);

  useEffect(() => {
    if (!isAsked || !parsed.ok || (placeOf(key) === undefined && isExample(document))) return;
    keeper.keep(key, document);
  }, [isAsked, keeper, key, document, parsed]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: what was told of one job does not concern the next
  useEffect(() => setElsewhere(null), [key]);

  useEffect(() => {
    const onHide = (): void => {
      if (window.document.visibilityState === 'hidden') void keeper.flush();
    };
    window.document.addEventListener('visibilitychange', onHide);
    return () => window.document.removeEventListener('visibilitychange', onHide);
  }, [keeper]);

  useEffect(
    () =>
      theShelf.watch(({ id, what, revision }) => {
        const place = placeOf(latest.current.key);
        if (place?.id !== id || place.revision >= revision) return;
        setElsewhere(what === 'removed' ? 'removed' : 'saved');
      }),
    [],
  );

  const showTheirs = async (): Promise<void> => {
    await keeper.flush();
    const place = placeOf(latest.current.key);
    const theirs = place && (await theShelf.get(place.id));
    if (!theirs) return;
    if (!theirs.ok) return setTrouble(theirs.trouble);
    const fresh = {};
    const { id, revision, document: found } = theirs.value;
    setPlace(fresh, { id, revision, document: found });
    dispatch({ type: 'open', document: found, key: fresh });
  };

  const showOther = (): void => {
    if (other === null) return;
    const { written, place } = other;
    // Another state of the same job is its next revision, so that nothing parts.
    const isSameJob = place !== undefined && place.id === placeOf(history.key)?.id;
    const opened = isSameJob ? history.key : {};
    if (!isSameJob && place !== undefined) setPlace(opened, place);
    dispatch({ type: 'open', ...written, key: opened });
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

let asked: Promise<Lasting> | null = null;

/** Asked once a window, for a browser may ask the maker in turn. */
function askOnce(): Promise<Lasting> {
  asked ??= askForLastingStorage(navigator.storage);
  return asked;
}
