import { lazy, Suspense } from 'react';
import { CoverPlace } from './cover/CoverPlace.tsx';
import { Header } from './header/Header.tsx';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { firstPaint } from './loading/firstPaint.ts';
import { idle } from './loading/idle.ts';
import { LatePart } from './loading/LatePart.tsx';
import { QuietPart } from './loading/QuietPart.tsx';
import { VerdictBar } from './panel/Verdict.tsx';
import type { Place } from './state/place.ts';
import { useZoneChoice } from './strip/useZoneChoice.ts';
import './page.css';

// The first paint is the verdict and the cover's section; the rest follows at once, in its own files.
const ThumbRow = lazy(() => firstPaint.then(() => import('./cover/ThumbRow.tsx')));
const Keeping = lazy(() => firstPaint.then(() => import('./shelf/Keeping.tsx')));
const TrialsKeeper = lazy(() => firstPaint.then(idle).then(() => import('./explore/TrialsKeeper.tsx')));
const StripsPlace = lazy(() => import('./strip/StripsPlace.tsx'));
const Explore = lazy(() => import('./explore/Explore.tsx'));
const Vocabulary = lazy(() => import('./fields/Vocabulary.tsx'));
const LeatherChoicePlace = lazy(() => import('./customer/choice/LeatherChoicePlace.tsx'));
const LeathersPlace = lazy(() => import('./leathers/LeathersPlace.tsx'));
const PhotographPlace = lazy(() => import('./photograph/PhotographPlace.tsx'));
const Making = lazy(() => import('./making/Making.tsx'));
const PrintedBench = lazy(() => firstPaint.then(() => import('./print/PrintedBench.tsx')));

/** The page: its header, the place where the maker is, and the cover, which stays drawn while the maker is elsewhere. */
export function App({ place }: { readonly place: Place }) {
  const zones = useZoneChoice();
  const isAway = place.id !== 'cover';
  return (
    <div className="page" data-place={place.id} data-part={place.part}>
      <QuietPart>
        <PrintedBench place={place} />
      </QuietPart>
      <Header place={place} />
      {isAway && <VerdictBar />}
      <main>
        <ErrorBoundary instead={(error) => <p role="alert">{`The shelf could not be shown: ${error.message}`}</p>}>
          <Suspense>
            <Keeping showsShelf={place.id === 'shelf'} />
          </Suspense>
        </ErrorBoundary>
        <CoverPlace zones={zones} isAway={isAway} />
        {place.id === 'strips' && (
          <LatePart name="place Strips">
            <StripsPlace zones={zones} />
          </LatePart>
        )}
        {place.id === 'explore' && (
          <LatePart name="place Explore">
            <Explore />
          </LatePart>
        )}
        {place.id === 'leathers' && (
          <LatePart name="place Leathers">
            {place.part === 'choice' ? <LeatherChoicePlace /> : <LeathersPlace part={place.part} />}
          </LatePart>
        )}
        {place.id === 'photograph' && (
          <LatePart name="place “By photograph”">
            <PhotographPlace />
          </LatePart>
        )}
        {place.id === 'words' && (
          <LatePart name="list of words">
            <Vocabulary />
          </LatePart>
        )}
        {place.id === 'workbench' && (
          <LatePart name="workbench">
            <Making part={place.part} />
          </LatePart>
        )}
      </main>
      <QuietPart>
        <TrialsKeeper />
      </QuietPart>
      <QuietPart>{place.part !== 'steps' && <ThumbRow place={place} />}</QuietPart>
    </div>
  );
}
