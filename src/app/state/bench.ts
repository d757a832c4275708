import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type CoverDesign,
  coverDesign,
  designReport,
  type Job,
  type Printer,
  printer,
  type Report,
  valueAt,
} from '../../core/index.ts';
import { type JobAction, type JobHistory, jobHistory } from './jobHistory.ts';
import { keptViewChoice, type ViewChoice } from './viewChoice.ts';

/** The elastic strip's answer for the open job: on its way, in the report, or not to be had, with the reason for the maker. */
export type ElasticState =
  | { readonly status: 'solving' | 'solved' }
  | { readonly status: 'gaveUp'; readonly why: string; readonly retry: () => void };

/** What every part of the bench works with: the job, what follows from it, and the way it is looked at. */
export interface Bench {
  readonly history: JobHistory;
  readonly dispatch: (action: JobAction) => void;
  readonly design: CoverDesign;
  /** Of the closed form alone until `elastic` is solved. */
  readonly report: Report;
  readonly elastic: ElasticState;
  /** The report of the last job that the strip has answered; null before the first answer. */
  readonly settled: Report | null;
  readonly view: ViewChoice;
  readonly setView: (change: Partial<ViewChoice>) => void;
  /** Prints every figure in the unit that the job is worked in; typed figures without a unit are in `lengths.units`. */
  readonly lengths: Printer;
  /** False once the browser has refused to keep the open job. */
  readonly isKept: boolean;
}

export type BenchStore = StoreApi<Bench>;

/** Makes the store of the bench. What follows from a job is worked out once, when the job changes. */
export function createBench(start: JobHistory): BenchStore {
  return createStore<Bench>()((set) => ({
    history: start,
    ...outcome(start.good.job),
    elastic: { status: 'solving' },
    settled: null,
    lengths: lengthsOf(start),
    view: keptViewChoice(),
    isKept: true,
    dispatch: (action) =>
      set((bench) => {
        const history = jobHistory(bench.history, action);
        if (history === bench.history) return bench;
        const { job } = history.good;
        return {
          history,
          lengths: lengthsOf(history, bench.lengths),
          ...(job !== bench.design.job && outcome(job)),
          // Given up once, it stays so until a worker answers: what is tried again with every edit is not shown as on its way.
          ...(job !== bench.design.job && bench.elastic.status === 'solved' && { elastic: { status: 'solving' } }),
        };
      }),
    setView: (change) => set(({ view }) => ({ view: { ...view, ...change } })),
  }));
}

function outcome(job: Job): Pick<Bench, 'design' | 'report'> {
  const design = coverDesign(job);
  return { design, report: designReport(design) };
}

/** A field that cannot be used yet must not hold the unit back, so it is read from the document. */
function lengthsOf({ document }: JobHistory, last?: Printer): Printer {
  const units = valueAt(document, 'work.units') === 'in' ? 'in' : 'mm';
  return last?.units === units ? last : printer(units);
}
