import { lazy, type ReactNode, Suspense, useDeferredValue, useMemo, useState } from 'react';
import { SectionDrawing } from '../sheet/SectionDrawing.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { useColourScheme } from '../state/useColourScheme.ts';
import { patternZone } from '../strip/patternZone.ts';
import { LatePart } from './LatePart.tsx';
import { Mishap } from './Mishap.tsx';
import { OPENING_STAGE, openingOf, poseWords, type StageState } from './stageState.ts';

const StageControls = lazy(() => import('./StageControls.tsx'));
const CoverScene = lazy(() => import('../scene/CoverScene.tsx'));

interface StageProps {
  /** Stretch of the strip to light up. */
  readonly highlight: string | null;
  /** What stands beside the picture, or under its controls where there is little room. */
  readonly beside: ReactNode;
}

const REASONS = {
  noWebGl: 'This browser offers no WebGL 2, so the three-dimensional view cannot be drawn.',
  contextLost: 'The browser has taken the drawing context away; the three-dimensional view comes back with it.',
};

/** The cover on the book in three dimensions, or its section where that cannot be had. */
export function Stage({ highlight, beside }: StageProps) {
  const { design, report, view, setView, lengths, history } = useBench();
  const [stage, setWholeStage] = useState<StageState>(OPENING_STAGE);
  const [unavailable, setUnavailable] = useState<keyof typeof REASONS | null>(null);
  const [wasSlow, setWasSlow] = useState(false);
  // Folding the cover anew takes longer than a keystroke or a step of a slider, so the picture may lag behind them.
  const shownDesign = useDeferredValue(design);
  const shownPose = useDeferredValue(stage.pose);
  const colourScheme = useColourScheme(view.scheme);
  const { pose, point, shape, slice, viewpoint } = stage;
  const setStage = (change: Partial<StageState>): void => setWholeStage((whole) => ({ ...whole, ...change }));
  const { name } = history.good.job;
  const lit = useMemo(
    () => (highlight === null ? null : patternZone(design, point, highlight)),
    [design, point, highlight],
  );
  const section = (reason: string) => <SectionDrawing point={point} opening={openingOf(pose)} reason={reason} />;

  const chooseLightLook = (): void => {
    setWasSlow(true);
    setView({ look: 'light' });
  };

  return (
    <section className="stage" aria-label="The cover on the book">
      <div className="stage-view">
        {unavailable !== null && section(REASONS[unavailable])}
        {unavailable !== 'noWebGl' && (
          <Mishap instead={(error) => section(`The three-dimensional view failed: ${error.message}`)}>
            <Suspense fallback={section('The three-dimensional view is being fetched.')}>
              <div className="stage-scene" hidden={unavailable !== null}>
                <CoverScene
                  design={shownDesign}
                  pose={shownPose}
                  point={point}
                  shape={shape}
                  slice={slice}
                  units={view.units}
                  look={view.look}
                  highlight={lit}
                  viewpoint={viewpoint}
                  onViewpointChange={(next) => setStage({ viewpoint: next })}
                  onSlowFrames={chooseLightLook}
                  onUnavailable={setUnavailable}
                  colourScheme={colourScheme}
                  formatLength={lengths.gap}
                  describe={`${name} in its cover, ${poseWords(pose)}, seen from ${viewpoint}. ${report.headline}`}
                />
              </div>
            </Suspense>
          </Mishap>
        )}
      </div>
      {wasSlow && view.look === 'light' && (
        <p className="help">Drawing was slow on this machine, so the plain look was chosen.</p>
      )}
      <LatePart name="controls">
        <StageControls stage={stage} setStage={setStage} />
      </LatePart>
      <div className="stage-beside">{beside}</div>
    </section>
  );
}
