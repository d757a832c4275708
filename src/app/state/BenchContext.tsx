import {
  createContext,
  type Dispatch,
  type ReactNode,
  use,
  useCallback,
  useEffect,
  useMemo,
  useReducer,
  useState,
} from 'react';
import {
  type CoverDesign,
  coverDesign,
  designReport,
  type JobDocument,
  type Printer,
  printer,
  type Report,
  valueAt,
} from '../../core/index.ts';
import { type JobAction, type JobHistory, jobHistory, startHistory, type Written } from './jobHistory.ts';
import { keepJob } from './keptJob.ts';
import { type ElasticState, useElastic } from './useElastic.ts';
import { keepViewChoice, keptViewChoice, type ViewChoice } from './viewChoice.ts';

/** What every part of the bench works with: the job, what follows from it, and the way it is looked at. */
export interface Bench {
  readonly history: JobHistory;
  readonly dispatch: Dispatch<JobAction>;
  readonly design: CoverDesign;
  readonly report: Report;
  /** The elastic strip's answer for this design; until it is here the report speaks for the closed form alone. */
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

/** Reached through `useBench`; given anew only by `lagging`. */
export const BenchContext = createContext<Bench | null>(null);

/** @throws Error outside a `BenchProvider` */
export function useBench(): Bench {
  const bench = use(BenchContext);
  if (bench === null) throw new Error('useBench is used outside BenchProvider');
  return bench;
}

interface BenchProviderProps {
  /** A job known to parse: what a first visit opens, and the picture while a kept job does not parse. */
  readonly example: JobDocument;
  /** Gives the job that was left on the bench; null on a first visit. */
  readonly left: () => Written | null;
  readonly children: ReactNode;
}

export function BenchProvider({ example, left, children }: BenchProviderProps) {
  const [history, dispatch] = useReducer(jobHistory, example, () =>
    startHistory(left() ?? { document: example, typed: {} }, example),
  );
  const [view, setWholeView] = useState(keptViewChoice);
  const [isKept, setKept] = useState(true);
  const setView = useCallback(
    (change: Partial<ViewChoice>): void => setWholeView((whole) => ({ ...whole, ...change })),
    [],
  );

  const { job } = history.good;
  const design = useMemo(() => coverDesign(job), [job]);
  const elastic = useElastic(job);
  const quick = useMemo(() => designReport(design), [design]);
  const report = useMemo(
    () => (elastic.status === 'solved' ? elastic.addTo(quick, design) : quick),
    [quick, design, elastic],
  );
  const settled = useSettled(report, elastic);
  const { document, typed, key } = history;
  // A field that cannot be used yet must not hold the unit back.
  const units = valueAt(document, 'work.units') === 'in' ? 'in' : 'mm';
  const lengths = useMemo(() => printer(units), [units]);

  useEffect(() => setKept(keepJob({ document, typed, key })), [document, typed, key]);
  useEffect(() => keepViewChoice(view), [view]);
  useEffect(() => {
    window.document.documentElement.dataset.scheme = view.scheme;
  }, [view.scheme]);

  const bench = useMemo<Bench>(
    () => ({
      history,
      dispatch,
      design,
      report,
      elastic,
      settled,
      view,
      setView,
      lengths,
      isKept,
    }),
    [history, design, report, elastic, settled, view, setView, lengths, isKept],
  );
  return <BenchContext value={bench}>{children}</BenchContext>;
}

/** The newest report into which the strip's answer has gone, kept while a newer one waits for it. */
function useSettled(report: Report, elastic: ElasticState): Report | null {
  const [settled, setSettled] = useState<Report | null>(null);
  if (elastic.status === 'solved' && settled !== report) setSettled(report);
  return settled;
}
