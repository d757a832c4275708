import { lazy, Suspense, useSyncExternalStore } from 'react';
import { App } from './App.tsx';
import { MissingPartNote } from './offline/MissingPartNote.tsx';
import { LatePart } from './stage/LatePart.tsx';
import { Mishap } from './stage/Mishap.tsx';
import { painted } from './stage/painted.ts';

const CustomerView = lazy(() => import('./customer/CustomerView.tsx'));
const EditionNote = lazy(() => painted.then(() => import('./offline/EditionNote.tsx')));

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
      <Mishap instead={() => null}>
        <Suspense>
          <EditionNote />
        </Suspense>
      </Mishap>
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
