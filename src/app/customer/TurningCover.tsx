import { lazy, type ReactNode, Suspense, useEffect, useMemo, useState } from 'react';
import { coverSection, leastWrap, type Pose } from '../../core/index.ts';
import { ErrorBoundary } from '../loading/ErrorBoundary.tsx';
import { isWebGlKnown } from '../scene/sceneProps.ts';
import { VIEWPOINTS, type Viewpoint } from '../scene/viewpoints.ts';
import { SectionPicture } from '../sheet/SectionPicture.tsx';
import type { CoverPicture } from '../stage/coverPicture.ts';
import { useBench } from '../state/BenchContext.tsx';

const CoverScene = lazy(() => import('../scene/CoverScene.tsx'));

interface TurningCoverProps {
  /** Radians, 0 closed to pi flat. */
  readonly opening: number;
  /** What it shows, in words. */
  readonly caption: string;
  readonly isTurning: boolean;
  readonly picture: CoverPicture;
}

/** The cover on its book at one opening, turning; its section where there is no 3D. */
export function TurningCover({ opening, caption, isTurning, picture }: TurningCoverProps) {
  const { design, look, setView, lengths } = useBench(({ design, view, setView, lengths }) => ({
    design,
    look: view.look,
    setView,
    lengths,
  }));
  const [viewpoint, setViewpoint] = useState<Viewpoint>(VIEWPOINTS[0]);
  const [isMissing, setMissing] = useState(!isWebGlKnown());
  // The leather that the verdict speaks of, so that picture, caption and sentence tell one angle.
  const point = leastWrap(design);
  const pose = useMemo<Pose>(() => ({ kind: 'opening', angle: opening }), [opening]);
  const describe = `${design.job.name} in its cover: ${caption.toLowerCase()}`;
  const section = (
    <div className="section-drawing">
      <SectionPicture
        section={coverSection(design, point, opening)}
        label={`Section across the spine: ${caption.toLowerCase()}`}
      />
    </div>
  );
  return (
    <figure>
      <div className="customer-scene">
        {isMissing ? (
          <Instead tell={picture.tellMissing}>{section}</Instead>
        ) : (
          <ErrorBoundary instead={() => <Instead tell={picture.tellMissing}>{section}</Instead>}>
            <Suspense fallback={section}>
              <CoverScene
                design={design}
                pose={pose}
                point={point}
                slice={null}
                units={lengths.units}
                look={look}
                viewpoint={viewpoint}
                onViewpointChange={setViewpoint}
                onSlowFrames={() => setView({ look: 'light' })}
                onAbsence={(reason) => setMissing(reason === 'noWebGl')}
                colourScheme="light"
                formatLength={lengths.gap}
                describe={describe}
                marked={false}
                turning={isTurning}
                pictureRef={picture.holdScene}
              />
            </Suspense>
          </ErrorBoundary>
        )}
      </div>
      <img ref={picture.paper} className="customer-print only-printed" hidden alt={describe} />
      <figcaption>{caption}</figcaption>
    </figure>
  );
}

/** Replaces the scene where there is none, and reports that. */
function Instead({ tell, children }: { readonly tell: () => void; readonly children: ReactNode }) {
  useEffect(tell, [tell]);
  return children;
}
