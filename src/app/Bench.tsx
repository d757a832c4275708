import { StrictMode, startTransition } from 'react';
import { createRoot } from 'react-dom/client';
import { FatalError } from './FatalError.tsx';
import { holdNotes } from './fields/holdNotes.ts';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { Pages } from './Pages.tsx';
import { fromCopy, type Opening } from './shelf/opening.ts';
import { StartedContext } from './shelf/StartedContext.ts';
import type { Started } from './shelf/startingJob.ts';
import { BenchProvider } from './state/BenchContext.tsx';
import type { BenchStore } from './state/bench.ts';
import type { JobHistory } from './state/jobHistory.ts';
import { keptJob } from './state/keptJob.ts';

/**
 * Draws the page that can be used in place of the first words, in slices: it is no answer to a key.
 * @param historyOf the history that the bench starts with
 */
export function drawBench(started: Started, historyOf: (opening: Opening | null) => JobHistory): void {
  holdNotes();
  let opening = started.start.first;
  // After the bench stopped it is drawn again with the copy kept last.
  const drawAgain = (retry: () => void): void => {
    const kept = keptJob();
    opening = kept && fromCopy(kept);
    retry();
  };
  const keepSteps = (store: BenchStore): (() => void) => {
    let stop: (() => void) | null = () => {};
    void started.journal.then((journal) => {
      if (journal === null) store.setState({ keepsSteps: false });
      else if (stop !== null) stop = journal.keep(store, (keepsSteps) => store.setState({ keepsSteps }));
    });
    return () => {
      stop?.();
      stop = null;
    };
  };
  const root = createRoot(document.getElementById('bench')!);
  startTransition(() =>
    root.render(
      <StrictMode>
        <ErrorBoundary instead={(error, retry) => <FatalError error={error} retry={() => drawAgain(retry)} />}>
          <StartedContext value={started}>
            <BenchProvider start={() => historyOf(opening)} keepSteps={keepSteps}>
              <Pages />
            </BenchProvider>
          </StartedContext>
        </ErrorBoundary>
      </StrictMode>,
    ),
  );
}
