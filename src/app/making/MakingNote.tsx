import type { Making } from './useMaking.ts';

/** Progress of making a file, read out as it changes. */
export function MakingNote({ making }: { readonly making: Making }) {
  return (
    <div role="status" className="making">
      {making.status === 'making' && (
        <p>
          <progress aria-label={`Making the ${making.what}`} /> The {making.what} is being made.
        </p>
      )}
      {making.status === 'made' && <p>The {making.what} was handed to the browser to save.</p>}
      {making.status === 'made' && making.lacking.length > 0 && (
        <p className="caution">
          Its letters lack {making.lacking.join(' ')}: a box stands for {making.lacking.length === 1 ? 'it' : 'each'}.
        </p>
      )}
      {making.status === 'failed' && (
        <p className="issue">
          The {making.what} could not be made. {making.why}
        </p>
      )}
    </div>
  );
}
