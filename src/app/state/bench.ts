import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type CoverDesign,
  coverDesign,
  designReport,
  type Job,
  type JobDocument,
  type Printer,
  printer,
  type Report,
  type ReportTrials,
  type ResultOrigin,
  repeated,
  valueAt,
} from '../../core/index.ts';
import { type JobAction, type JobHistory, jobHistory } from './jobHistory.ts';
import { keptViewChoice, type ViewChoice } from './viewChoice.ts';

/** The elastic strip of the open job: being solved, in the report, or failed, with the reason for the maker. */
type ElasticState =
  | { readonly status: 'solving' | 'solved' }
  | { readonly status: 'gaveUp'; readonly why: string; readonly retry: () => void };

/** State of the bench: the job, what follows from it, and the chosen view. */
export interface Bench {
  readonly history: JobHistory;
  readonly dispatch: (action: JobAction) => void;
  readonly design: CoverDesign;
  /** Of the quick model alone until `elastic` is solved; its `origin` says so. */
  readonly report: Report;
  readonly elastic: ElasticState;
  /** The report of the last job whose strip is solved; null before the first. */
  readonly settled: Report | null;
  /** The last trials of a job, and its document; null before the first. */
  readonly trials: { readonly of: JobDocument; readonly found: ReportTrials } | null;
  /** Why the trials last asked for were not made. */
  readonly trialsFailure: string | null;
  readonly view: ViewChoice;
  readonly setView: (change: Partial<ViewChoice>) => void;
  /** Prints every figure in the unit that the job is worked in; typed figures without a unit are in `lengths.units`. */
  readonly lengths: Printer;
  /** False once the browser has refused to keep the open job. */
  readonly isKept: boolean;
  /** False where the browser keeps no steps, so that undo ends with the page. */
  readonly keepsSteps: boolean;
}

export type BenchStore = StoreApi<Bench>;

/** The springy model is asked, or asked again. */
export const askedAgain = ({ report }: Bench): Pick<Bench, 'elastic' | 'report'> => ({
  elastic: { status: 'solving' },
  report: { ...report, origin: 'being worked out' },
});

/** The springy model gave no answer. */
export const gaveUp =
  (why: string, retry: () => void) =>
  ({ report }: Bench): Pick<Bench, 'elastic' | 'report'> => ({
    elastic: { status: 'gaveUp', why, retry },
    report: { ...report, origin: 'not known' },
  });

/** Makes the store of the bench. What follows from a job is computed once, when the job changes. */
export function createBench(start: JobHistory): BenchStore {
  return createStore<Bench>()((set) => ({
    history: start,
    ...outcomeAs(start.good.job, 'being worked out'),
    elastic: { status: 'solving' },
    settled: null,
    trials: null,
    trialsFailure: null,
    lengths: lengthsOf(start),
    view: keptViewChoice(),
    isKept: true,
    keepsSteps: true,
    dispatch: (action) =>
      set((bench) => {
        const history = jobHistory(bench.history, action);
        if (history === bench.history) return bench;
        const { job } = history.good;
        const isChanged = job !== bench.design.job;
        // After a failure it stays `gaveUp` until a worker answers: retries are not shown as `solving`.
        const isLost = bench.elastic.status === 'gaveUp';
        return {
          history,
          lengths: lengthsOf(history, bench.lengths),
          ...(isChanged && outcomeAs(job, isLost ? 'not known' : 'being worked out')),
          ...(isChanged && !isLost && { elastic: { status: 'solving' } }),
        };
      }),
    setView: (change) => set(({ view }) => ({ view: { ...view, ...change } })),
  }));
}

/** What follows from a job. The job asked for last is answered from memory: the start works it out before the bench is made. */
export const outcome = repeated((job: Job): Pick<Bench, 'design' | 'report'> => {
  const design = designOf(job);
  return { design, report: designReport(design) };
});

/** The same, and how it stands with the springy model. */
function outcomeAs(job: Job, origin: ResultOrigin): Pick<Bench, 'design' | 'report'> {
  const { design, report } = outcome(job);
  return { design, report: { ...report, origin } };
}

/** The first half of `outcome`, so that the start can take it in two steps. */
export const designOf = repeated(coverDesign);

/** The unit is read from the document, so that a field that cannot be used does not delay it. */
function lengthsOf({ document }: JobHistory, last?: Printer): Printer {
  const units = valueAt(document, 'work.units') === 'in' ? 'in' : 'mm';
  return last?.units === units ? last : printer(units);
}

/** What trials of the open job say; null until they are made. */
export const trialsOf = ({ trials, history }: Bench): ReportTrials | null =>
  trials?.of === history.good.document ? trials.found : null;
