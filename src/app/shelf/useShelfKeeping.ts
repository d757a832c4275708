import { useEffect, useRef, useState } from 'react';
import { EXAMPLE_JOBS } from '../../core/job/examples.ts';
import { useBench } from '../state/BenchContext.tsx';
import { keepJob } from '../state/keptJob.ts';
import { placeOf, setPlace } from '../state/place.ts';
import { askForLastingStorage, type Lasting } from './lastingStorage.ts';
import { ShelfKeeper } from './ShelfKeeper.ts';
import type { ShelfTrouble } from './shelfTrouble.ts';
import { theShelf } from './theShelf.ts';

/** What another window has done to the open job. */
export type Elsewhere = 'saved' | 'removed' | 'parted';

export interface ShelfKeeping {
  readonly trouble: ShelfTrouble | null;
  readonly elsewhere: Elsewhere | null;
  /** Opens the open job as another window has saved it. */
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
  /** What the browser said to keeping the shelf; null until the first save. */
  readonly lasting: Lasting | null;
  /** Writes what waits to be written. */
  readonly flush: () => Promise<void>;
}

const EXAMPLES = new Set(EXAMPLE_JOBS.map(({ document }) => JSON.stringify(document)));

/** Keeps the open job on the shelf, and hears what other windows do to it. An untouched example is not kept. */
export function useShelfKeeping(): ShelfKeeping {
  const { history, dispatch } = useBench();
  const { document, key, parsed } = history;
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const [elsewhere, setElsewhere] = useState<Elsewhere | null>(null);
  const [lasting, setLasting] = useState<Lasting | null>(null);
  const latest = useRef(history);
  useEffect(() => {
    latest.current = history;
  }, [history]);

  const [keeper] = useState(
    () =>
      new ShelfKeeper(theShelf, (kept) => {
        setTrouble(kept.what === 'trouble' ? kept.trouble : null);
        if (kept.what === 'trouble') return;
        // The place has changed with the save, and must be known after a reload.
        if (latest.current.key === kept.key) {
          keepJob(latest.current);
          setElsewhere(kept.what === 'parted' ? 'parted' : null);
        }
        void askOnce().then(setLasting);
      }),
  );

  useEffect(() => {
    if (!parsed.ok || (placeOf(key) === undefined && EXAMPLES.has(JSON.stringify(document)))) return;
    keeper.keep(key, document);
  }, [keeper, key, document, parsed]);

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

  return {
    trouble,
    elsewhere,
    showTheirs: () => void showTheirs(),
    dismiss: () => setElsewhere(null),
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
