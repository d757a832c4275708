import { keptJob } from './state/keptJob.ts';
import { saveFile } from './state/saveFile.ts';

interface FatalErrorProps {
  readonly error: Error;
  readonly retry: () => void;
}

/** Stands where the whole bench could not be drawn: says so, and keeps the job reachable. */
export function FatalError({ error, retry }: FatalErrorProps) {
  const kept = keptJob();
  return (
    <main className="last-resort">
      <h1>Coverwright stopped</h1>
      <p>The page could not be drawn: {error.message}</p>
      <p>
        The open job is kept in this browser.{' '}
        <button type="button" onClick={retry}>
          Draw it again
        </button>{' '}
        {kept !== null && (
          <button
            type="button"
            onClick={() => saveFile('open-job.json', JSON.stringify(kept.document), 'application/json')}
          >
            Save the open job
          </button>
        )}
      </p>
    </main>
  );
}
