import { StrictMode, startTransition } from 'react';
import { createRoot } from 'react-dom/client';
import { FatalError } from './FatalError.tsx';
import { holdNotes } from './fields/holdNotes.ts';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { Pages } from './Pages.tsx';
import { chooseStart, type Opening } from './shelf/chooseStart.ts';
import { StartedContext } from './shelf/StartedContext.ts';
import type { Started } from './shelf/startingJob.ts';
import { BenchProvider } from './state/BenchContext.tsx';
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
    opening = chooseStart(keptJob(), []).first;
    retry();
  };
  const root = createRoot(document.getElementById('bench')!);
  startTransition(() =>
    root.render(
      <StrictMode>
        <ErrorBoundary instead={(error, retry) => <FatalError error={error} retry={() => drawAgain(retry)} />}>
          <StartedContext value={started}>
            <BenchProvider start={() => historyOf(opening)}>
              <Pages />
            </BenchProvider>
          </StartedContext>
        </ErrorBoundary>
      </StrictMode>,
    ),
  );
}
