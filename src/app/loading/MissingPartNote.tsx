import { useSyncExternalStore } from 'react';
import { type MissingPart, missingPart, watchMissingPart } from './missingPart.ts';

const WORDS: Readonly<Record<MissingPart, string>> = {
  replaced:
    'A new version of Coverwright is there, and parts of this one can no longer be fetched. Your job is kept: reload the page to go on with it in the new version.',
  unreachable:
    'A part of Coverwright could not be fetched: the network is away or the server has not got it. What is on the page works on and your job is kept; reload the page when the network is back.',
};

/** Says that a part of the page cannot be fetched, and the way on. It needs no further part itself. */
export function MissingPartNote() {
  const missing = useSyncExternalStore(watchMissingPart, missingPart);
  if (missing === null) return null;
  return (
    <p className="refused" role="alert">
      {WORDS[missing]}{' '}
      <button type="button" onClick={() => window.location.reload()}>
        Reload the page
      </button>
    </p>
  );
}
