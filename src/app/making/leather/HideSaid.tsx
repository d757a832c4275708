import { listed, type Vec2 } from '../../../core/index.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import type { HideDraft, ShapeFault } from './hideDraft.ts';
import { type ShapeName, sideWords } from './hideShape.ts';
import type { Chosen, HandShape } from './useHideHand.ts';

interface HideSaidProps {
  readonly draft: HideDraft | null;
  /** Why the draft, which is closed, cannot go into the job. */
  readonly fault: ShapeFault;
  readonly chosen: Chosen | null;
  /** The chosen shape as it is held, and its corner in hand. */
  readonly inHand: HandShape | undefined;
  readonly corner: number | null;
  readonly isEmpty: boolean;
}

/** What is wrong with a drawing of a hide, and what is in hand or can be done next. */
export function HideSaid({ draft, fault, chosen, inHand, corner, isEmpty }: HideSaidProps) {
  const lengths = useLengths();
  const at = corner === null ? undefined : inHand?.corners[corner];
  return (
    <div className="hide-said">
      {fault !== null && draft !== null && (
        <p className="issue" role="alert">
          {fault.kind === 'few'
            ? `${shapeWord(draft.name)}: it encloses no area yet. Move or add a corner.`
            : `${shapeWord(draft.name)}: sides ${sideWords(fault.sides)} cross or touch. Move a corner until none do; it then goes into the job.`}
        </p>
      )}
      <p className="place-line" role="status">
        {draft !== null && !draft.isClosed
          ? `${lengths.count(draft.corners.length, 'corner', 'corners')} so far. Tap corners round the edge, or draw along it. Tap the first corner to close it.`
          : inHand !== undefined && corner !== null && at !== undefined
            ? `${shapeWord(inHand.name)}, ${inHand.name === 'scale' ? `point ${'AB'[corner]}` : `corner ${corner + 1} of ${inHand.corners.length}`}: ${placeWords(at, lengths.length)}.`
            : isEmpty
              ? 'No leather is outlined yet. Draw the outline, or put a picture of it here first.'
              : chosen === null
                ? 'Press the outline or a defect to change it.'
                : chosen.name === 'scale'
                  ? 'Drag A and B onto two places whose distance you know.'
                  : 'Drag a corner to move it. Press a side to add one.'}
      </p>
    </div>
  );
}

const shapeWord = (name: ShapeName): string =>
  name === 'outline' ? 'Outline' : name === 'scale' ? 'Scale' : `Defect ${name + 1}`;

/** `120 mm from the left, 80 mm from below`, from the lines of the grid that are 0. */
const placeWords = ([x, y]: Vec2, print: (length: number) => string): string =>
  listed([`${print(x)} from the left`, `${print(y)} from below`]);
