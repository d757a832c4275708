import { useCallback, useDeferredValue, useState } from 'react';
import type { SegmentId } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import type { Spot } from '../state/checkSpot.ts';
import { StageControls } from './StageControls.tsx';
import StageView from './StageView.tsx';
import { OPENING_STAGE, type StageState } from './stageState.ts';
import './stage.css';

interface StageProps {
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
  /** Place of the cover that a check speaks of, lit in the picture. */
  readonly spot: Spot | null;
  /** Out of sight: the picture stays as it was. */
  readonly isAway: boolean;
}

/** The cover on the book, and the controls of its view. */
export function Stage({ highlight, spot, isAway }: StageProps) {
  const { look, setView, isWhole } = useBench(({ view, setView, history }) => ({
    look: view.look,
    setView,
    isWhole: history.parsed.ok,
  }));
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
    // Of the last complete job while an entry cannot be used.
    <section className="stage" aria-label="The cover on the book" data-incomplete={!isWhole || undefined}>
      {/* Folding the cover takes longer than a step of a slider, so the picture may lag behind it. */}
      <StageView
        stage={useDeferredValue(stage)}
        setStage={setStage}
        highlight={useDeferredValue(highlight)}
        spot={useDeferredValue(spot)}
        isAway={isAway}
        onSlowFrames={chooseLightLook}
      />
      {wasSlow && look === 'light' && (
        <p className="help stage-slow not-printed">Drawing was slow on this machine, so the plain look was chosen.</p>
      )}
      <StageControls stage={stage} setStage={setStage} />
    </section>
  );
}
