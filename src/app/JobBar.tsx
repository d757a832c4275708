import { lazy, useId, useState } from 'react';
import { EXAMPLE_JOBS, type JobDocument, valueAt } from '../core/index.ts';
import { FileButton } from './fields/FileButton.tsx';
import { firstPaint } from './loading/firstPaint.ts';
import { LatePart } from './loading/LatePart.tsx';
import { useBench, useBenchStore, useDispatch } from './state/BenchContext.tsx';
import { saveJobFile } from './state/jobFile.ts';
import { useUndoKeys } from './state/useUndoKeys.ts';
import type { ViewChoice } from './state/viewChoice.ts';

const NewCover = lazy(() => import('./form/NewCover.tsx'));
const Keeping = lazy(() => firstPaint.then(() => import('./shelf/Keeping.tsx')));

/** The job as a whole: its name, undo, files, examples, and how the bench is shown. */
export function JobBar() {
  const { getState } = useBenchStore();
  const dispatch = useDispatch();
  const { name, hasPast, hasFuture, isWhole, scheme, units, isKept } = useBench(
    ({ history, view, lengths, isKept }) => ({
      name: String(valueAt(history.document, 'name') ?? ''),
      hasPast: history.past.length > 0,
      hasFuture: history.future.length > 0,
      isWhole: history.parsed.ok,
      scheme: view.scheme,
      units: lengths.units,
      isKept,
    }),
  );
  const { setView } = getState();
  const [refused, setRefused] = useState<{ file: string; lines: readonly string[] } | null>(null);
  const [isStarting, setStarting] = useState(false);
  const id = useId();
  useUndoKeys(dispatch);

  const openFile = async (chosen: File): Promise<void> => {
    const [{ openJobFile }, { issueLine }] = await Promise.all([
      import('./state/openJobFile.ts'),
      import('./fields/issueWords.ts'),
    ]);
    const opened = await openJobFile(chosen);
    if ('issues' in opened) setRefused({ file: chosen.name, lines: opened.issues.map(issueLine) });
    else openDocument(opened.document);
  };
  // The next new cover starts in the unit chosen last.
  const workIn = (chosen: ViewChoice['units']): void => {
    setView({ units: chosen });
    dispatch({ type: 'edit', patches: [{ path: 'work', value: { units: chosen } }] });
  };
  const openDocument = (document: JobDocument): void => {
    setRefused(null);
    dispatch({ type: 'open', document });
  };

  return (
    <header className="row job-bar">
      <h1>Coverwright</h1>
      <div className="row job-name">
        <label className="bar-word" htmlFor={`${id}-name`}>
          Job
        </label>
        <input
          id={`${id}-name`}
          data-path="name"
          autoComplete="off"
          value={name}
          maxLength={200}
          onChange={(event) =>
            dispatch({ type: 'edit', key: 'name', patches: [{ path: 'name', value: event.target.value }] })
          }
          onBlur={() => dispatch({ type: 'settle' })}
        />
      </div>
      <div className="row not-printed">
        <button type="button" disabled={!hasPast} onClick={() => dispatch({ type: 'undo' })}>
          Undo
        </button>
        <button type="button" disabled={!hasFuture} onClick={() => dispatch({ type: 'redo' })}>
          Redo
        </button>
      </div>
      <div className="row not-printed">
        <button type="button" onClick={() => setStarting(true)}>
          New cover
        </button>
        <FileButton title="Open file" asks="Job file" onFile={(chosen) => void openFile(chosen)} />
        <button
          type="button"
          title={isWhole ? undefined : 'Saves the last complete job'}
          onClick={() => saveJobFile(getState().history.good.document)}
        >
          Save file
        </button>
        <button type="button" onClick={() => window.print()}>
          Print
        </button>
      </div>
      <fieldset className="row not-printed" aria-label="Example jobs">
        <span className="bar-word" aria-hidden="true">
          Examples
        </span>
        {EXAMPLE_JOBS.map(({ id: example, document }) => (
          <button key={example} type="button" onClick={() => openDocument(document)}>
            {example.replace('-', ' ')}
          </button>
        ))}
      </fieldset>
      <div className="row not-printed">
        <label className="bar-word" htmlFor={`${id}-units`}>
          Units
        </label>
        <select
          id={`${id}-units`}
          value={units}
          onChange={(event) => workIn(event.target.value as ViewChoice['units'])}
        >
          <option value="mm">mm</option>
          <option value="in">inches</option>
        </select>
        <label className="bar-word" htmlFor={`${id}-scheme`}>
          Page
        </label>
        <select
          id={`${id}-scheme`}
          value={scheme}
          onChange={(event) => setView({ scheme: event.target.value as ViewChoice['scheme'] })}
        >
          <option value="system">as the system</option>
          <option value="light">light</option>
          <option value="dark">dark</option>
        </select>
      </div>
      <LatePart name="shelf" room="shelf-room">
        <Keeping />
      </LatePart>
      {refused !== null && (
        <div className="refused" role="alert">
          <p>
            <b>{refused.file}</b> was not opened; the open job is unchanged.
          </p>
          <ul>
            {refused.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <button type="button" onClick={() => setRefused(null)}>
            Close this note
          </button>
        </div>
      )}
      {!isKept && (
        <p className="refused" role="status">
          This browser does not keep the open job: save it to a file before you leave the page.
        </p>
      )}
      {isStarting && (
        <LatePart name="new cover form">
          <NewCover onClose={() => setStarting(false)} />
        </LatePart>
      )}
    </header>
  );
}
