import { lazy, Suspense } from 'react';
import { JobBar } from './bench/JobBar.tsx';
import { Checks } from './panel/Checks.tsx';
import { Verdict } from './panel/Verdict.tsx';
import { Hatches } from './sheet/Hatches.tsx';
import { idle } from './stage/idle.ts';
import { LatePart } from './stage/LatePart.tsx';
import { Mishap } from './stage/Mishap.tsx';
import { painted } from './stage/painted.ts';
import { Stage } from './stage/Stage.tsx';
import { useZoneChoice } from './strip/useZoneChoice.ts';

// The first paint is the verdict and the cover's section; the rest follows at once, in its own files.
const JobForm = lazy(() => painted.then(() => import('./bench/JobForm.tsx')));
const DevelopedStrip = lazy(() => painted.then(() => import('./strip/DevelopedStrip.tsx')));
const UprightStrip = lazy(() => painted.then(() => import('./strip/UprightStrip.tsx')));
const CutSheet = lazy(() => painted.then(() => import('./panel/CutSheet.tsx')));
const Explore = lazy(() => painted.then(idle).then(() => import('./explore/Explore.tsx')));
const ElasticNote = lazy(() => painted.then(() => import('./elastic/ElasticNote.tsx')));
const Workbench = lazy(() => painted.then(() => import('./workbench/Workbench.tsx')));

/** The bench: the job at the left, the cover and its strip in the middle, the fit at the right. */
export function App() {
  const zones = useZoneChoice();
  return (
    <div className="bench">
      <Hatches />
      <JobBar />
      <main>
        <div className="column form-column">
          <LatePart name="form">
            <JobForm />
          </LatePart>
        </div>
        <div className="column cover-column">
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
        <div className="column fit-column">
          <Verdict />
          <Mishap instead={() => null}>
            <Suspense>
              <ElasticNote />
            </Suspense>
          </Mishap>
          <Checks />
          <LatePart name="cut sheet">
            <CutSheet highlight={zones.lit} />
          </LatePart>
        </div>
      </main>
      <LatePart name="workbench" room="workbench-room">
        <Workbench />
      </LatePart>
    </div>
  );
}
