import { MOST_DEFECTS } from '../../../core/index.ts';
import type { HideDraft } from './hideDraft.ts';
import type { ShapeName } from './hideShape.ts';

interface HideDraftButtonsProps {
  readonly draft: HideDraft | null;
  /** Whether the job has an outline already, and how many defects. */
  readonly isOutlined: boolean;
  readonly defects: number;
  /** Whether there is a picture to be scaled first. */
  readonly isUnscaled: boolean;
  readonly begin: (name: ShapeName) => void;
  readonly close: (draft: HideDraft) => void;
  readonly back: () => void;
  readonly giveUp: () => void;
}

/** Over the drawing of a hide: begins a shape, and ends the one that is being drawn. */
export function HideDraftButtons(props: HideDraftButtonsProps) {
  const { draft, isOutlined, defects, isUnscaled, begin, close, back, giveUp } = props;
  return (
    <div className="row">
      {draft === null ? (
        <>
          <button
            type="button"
            className={isOutlined ? undefined : 'main'}
            disabled={isUnscaled}
            onClick={() => begin('outline')}
          >
            {isOutlined ? 'Draw the outline anew' : 'Draw the outline'}
          </button>
          <button
            type="button"
            disabled={isUnscaled || !isOutlined || defects >= MOST_DEFECTS}
            onClick={() => begin(defects)}
          >
            Draw a defect
          </button>
        </>
      ) : (
        <>
          {!draft.isClosed && (
            <button type="button" className="main" disabled={draft.corners.length < 3} onClick={() => close(draft)}>
              Close it
            </button>
          )}
          <button type="button" onClick={back}>
            Back one step
          </button>
          <button type="button" onClick={giveUp}>
            Give this drawing up
          </button>
        </>
      )}
    </div>
  );
}
