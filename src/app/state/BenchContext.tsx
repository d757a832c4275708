import { createContext, type ReactNode, use, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand/react';
import { askedAgain, type Bench, type BenchStore, createBench, gaveUp } from './bench.ts';
import { type JobHistory, placeOf } from './jobHistory.ts';
import { keepJob } from './keptJob.ts';
import { keepViewChoice } from './viewChoice.ts';

/** The bench that the parts under it show; for one that is only looked at, which is not kept. */
export const BenchContext = createContext<BenchStore | null>(null);

/** The store, for handlers that read the state when they run. @throws Error outside a `BenchProvider` */
export function useBenchStore(): BenchStore {
  const store = use(BenchContext);
  if (store === null) throw new Error('useBench is used outside BenchProvider');
  return store;
}

/**
 * What a component needs of the bench; it renders again only when that changes.
 * @param select may gather several values in an object or array, each compared by itself; an object made within another
 *   is never the same and renders endlessly
 */
export function useBench<T>(select: (bench: Bench) => T): T {
  const last = useRef<T>(undefined);
  return useStore(useBenchStore(), (bench) => {
    const next = select(bench);
    if (last.current === undefined || !isSame(last.current, next)) last.current = next;
    return last.current;
  });
}

/** Whether two selections are one value, or hold the same values under the same names. */
function isSame<T>(a: T, b: T): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b);
  const [before, after] = [Object.entries(a), Object.entries(b)];
  return before.length === after.length && before.every(([name, value]) => Object.is(value, b[name as keyof T]));
}

/** Changes the job. */
export const useDispatch = (): Bench['dispatch'] => useBenchStore().getState().dispatch;

/** Prints every figure in the unit that the job is worked in. */
export const useLengths = (): Bench['lengths'] => useBench(({ lengths }) => lengths);

interface BenchProviderProps {
  /** Gives the history to start with. */
  readonly start: () => JobHistory;
  /** Keeps the steps of the bench; returns a way to stop. */
  readonly keepSteps: (store: BenchStore) => () => void;
  readonly children: ReactNode;
}

export function BenchProvider({ start, keepSteps, children }: BenchProviderProps) {
  const [store] = useState(() => createBench(start()));
  useEffect(() => keepUp(store), [store]);
  useEffect(() => keepSteps(store), [keepSteps, store]);
  return <BenchContext value={store}>{children}</BenchContext>;
}

/** Keeps job and view in this browser as they change, and has the elastic strip solved. Returns a way to stop. */
function keepUp(store: BenchStore): () => void {
  let isWanted = true;
  let stopSolving = (): void => {};
  const solve = (): void => {
    import('./solveElastic.ts').then(
      ({ solveElastic }) => {
        if (isWanted) stopSolving = solveElastic(store);
      },
      ({ message }: Error) => store.setState(gaveUp(message, retry)),
    );
  };
  const retry = (): void => {
    store.setState(askedAgain);
    solve();
  };
  const keep = ({ history, view }: Bench, before?: Bench): void => {
    const last = before?.history;
    const isChanged =
      history.document !== last?.document || history.typed !== last.typed || placeOf(history) !== placeOf(last);
    if (isChanged) {
      const isKept = keepJob(history);
      if (isKept !== store.getState().isKept) store.setState({ isKept });
    }
    if (view !== before?.view) keepViewChoice(view);
    // Only on a change: the customer's page sets its own scheme.
    if (view.scheme !== before?.view.scheme) document.documentElement.dataset.scheme = view.scheme;
  };
  const forget = store.subscribe(keep);
  keep(store.getState());
  solve();
  return () => {
    isWanted = false;
    forget();
    stopSolving();
  };
}
