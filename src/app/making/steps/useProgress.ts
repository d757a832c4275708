import { useEffect, useMemo, useRef, useState } from 'react';
import { type CoverDesign, isRecord, printer } from '../../../core/index.ts';
import { doneWords, orderOfWork, type WorkCard } from '../../../output/benchSheet/orderOfWork.ts';
import { workSource } from '../../../output/benchSheet/workSource.ts';
import { useBench, useDispatch } from '../../state/BenchContext.tsx';
import { type JobKey, placeOf } from '../../state/jobHistory.ts';
import {
  changesSince,
  dayOf,
  END,
  keepProgress,
  NOT_BEGUN,
  type Progress,
  progressKeys,
  progressOf,
  readProgress,
  saidBy,
  shownStep,
  withProgress,
  withSaid,
  withTicksOfBefore,
} from './progress.ts';

/** A step with how far the maker is with it. */
export interface ListedStep extends WorkCard {
  readonly number: number;
  readonly isDone: boolean;
  /** What has changed since it was done, one sentence a change. */
  readonly changes: readonly string[];
}

export interface WorkProgress {
  readonly steps: readonly ListedStep[];
  /** Index of the step that is shown; the number of steps at the end. */
  readonly at: number;
  readonly doneCount: number;
  /** False once the browser has refused to keep it. */
  readonly isKept: boolean;
  readonly goTo: (index: number) => void;
  /** Marks the step that is shown as done and goes on to the next. */
  readonly finish: () => void;
  readonly reopen: (id: string) => void;
  readonly startAgain: () => void;
}

/** Where the progress of each job that was open in this window was last kept: a job may be renamed before it has a place. */
const keptUnder = new Map<JobKey, string>();

/** The steps of a design with the maker's progress: what is done is kept in the job, where it was left by the browser. */
export function useProgress(design: CoverDesign): WorkProgress {
  const [kept, setKept] = useState(readProgress);
  const latest = useRef(kept);
  const [isKept, setIsKept] = useState(true);
  const dispatch = useDispatch();
  const { id, jobKey, open, written } = useBench(({ history }) => ({
    id: placeOf(history)?.id,
    jobKey: history.key,
    open: history.parsed.ok ? history.parsed.job.name : null,
    written: history.document.made,
  }));
  const made = isRecord(written) ? written : {};
  const { name, work } = design.job;
  const keys = progressKeys(id, name, keptUnder.get(jobKey));
  const progress = progressOf(kept, keys);
  const printed = useMemo(() => {
    const source = workSource(design);
    const inches = orderOfWork(source, printer('in'));
    return orderOfWork(source, printer('mm')).map((mm, i) => ({ mm, in: inches[i]! }));
  }, [design]);

  const foundUnder = keys.find((key) => kept.jobs.some((job) => job.key === key));
  // The design that is shown may still be that of the job before.
  const isShown = open === name;
  useEffect(() => {
    if (isShown && foundUnder !== undefined) keptUnder.set(jobKey, foundUnder);
  }, [jobKey, foundUnder, isShown]);

  // Another window may work on the same job.
  useEffect(() => {
    const hear = (): void => {
      latest.current = readProgress();
      setKept(latest.current);
    };
    window.addEventListener('storage', hear);
    return () => window.removeEventListener('storage', hear);
  }, []);

  // From the latest: an effect of an earlier render may run after a press that it does not know of.
  const change = (edit: (progress: Progress) => Progress): void => {
    const all = withProgress(latest.current, keys, edit(progressOf(latest.current, keys)));
    latest.current = all;
    setKept(all);
    setIsKept(keepProgress(all));
  };
  // A job that has come to its place on the shelf takes its progress there.
  const isToMove = id !== undefined && progress !== NOT_BEGUN && kept.jobs.every(({ key }) => key !== keys[0]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each move
  useEffect(() => {
    if (isToMove) change((now) => now);
  }, [isToMove]);
  const ids = printed.map(({ mm }) => mm.id);
  const madeBefore = isShown ? withTicksOfBefore(made, progress, ids) : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each job of an earlier version
  useEffect(() => {
    if (madeBefore === null) return;
    dispatch({ type: 'made', made: madeBefore });
    change((now) => ({ ...now, isInJob: true }));
  }, [madeBefore === null]);
  const at = shownStep(progress, made, ids);
  const steps = printed.map((each, i): ListedStep => {
    const day = made[each.mm.id];
    const said = progress.done[each.mm.id];
    const isDone = day !== undefined;
    return {
      ...each[work.units],
      // The design lags behind the job.
      done: doneWords(typeof day === 'string' || day === null ? day : undefined),
      number: i + 1,
      isDone,
      changes: said === undefined || !isDone ? [] : changesSince(said, each, work.units),
    };
  });
  const idAt = (index: number): string => ids[Math.max(0, index)] ?? END;
  return {
    steps,
    at,
    doneCount: steps.filter(({ isDone }) => isDone).length,
    isKept,
    goTo: (index) => change((now) => ({ ...now, at: idAt(index) })),
    finish: () => {
      const step = printed[at];
      if (step === undefined) return;
      const { id: done } = step.mm;
      dispatch({ type: 'made', made: { ...made, [done]: dayOf(new Date()) } });
      change((now) => withSaid({ ...now, at: idAt(at + 1) }, done, saidBy(step)));
    },
    reopen: (step) => {
      const { [step]: _, ...others } = made;
      dispatch({ type: 'made', made: others });
    },
    startAgain: () => {
      dispatch({ type: 'made', made: {} });
      change(() => ({ ...NOT_BEGUN, at: idAt(0) }));
    },
  };
}
