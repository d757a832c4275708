import { lazy, Suspense, useState } from 'react';
import { SectionDrawing } from '../sheet/SectionDrawing.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { lagging } from '../state/lagging.tsx';
import { useColourScheme } from '../state/useColourScheme.ts';
import { keptViewChoice } from '../state/viewChoice.ts';
import { Awaited, awaitedWords } from './Awaited.tsx';
import { idle } from './idle.ts';
import { Mishap } from './Mishap.tsx';
import { painted } from './painted.ts';
import { openingOf, poseWords, type StageState } from './stageState.ts';

// Setting a scene up keeps page and driver busy, so it waits until the rest of the bench is there.
const LitScene = lazy(async () => {
  await painted;
  await idle();
  const { warmUp } = await import('../scene/warmUp.ts');
  const [scene] = await Promise.all([import('./LitScene.tsx'), warmUp(keptViewChoice().look)]);
  return scene;
});

interface StageViewProps {
  readonly stage: StageState;
  readonly setStage: (change: Partial<StageState>) => void;
  /** Stretch of the strip to light up. */
  readonly highlight: string | null;
  readonly onSlowFrames: () => void;
}

const REASONS = {
  noWebGl: 'This browser offers no WebGL 2, so the three-dimensional view cannot be drawn.',
  contextLost: 'The browser has taken the drawing context away; the three-dimensional view comes back with it.',
};

/** The picture: the cover on the book in three dimensions, or its section where that cannot be had. */
export const StageView = lagging(function StageView({ stage, setStage, highlight, onSlowFrames }: StageViewProps) {
  const { design, report, view, lengths } = useBench();
  const [unavailable, setUnavailable] = useState<keyof typeof REASONS | null>(null);
  const colourScheme = useColourScheme(view.scheme);
  const { pose, point, shape, slice, viewpoint } = stage;
  const section = (reason: string) => <SectionDrawing point={point} opening={openingOf(pose)} reason={reason} />;

  return (
    <div className="stage-view">
      {unavailable !== null && section(REASONS[unavailable])}
      {unavailable !== 'noWebGl' && (
        <Mishap instead={(error) => section(`The three-dimensional view failed: ${error.message}`)}>
          <Suspense
            fallback={<Awaited>{(isLate) => section(awaitedWords('The three-dimensional view', isLate))}</Awaited>}
          >
            <div className="stage-scene" hidden={unavailable !== null}>
              <LitScene
                design={design}
                pose={pose}
                point={point}
                shape={shape}
                slice={slice}
                units={lengths.units}
                look={view.look}
                highlight={highlight}
                viewpoint={viewpoint}
                onViewpointChange={(next) => setStage({ viewpoint: next })}
                onSlowFrames={onSlowFrames}
                onUnavailable={setUnavailable}
                colourScheme={colourScheme}
                formatLength={lengths.gap}
                describe={`${design.job.name} in its cover, ${poseWords(pose)}, seen from ${viewpoint}. ${report.headline}`}
              />
            </div>
          </Suspense>
        </Mishap>
      )}
    </div>
  );
});
