import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import './fields/fields.css';
import * as z from 'zod/mini';
import { EXAMPLE_JOBS } from '../core/index.ts';
import { FirstWords, NotWhole } from './FirstWords.tsx';
import { drawnOnce } from './loading/drawnOnce.ts';
import { hearOfMissingParts } from './loading/missingPart.ts';
import { nextTask } from './loading/nextTask.ts';
import type { Opening } from './shelf/opening.ts';
import { startingJob } from './shelf/startingJob.ts';
import { designOf, outcome } from './state/bench.ts';
import { type JobHistory, startHistory } from './state/jobHistory.ts';
import { keptCopies } from './state/keptJob.ts';
import { placeAt } from './state/place.ts';
import { keptViewChoice } from './state/viewChoice.ts';

// The page's security policy lets no text be made into code, which zod would try for speed.
z.config({ jitless: true });

hearOfMissingParts();
document.documentElement.dataset.scheme = keptViewChoice().scheme;

const bench = document.getElementById('bench')!;
const theShelf = import('./shelf/theShelf.ts');
// Fetched while the first words are worked out.
const fetched = import('./Bench.tsx');

/** The history that the bench starts with: of the job that was left, or of the example on a first visit. */
function historyOf(opening: Opening | null): JobHistory {
  const example = EXAMPLE_JOBS[0].document;
  return startHistory(opening?.written ?? { document: example, typed: {} }, example, opening ?? {});
}

/** Says whether the cover fits, each step in a task of its own. */
async function sayFirst(history: JobHistory): Promise<void> {
  const place = placeAt(window.location.hash);
  // The customer's page has a job of its own.
  if (place.id === 'customer') return;
  await nextTask();
  designOf(history.good.job);
  await nextTask();
  const { report } = outcome(history.good.job);
  bench.replaceChildren(drawnOnce(<FirstWords place={place} document={history.document} report={report} />));
  await nextTask();
}

// A wait at the top of the page's first module would hold up every module that shares code with it.
void startingJob(theShelf, keptCopies())
  .then(async (started) => {
    const { first } = started.start;
    const history = historyOf(first);
    // An error comes again when the bench is made, which says it and keeps the job.
    await sayFirst(history).catch(() => {});
    const { drawBench } = await fetched;
    drawBench(started, (opening) => (opening === first ? history : historyOf(opening)));
  })
  .catch((error: unknown) => {
    console.error(error);
    bench.append(drawnOnce(<NotWhole />));
  });
