import { useCallback, useEffect, useRef, useState } from 'react';
import { openLeather, type StockLeather } from '../../core/index.ts';
import { ShelfKeeper } from '../shelf/ShelfKeeper.ts';
import type { ShelfRecord } from '../shelf/shelfSchema.ts';
import { missing, type ShelfTrouble } from '../shelf/shelfTrouble.ts';
import { theLeathers } from '../shelf/theLeathers.ts';
import type { ShelfPlace } from '../state/jobHistory.ts';
import { addressOf, goTo } from '../state/place.ts';
import { type LeatherAction, type LeatherHistory, leatherHistory, startLeather } from './leatherHistory.ts';

/** What another window did to the leather, or that edits here became a leather of its own. */
export type LeatherElsewhere = 'saved' | 'removed' | 'parted';

interface LeatherEditing {
  /** Null until the leather is read, or where it cannot be. */
  readonly history: LeatherHistory | null;
  readonly dispatch: (action: LeatherAction) => void;
  readonly trouble: ShelfTrouble | null;
  readonly elsewhere: LeatherElsewhere | null;
  /** Opens the leather as another window has saved it. */
  readonly showTheirs: () => void;
  readonly dismiss: () => void;
  /** Writes a waiting state at once. */
  readonly flush: () => Promise<void>;
}

/** A leather that is open: its id when it was opened, its place on the shelf, and its history. */
interface Open {
  readonly id: string;
  place: ShelfPlace;
  history: LeatherHistory;
}

/** Opens a leather of the shelf, keeps it there as it is edited, and watches what other windows do to it. */
export function useLeather(id: string): LeatherEditing {
  const [history, setHistory] = useState<LeatherHistory | null>(null);
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const [elsewhere, setElsewhere] = useState<LeatherElsewhere | null>(null);
  const open = useRef<Open | null>(null);
  const asked = useRef(id);
  asked.current = id;
  const [keeper] = useState(() => {
    const places = {
      get: (key: string) => (open.current?.id === key ? open.current.place : undefined),
      set: (key: string, place: ShelfPlace) => {
        if (open.current?.id === key) open.current.place = place;
      },
    };
    return new ShelfKeeper(theLeathers, places, (kept) => {
      setTrouble(kept.what === 'trouble' ? kept.trouble : null);
      if (kept.what !== 'parted' || open.current?.id !== kept.key) return;
      setElsewhere('parted');
      // Not when the maker has gone on to another place meanwhile.
      if (window.location.hash === addressOf('leathers', asked.current)) goTo('leathers', open.current.place.id);
    });
  });

  const show = useCallback(({ id: at, revision, document }: ShelfRecord): void => {
    const opened = openLeather(document);
    if (!opened.ok) {
      const [issue] = opened.issues;
      setTrouble({ ...missing('leather'), message: `This leather cannot be read: ${issue?.path} ${issue?.message}.` });
      return;
    }
    const started = startLeather(opened.document);
    open.current = { id: at, place: { id: at, revision, document: opened.document }, history: started };
    setHistory(started);
    setElsewhere(null);
  }, []);

  useEffect(() => {
    // What parted from its leather stays open under its new id.
    if (open.current?.place.id === id) return;
    let isWanted = true;
    setHistory(null);
    setTrouble(null);
    void keeper.flush().then(async () => {
      const read = await theLeathers.get(id);
      if (!isWanted) return;
      if (!read.ok) setTrouble(read.trouble);
      else if (read.value.removedAt === null) show(read.value);
      else setTrouble(missing('leather'));
    });
    return () => {
      isWanted = false;
    };
  }, [id, keeper, show]);

  const dispatch = useCallback(
    (action: LeatherAction): void => {
      const at = open.current;
      if (at === null) return;
      const next = leatherHistory(at.history, action);
      if (next === at.history) return;
      const isChanged = next.present !== at.history.present;
      at.history = next;
      setHistory(next);
      if (isChanged) keeper.keep(at.id, next.present);
    },
    [keeper],
  );

  useEffect(
    () =>
      theLeathers.watch(({ id: told, what, revision }) => {
        const place = open.current?.place;
        if (place?.id === told && place.revision < revision) setElsewhere(what === 'removed' ? 'removed' : 'saved');
      }),
    [],
  );

  useEffect(() => {
    const onHide = (): void => {
      if (document.visibilityState === 'hidden') void keeper.flush();
    };
    document.addEventListener('visibilitychange', onHide);
    return () => {
      document.removeEventListener('visibilitychange', onHide);
      void keeper.flush();
    };
  }, [keeper]);

  const showTheirs = async (): Promise<void> => {
    await keeper.flush();
    const at = open.current?.place.id;
    const read = at === undefined ? null : await theLeathers.get(at);
    if (read?.ok) show(read.value);
    else if (read !== null) setTrouble(read.trouble);
  };

  return {
    history,
    dispatch,
    trouble,
    elsewhere,
    showTheirs: () => void showTheirs(),
    dismiss: () => setElsewhere(null),
    flush: () => keeper.flush(),
  };
}

/** A change of a leather that a part of its page makes. */
export type ChangeLeather = (leather: StockLeather, field?: string) => void;
