import { type ReactNode, useCallback, useDeferredValue, useState } from 'react';
import type { SegmentId } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { StageControls } from './StageControls.tsx';
import StageView from './StageView.tsx';
import { OPENING_STAGE, type StageState } from './stageState.ts';
import './stage.css';

interface StageProps {
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
  /** Shown beside the picture, or under its controls where there is little room. */
  readonly beside: ReactNode;
}

/** The cover on the book, and the controls of its view. */
export function Stage({ highlight, beside }: StageProps) {
  const { look, setView } = useBench(({ view, setView }) => ({ look: view.look, setView }));
  const [stage, setWholeStage] = useState<StageState>(OPENING_STAGE);
  const [wasSlow, setWasSlow] = useState(false);
  const setStage = useCallback(
    (change: Partial<StageState>): void => setWholeStage((whole) => ({ ...whole, ...change })),
    [],
  );
  // Once a visit: a maker who then chooses the full look knows how slow it is.
  const chooseLightLook = useCallback((): void => {
    if (wasSlow) return;
    setWasSlow(true);
    setView({ look: 'light' });
  }, [wasSlow, setView]);

  return (
    <section className="stage" aria-label="The cover on the book">
      {/* Folding the cover takes longer than a step of a slider, so the picture may lag behind it. */}
      <StageView
        stage={useDeferredValue(stage)}
        setStage={setStage}
        highlight={useDeferredValue(highlight)}
        onSlowFrames={chooseLightLook}
      />
      {wasSlow && look === 'light' && (
        <p className="help not-printed">Drawing was slow on this machine, so the plain look was chosen.</p>
      )}
      <StageControls stage={stage} setStage={setStage} />
      <div className="stage-beside">{beside}</div>
    </section>
  );
}
