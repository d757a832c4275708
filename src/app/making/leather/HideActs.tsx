import type { HideDraft } from './hideDraft.ts';
import { type Chosen, type HandShape, type useHideHand, ZOOM } from './useHideHand.ts';

interface HideActsProps {
  readonly hand: ReturnType<typeof useHideHand>;
  /** What is being drawn and is not closed. */
  readonly drawing: HideDraft | null;
  readonly chosen: Chosen | null;
  readonly inHand: HandShape | undefined;
  readonly isEmpty: boolean;
  readonly showAll: () => void;
  readonly takeOut: () => void;
}

/** Under the drawing of a hide: what fingers and keys do with it, as buttons. */
export const HideActs = ({ hand, drawing, chosen, inHand, isEmpty, showAll, takeOut }: HideActsProps) => (
  <div className="row hide-acts">
    <button type="button" onClick={() => hand.zoomBy(ZOOM)}>
      Larger
    </button>
    <button type="button" onClick={() => hand.zoomBy(1 / ZOOM)}>
      Smaller
    </button>
    <button type="button" onClick={showAll}>
      Show all
    </button>
    {drawing === null && !isEmpty && (
      <>
        <button type="button" onClick={() => hand.goRound(-1)}>
          Corner before
        </button>
        <button type="button" onClick={() => hand.goRound(1)}>
          Next corner
        </button>
      </>
    )}
    {chosen !== null && chosen.name !== 'scale' && chosen.corner !== null && (
      <>
        <button type="button" onClick={hand.addCorner}>
          Add a corner after it
        </button>
        <button type="button" disabled={(inHand?.corners.length ?? 0) <= 3} onClick={takeOut}>
          Take the corner out
        </button>
      </>
    )}
    {typeof chosen?.name === 'number' && chosen.corner === null && (
      <button type="button" onClick={takeOut}>
        Take the defect out
      </button>
    )}
  </div>
);
