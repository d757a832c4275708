import { lazy, Suspense, useEffect, useState } from 'react';
import { valueAt } from '../../core/index.ts';
import { ErrorBoundary } from '../loading/ErrorBoundary.tsx';
import { firstPaint } from '../loading/firstPaint.ts';
import { LatePart } from '../loading/LatePart.tsx';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { addressOf, PLACES_IN_ROW, type Place } from '../state/place.ts';
import { useUndoKeys } from '../state/useUndoKeys.ts';
import './header.css';

const JobMenu = lazy(() => firstPaint.then(() => import('./JobMenu.tsx')));
const Find = lazy(() => import('../find/Find.tsx'));

/** The job, the places of the page, undo where there is something to take back, and the search. */
export function Header({ place }: { readonly place: Place }) {
  const dispatch = useDispatch();
  const { name, hasPast, hasFuture, isKept } = useBench(({ history, isKept }) => ({
    name: String(valueAt(history.document, 'name') ?? ''),
    hasPast: history.past.length > 0,
    hasFuture: history.future.length > 0,
    isKept,
  }));
  // A leather has steps of its own.
  const hasSteps = place.id !== 'leathers' || place.part === '';
  const [isFinding, setFinding] = useState(false);
  useUndoKeys(dispatch);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const isTyping = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
      if (event.key !== '/' || isTyping || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      setFinding(true);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);

  return (
    <>
      <header className="page-header">
        <h1>Coverwright</h1>
        <ErrorBoundary instead={(error) => <p role="alert">{`The job menu could not be shown: ${error.message}`}</p>}>
          <Suspense
            fallback={
              <button type="button" className="job-name" disabled>
                {name}
              </button>
            }
          >
            <JobMenu />
          </Suspense>
        </ErrorBoundary>
        <nav className="not-printed" aria-label="Places">
          {PLACES_IN_ROW.map(({ id, title }) => (
            <a key={id} className="link" href={addressOf(id)} aria-current={place.id === id ? 'page' : undefined}>
              {title}
            </a>
          ))}
        </nav>
        <div className="page-tools not-printed">
          {hasSteps && hasPast && (
            <button type="button" onClick={() => dispatch({ type: 'undo' })}>
              Undo
            </button>
          )}
          {hasSteps && hasFuture && (
            <button type="button" onClick={() => dispatch({ type: 'redo' })}>
              Redo
            </button>
          )}
          <button type="button" onClick={() => setFinding(true)}>
            Find
          </button>
        </div>
      </header>
      {!isKept && (
        <p className="refused" role="status">
          This browser does not keep the open job: save it to a file before you leave the page.
        </p>
      )}
      {isFinding && (
        <LatePart name="search">
          <Find onClose={() => setFinding(false)} />
        </LatePart>
      )}
    </>
  );
}
