import { lazy, type RefObject, useCallback, useDeferredValue, useRef, useState } from 'react';
import type { SegmentId } from '../../core/index.ts';
import { LatePart } from '../loading/LatePart.tsx';
import type { LoupePlace } from '../loupe/Loupe.tsx';
import type { EdgeHandle, OnEdge } from '../scene/marks/EdgePicker.tsx';
import type { Spot } from '../scene/spot.ts';
import { useBench } from '../state/BenchContext.tsx';
import { useNarrow } from '../state/useNarrow.ts';
import { StageControls } from './StageControls.tsx';
import StageView from './StageView.tsx';
import { OPENING_STAGE, type StageState } from './stageState.ts';
import { useInsets } from './useInsets.ts';
import './stage.css';

const StageLoupe = lazy(() => import('./StageLoupe.tsx'));

interface StageProps {
  /** Stretch of the strip to highlight. */
  readonly highlight: SegmentId | null;
  /** Place of the cover that a check speaks of, lit in the picture. */
  readonly spot: Spot | null;
  /** Out of sight: the picture stays as it was. */
  readonly isAway: boolean;
  /** The words that lie over the top of the picture, where there is room. */
  readonly words: RefObject<HTMLElement | null>;
  readonly loupe: LoupePlace | null;
  readonly setLoupe: (place: LoupePlace | null) => void;
}

/** The cover on the book, and the controls of its view. */
export function Stage({ highlight, spot, isAway, words, loupe, setLoupe }: StageProps) {
  const whole = useRef<HTMLElement>(null);
  const controls = useRef<HTMLDivElement>(null);
  const edges = useRef<EdgeHandle>(null);
  const look = useRef(() => {});
  const onLook = useCallback(() => look.current(), []);
  const isNarrow = useNarrow();
  const [hovered, setHovered] = useState<LoupePlace | null>(null);
  const insets = useInsets(whole, words, controls);
  const { isPlain, setView, isWhole } = useBench(({ view, setView, history }) => ({
    isPlain: view.look === 'light',
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

  const onEdge = useCallback<OnEdge>(
    (hit, how) => {
      const place = hit && { edge: hit.edge, at: hit.at, point: stage.point };
      if (how === 'hover') setHovered(place);
      else if (place !== null) setLoupe(place);
    },
    [stage.point, setLoupe],
  );
  const seen = loupe ?? hovered;

  return (
    // Of the last complete job while an entry cannot be used.
    <section ref={whole} className="stage" aria-label="The cover on the book" data-incomplete={!isWhole || undefined}>
      {/* Folding the cover takes longer than a step of a slider, so the picture may lag behind it. */}
      <StageView
        stage={useDeferredValue(stage)}
        setStage={setStage}
        highlight={useDeferredValue(highlight)}
        spot={useDeferredValue(spot)}
        isAway={isAway}
        insets={insets}
        edges={edges}
        onEdge={onEdge}
        onLook={onLook}
        onSlowFrames={chooseLightLook}
      />
      {seen !== null && !isNarrow && (
        <LatePart name="loupe">
          <StageLoupe place={seen} setPlace={setLoupe} isHovering={loupe === null} edges={edges} look={look} />
        </LatePart>
      )}
      {wasSlow && isPlain && (
        <p className="help stage-slow not-printed">Drawing was slow on this machine, so the plain look was chosen.</p>
      )}
      <StageControls stage={stage} setStage={setStage} overlay={controls} />
    </section>
  );
}
