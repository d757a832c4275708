import type { Taking } from './useTaking.ts';

interface TakingNoteProps {
  readonly taking: Taking;
  readonly cancel: () => void;
}

/** How far it has come, and the way to stop it; read out as it begins and ends. */
export function TakingNote({ taking, cancel }: TakingNoteProps) {
  const { status } = taking;
  return (
    <div>
      <div role="status">
        {status === 'taking' && <p>The {taking.what} is being made.</p>}
        {status === 'taken' && <p>The {taking.what} was handed to the browser to save.</p>}
        {status === 'stopped' && <p>The {taking.what} was stopped; nothing is saved.</p>}
        {status === 'failed' && (
          <p className="issue">
            The {taking.what} could not be made. {taking.why}
          </p>
        )}
      </div>
      {status === 'taking' && (
        <p className="row take-row">
          <progress aria-label={`Making the ${taking.what}`} value={taking.share ?? undefined} />
          {taking.share !== null && <span>{Math.floor(100 * taking.share)} %</span>}
          <button type="button" onClick={cancel}>
            Stop
          </button>
        </p>
      )}
    </div>
  );
}
