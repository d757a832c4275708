import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import './fields/fields.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import * as z from 'zod/mini';
import { EXAMPLE_JOBS } from '../core/index.ts';
import { FatalError } from './FatalError.tsx';
import { holdNotes } from './fields/holdNotes.ts';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { hearOfMissingParts } from './loading/missingPart.ts';
import { Pages } from './Pages.tsx';
import { fromCopy, type Opening } from './shelf/opening.ts';
import { StartedContext } from './shelf/StartedContext.ts';
import { startingJob } from './shelf/startingJob.ts';
import { BenchProvider } from './state/BenchContext.tsx';
import type { BenchStore } from './state/bench.ts';
import { type JobHistory, startHistory } from './state/jobHistory.ts';
import { keptCopies, keptJob } from './state/keptJob.ts';

// The page's security policy lets no text be made into code, which zod would try for speed.
z.config({ jitless: true });

hearOfMissingParts();
holdNotes();

/** The history that the bench starts with: of the job that was left, or of the example on a first visit. */
function historyOf(opening: Opening | null): JobHistory {
  const example = EXAMPLE_JOBS[0].document;
  return startHistory(opening?.written ?? { document: example, typed: {} }, example, opening ?? {});
}

// A wait at the top of the page's first module would hold up every module that shares code with it.
void startingJob(import('./shelf/theShelf.ts'), keptCopies()).then((started) => {
  let opening = started.start.first;
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
  // After the bench stopped it is drawn again with the copy kept last.
  const drawAgain = (retry: () => void): void => {
    const kept = keptJob();
    opening = kept && fromCopy(kept);
    retry();
  };
  createRoot(document.getElementById('bench')!).render(
    <StrictMode>
      <ErrorBoundary instead={(error, retry) => <FatalError error={error} retry={() => drawAgain(retry)} />}>
        <StartedContext value={started}>
          <BenchProvider start={() => historyOf(opening)} keepSteps={keepSteps}>
            <Pages />
          </BenchProvider>
        </StartedContext>
      </ErrorBoundary>
    </StrictMode>,
  );
});
