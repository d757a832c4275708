import {
  type CSSProperties,
  type FunctionComponent,
  lazy,
  type ReactNode,
  type Ref,
  Suspense,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import type { SegmentId } from '../../core/index.ts';
import { Awaited, awaitedWords } from '../loading/Awaited.tsx';
import { ErrorBoundary } from '../loading/ErrorBoundary.tsx';
import { quiet } from '../loading/quiet.ts';
import type { Insets } from '../scene/insets.ts';
import type { EdgeHandle, OnEdge } from '../scene/marks/EdgePicker.tsx';
import { hasWebGl, isWebGlKnown, type SceneAbsence } from '../scene/sceneProps.ts';
import type { Spot } from '../scene/spot.ts';
import { SectionDrawing } from '../sheet/SectionDrawing.tsx';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { useColourScheme } from '../state/useColourScheme.ts';
import { keptViewChoice } from '../state/viewChoice.ts';
import type { LitSceneProps } from './LitScene.tsx';
import { lookFrom, openingOf, poseWords, type StageState } from './stageState.ts';

// Setting up a scene keeps page and driver busy, so it waits until the maker does something or the page is at rest.
const LitScene = lazy(async (): Promise<{ default: FunctionComponent<LitSceneProps> }> => {
  await quiet();
  if (!hasWebGl()) return { default: NoScene };
  const { warmUp } = await import('../scene/warmUp.ts');
  const [scene] = await Promise.all([import('./LitScene.tsx'), warmUp(keptViewChoice().look)]);
  return scene;
});

function NoScene({ onAbsence }: LitSceneProps) {
  useLayoutEffect(() => onAbsence('noWebGl'), [onAbsence]);
  return null;
}

const needs = ({ design, report: { headline }, view: { look, scheme }, lengths }: Bench) => ({
  design,
  headline,
  look,
  scheme,
  lengths,
});

type StageViewProps = ReturnType<typeof needs> & {
  readonly stage: StageState;
  readonly setStage: (change: Partial<StageState>) => void;
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
  /** Place of the cover that a check speaks of, lit. */
  readonly spot: Spot | null;
  /** Out of sight: what is drawn stays as it was. */
  readonly isAway: boolean;
  /** What lies over the picture. */
  readonly insets: Insets;
  readonly edges: Ref<EdgeHandle>;
  readonly onEdge: OnEdge;
  readonly onLook: () => void;
  readonly onSlowFrames: () => void;
};

/** Why the section is shown in place of the scene. */
const REASONS: Readonly<Record<Exclude<SceneAbsence, 'preparing'>, string>> = {
  noWebGl: 'This browser offers no WebGL 2, so the three-dimensional view cannot be drawn.',
  contextLost: 'The browser has taken the drawing context away; the three-dimensional view comes back with it.',
};

const PREPARING = (
  <Awaited>
    {(isLate) =>
      isLate ? awaitedWords('The three-dimensional view', isLate) : 'The three-dimensional view is being prepared.'
    }
  </Awaited>
);

/** The cover on the book in three dimensions, or its section until that is drawn or where it cannot be drawn. */
function StageView(now: StageViewProps) {
  const seen = useRef(now);
  if (!now.isAway) seen.current = now;
  const props = seen.current;
  const {
    design,
    headline,
    look,
    scheme,
    lengths,
    stage,
    setStage,
    highlight,
    spot,
    insets,
    edges,
    onEdge,
    onLook,
    onSlowFrames,
  } = props;
  const [absence, setAbsence] = useState<SceneAbsence | null>(isWebGlKnown() ? 'preparing' : 'noWebGl');
  const colourScheme = useColourScheme(scheme);
  const { pose, point, shape, slice, viewpoint, showsAreas } = stage;
  const section = (reason: ReactNode, isBrief = false) => (
    <SectionDrawing
      design={design}
      headline={headline}
      point={point}
      opening={openingOf(stage)}
      isBrief={isBrief}
      reason={reason}
    />
  );

  return (
    <div
      className="stage-view"
      style={{ '--words': `${insets.top}px`, '--runs': `${insets.bottom}px` } as CSSProperties}
    >
      <ErrorBoundary instead={(error) => section(`The three-dimensional view failed: ${error.message}`)}>
        {absence !== null && section(absence === 'preparing' ? PREPARING : REASONS[absence], absence === 'preparing')}
        {absence !== 'noWebGl' && (
          <Suspense>
            <div className="stage-scene" data-absent={absence ?? undefined}>
              <LitScene
                design={design}
                pose={pose}
                point={point}
                shape={shape}
                slice={slice}
                units={lengths.units}
                look={look}
                highlight={highlight}
                spot={spot}
                showsAreas={showsAreas}
                insets={insets}
                edgesRef={edges}
                onEdge={onEdge}
                onLook={onLook}
                viewpoint={viewpoint}
                onViewpointChange={(next) => setStage(lookFrom(stage, next))}
                onSlowFrames={onSlowFrames}
                onAbsence={setAbsence}
                colourScheme={colourScheme}
                formatLength={lengths.gap}
                describe={`${design.job.name} in its cover, ${poseWords(stage)}, seen from ${viewpoint}. ${headline}`}
              />
            </div>
          </Suspense>
        )}
      </ErrorBoundary>
    </div>
  );
}

export default lagging(needs, StageView);
