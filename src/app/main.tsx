import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import './fields/fields.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import * as z from 'zod/mini';
import { EXAMPLE_JOBS, type JobDocument } from '../core/index.ts';
import { FatalError } from './FatalError.tsx';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { hearOfMissingParts } from './loading/missingPart.ts';
import { Pages } from './Pages.tsx';
import { chooseStart, type Opening } from './shelf/chooseStart.ts';
import { StartedContext } from './shelf/StartedContext.ts';
import { startingJob } from './shelf/startingJob.ts';
import { BenchProvider } from './state/BenchContext.tsx';
import { FIRST_JOB } from './state/jobHistory.ts';
import { keptJob } from './state/keptJob.ts';
import { setPlace } from './state/place.ts';

// The page's security policy lets no text be made into code, which zod would try for speed.
z.config({ jitless: true });

hearOfMissingParts();

const theShelf = import('./shelf/theShelf.ts').then((shelf) => shelf.theShelf);

/** What the bench opens; after it stopped and is drawn again, the copy kept last. */
let opened: Opening | null = null;
function open(opening: Opening | null): void {
  opened = opening;
  if (opening?.place !== undefined) setPlace(FIRST_JOB, opening.place);
}

// A wait at the top of the page's first module would hold up every module that shares code with it.
void startingJob(theShelf, keptJob()).then((started) => {
  open(started.start.first);
  const drawAgain = (retry: () => void): void => {
    open(chooseStart(keptJob(), []).first);
    retry();
  };
  createRoot(document.getElementById('bench')!).render(
    <StrictMode>
      <ErrorBoundary instead={(error, retry) => <FatalError error={error} retry={() => drawAgain(retry)} />}>
        <StartedContext value={started}>
          <BenchProvider example={EXAMPLE_JOBS[0]!.document as JobDocument} left={() => opened?.written ?? null}>
            <Pages />
          </BenchProvider>
        </StartedContext>
      </ErrorBoundary>
    </StrictMode>,
  );
});
