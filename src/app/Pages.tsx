import { lazy } from 'react';
import { App } from './App.tsx';
import { firstPaint } from './loading/firstPaint.ts';
import { LatePart } from './loading/LatePart.tsx';
import { MissingPartNote } from './loading/MissingPartNote.tsx';
import { QuietPart } from './loading/QuietPart.tsx';
import { usePlace } from './state/place.ts';

const CustomerView = lazy(() => import('./customer/CustomerView.tsx'));
const Hatches = lazy(() => import('./sheet/Hatches.tsx'));
const EditionNote = lazy(() => firstPaint.then(() => import('./offline/EditionNote.tsx')));

/** The maker's places, or the sheet for the customer; and a note when a new edition waits. */
export function Pages() {
  const place = usePlace();
  return (
    <>
      <MissingPartNote />
      <QuietPart>
        <Hatches />
      </QuietPart>
      <QuietPart>
        <EditionNote />
      </QuietPart>
      {place.id === 'customer' ? (
        <LatePart name="customer view">
          <CustomerView />
        </LatePart>
      ) : (
        <App place={place} />
      )}
    </>
  );
}
