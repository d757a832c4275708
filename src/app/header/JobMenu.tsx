import { lazy, useId, useRef, useState } from 'react';
import { type JobDocument, valueAt } from '../../core/index.ts';
import { FileButton } from '../fields/FileButton.tsx';
import { issueLine } from '../fields/issueWords.ts';
import { PassingNote } from '../fields/PassingNote.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { useBench, useBenchStore, useDispatch } from '../state/BenchContext.tsx';
import { saveJobFile } from '../state/jobFile.ts';
import { addressOf, PLACES_IN_ROW } from '../state/place.ts';
import { Display } from './Display.tsx';

const NewCover = lazy(() => import('../form/NewCover.tsx'));
const ShareLink = lazy(() => import('../shelf/ShareLink.tsx'));

/** The job as a whole, behind its name: its name, new and kept covers, files, the link, printing, and the display. */
export default function JobMenu() {
  const { getState } = useBenchStore();
  const dispatch = useDispatch();
  const { name, isWhole } = useBench(({ history }) => ({
    name: String(valueAt(history.document, 'name') ?? ''),
    isWhole: history.parsed.ok,
  }));
  const [refused, setRefused] = useState<{ file: string; lines: readonly string[] } | null>(null);
  const [isStarting, setStarting] = useState(false);
  const [isSharing, setSharing] = useState(false);
  const menu = useRef<HTMLDivElement>(null);
  const id = useId();
  const close = (): void => menu.current?.hidePopover();
  /** Runs what is chosen with the menu out of the way. */
  const chosen = (work: () => void) => (): void => {
    close();
    work();
  };

  const openFile = async (file: File): Promise<void> => {
    const { openJobFile } = await import('../state/openJobFile.ts');
    close();
    const opened = await openJobFile(file);
    if ('issues' in opened) setRefused({ file: file.name, lines: opened.issues.map(issueLine) });
    else openDocument(opened.document);
  };
  const openDocument = (document: JobDocument): void => {
    setRefused(null);
    dispatch({ type: 'open', document });
  };

  return (
    <>
      <button type="button" className="job-name" popoverTarget={id} aria-label={`Job: ${name}`}>
        {name === '' ? 'Untitled cover' : name}
      </button>
      <div ref={menu} className="job-menu not-printed" id={id} popover="auto">
        <label>
          Job{' '}
          <input
            data-path="name"
            type="text"
            autoComplete="off"
            value={name}
            maxLength={200}
            onChange={(event) =>
              dispatch({ type: 'edit', key: 'name', patches: [{ path: 'name', value: event.target.value }] })
            }
            onBlur={() => dispatch({ type: 'settle' })}
          />
        </label>
        <ul>
          <li>
            <button type="button" onClick={chosen(() => setStarting(true))}>
              New cover
            </button>
          </li>
          <li>
            <a className="link" href={addressOf('shelf')} onClick={close}>
              Shelf
            </a>
          </li>
          <li>
            <a className="link" href={addressOf('leathers')} onClick={close}>
              Leathers
            </a>
          </li>
          <li>
            <a className="link" href={addressOf('photograph')} onClick={close}>
              By photograph
            </a>
          </li>
          <li>
            <FileButton title="Open file" asks="Job file" onFile={(file) => void openFile(file)} />
          </li>
          <li>
            <button
              type="button"
              title={isWhole ? undefined : 'Saves the last complete job'}
              onClick={chosen(() => saveJobFile(getState().history.good.document))}
            >
              Save file
            </button>
          </li>
          <li>
            <button type="button" onClick={chosen(() => setSharing(true))}>
              Share link
            </button>
          </li>
          <li>
            <button type="button" onClick={chosen(() => window.print())}>
              Print
            </button>
          </li>
          <li>
            <a className="link" href={addressOf('words')} onClick={close}>
              Words
            </a>
          </li>
        </ul>
        <ul className="menu-places">
          {PLACES_IN_ROW.map(({ id: place, title }) => (
            <li key={place}>
              <a className="link" href={addressOf(place)} onClick={close}>
                {title}
              </a>
            </li>
          ))}
        </ul>
        <Display />
      </div>
      {refused !== null && (
        <PassingNote role="alert" dismiss={() => setRefused(null)}>
          <p>
            <b>{refused.file}</b> was not opened; the open job is unchanged.
          </p>
          <ul>
            {refused.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </PassingNote>
      )}
      {isStarting && (
        <LatePart name="new cover form">
          <NewCover onClose={() => setStarting(false)} />
        </LatePart>
      )}
      {isSharing && (
        <LatePart name="link">
          <ShareLink onClose={() => setSharing(false)} />
        </LatePart>
      )}
    </>
  );
}
