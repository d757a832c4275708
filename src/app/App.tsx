import { lazy, Suspense } from 'react';
import { JobBar } from './JobBar.tsx';
import { ErrorBoundary } from './loading/ErrorBoundary.tsx';
import { firstPaint } from './loading/firstPaint.ts';
import { idle } from './loading/idle.ts';
import { LatePart } from './loading/LatePart.tsx';
import { LookAtEdges } from './loupe/LookAtEdges.tsx';
import { Checks } from './panel/Checks.tsx';
import { Verdict } from './panel/Verdict.tsx';
import { Stage } from './stage/Stage.tsx';
import { useNarrow } from './state/useNarrow.ts';
import { useZoneChoice } from './strip/useZoneChoice.ts';
import './bench.css';

// The first paint is the verdict and the cover's section; the rest follows at once, in its own files.
const JobForm = lazy(() => firstPaint.then(() => import('./form/JobForm.tsx')));
const DevelopedStrip = lazy(() => firstPaint.then(() => import('./strip/DevelopedStrip.tsx')));
const UprightStrip = lazy(() => firstPaint.then(() => import('./strip/UprightStrip.tsx')));
const CutSheet = lazy(() => firstPaint.then(() => import('./panel/CutSheet.tsx')));
const HowSure = lazy(() => firstPaint.then(() => import('./panel/HowSure.tsx')));
const Explore = lazy(() => firstPaint.then(idle).then(() => import('./explore/Explore.tsx')));
const ElasticNote = lazy(() => firstPaint.then(() => import('./panel/ElasticNote.tsx')));
const Making = lazy(() => firstPaint.then(() => import('./making/Making.tsx')));

/** The bench: the job at the left, the cover and its strip in the middle, the fit at the right; or the cover first. */
export function App() {
  const zones = useZoneChoice();
  const isNarrow = useNarrow();
  const form = (
    <div key="form" className="column form-column not-printed">
      <LatePart name="form">
        <JobForm />
      </LatePart>
    </div>
  );
  return (
    <div className="bench">
      <JobBar />
      <main>
        {!isNarrow && form}
        <div key="cover" className="column cover-column">
          <Stage
            highlight={zones.lit}
            beside={
              <LatePart name="upright strip">
                <UprightStrip zones={zones} />
              </LatePart>
            }
          />
          <LatePart name="strip" room="strip-room">
            <DevelopedStrip zones={zones} />
          </LatePart>
          <LatePart name="explore">
            <Explore />
          </LatePart>
        </div>
        {isNarrow && form}
        <div key="fit" className="column fit-column">
          <Verdict />
          <ErrorBoundary instead={() => null}>
            <Suspense>
              <ElasticNote />
            </Suspense>
          </ErrorBoundary>
          <LookAtEdges />
          <Checks />
          <LatePart name="part “How sure”">
            <HowSure />
          </LatePart>
          <LatePart name="cut sheet">
            <CutSheet highlight={zones.lit} />
          </LatePart>
        </div>
      </main>
      <LatePart name="workbench" room="workbench-room">
        <Making />
      </LatePart>
    </div>
  );
}
