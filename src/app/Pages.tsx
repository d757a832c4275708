import { lazy, Suspense, useSyncExternalStore } from 'react';
import { App } from './App.tsx';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { firstPaint } from './loading/firstPaint.ts';
import { LatePart } from './loading/LatePart.tsx';
import { MissingPartNote } from './loading/MissingPartNote.tsx';
import { Hatches } from './sheet/Hatches.tsx';

const CustomerView = lazy(() => import('./customer/CustomerView.tsx'));
const EditionNote = lazy(() => firstPaint.then(() => import('./offline/EditionNote.tsx')));

function subscribe(onChange: () => void): () => void {
  window.addEventListener('hashchange', onChange);
  return () => window.removeEventListener('hashchange', onChange);
}

/** The bench, or with `#customer` in the address the sheet for the customer; and a note when a new edition waits. */
export function Pages() {
  const fragment = useSyncExternalStore(subscribe, () => window.location.hash);
  return (
    <>
      <MissingPartNote />
      <Hatches />
      <ErrorBoundary instead={() => null}>
        <Suspense>
          <EditionNote />
        </Suspense>
      </ErrorBoundary>
      {fragment === '#customer' ? (
        <LatePart name="customer view">
          <CustomerView />
        </LatePart>
      ) : (
        <App />
      )}
    </>
  );
}
