import type { KeyboardEvent, PointerEvent } from 'react';
import {
  type Artwork,
  designName,
  type LetterFaces,
  placedDesign,
  placeWords,
  type ToolingArea,
  type ToolingDesign,
} from '../../../core/index.ts';
import { useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { BorderMark, DesignGrips, MovableMark } from './DesignMark.tsx';
import { designShape, isMovable } from './designShape.ts';
import type { DesignHand } from './useDesignDrag.ts';

interface FaceDesignsProps {
  readonly area: ToolingArea;
  readonly designs: readonly { readonly index: number; readonly design: ToolingDesign }[];
  readonly artworks: readonly Artwork[];
  readonly faces: LetterFaces;
  /** Width of a line, mm. */
  readonly line: number;
  /** mm a px of the screen. */
  readonly px: number;
  readonly chosen: number | null;
  readonly choose: (index: number) => void;
  readonly isWarned: (index: number) => boolean;
  readonly hand: DesignHand;
}

/** The designs on a face as they will stand, to be chosen and moved; over them the grips of the one in hand. */
export function FaceDesigns(props: FaceDesignsProps) {
  const { area, designs, artworks, faces, line, px, chosen, choose, isWarned, hand } = props;
  const lengths = useLengths();
  const dispatch = useDispatch();
  const follow = { onDrag: hand.drag, onRelease: hand.release, onCancel: hand.letGo };
  const inHand = designs.find(({ index }) => index === chosen);
  let grips = null;
  if (inHand !== undefined && isMovable(inHand.design)) {
    const { index, design } = inHand;
    const shape = designShape(inHand.design, artworks, faces);
    const onGrab = (event: PointerEvent<Element>): void => hand.grab(event, index, design, shape);
    grips = <DesignGrips {...follow} {...{ area, px, shape, onGrab }} design={inHand.design} />;
  }
  return (
    <>
      {designs.map(({ index, design }) => {
        const shape = isMovable(design) ? designShape(design, artworks, faces) : null;
        const mark = {
          ...follow,
          area,
          line,
          name: `${designName(design, artworks)}, ${placeWords(design, lengths)}`,
          isChosen: index === chosen,
          isWarned: isWarned(index),
          onGrab: (event: PointerEvent<Element>) => {
            // A finger that drags gives no focus.
            choose(index);
            hand.grab(event, index, design, shape);
          },
          onKeyDown: (event: KeyboardEvent) => hand.press(event, index, design),
          onFocus: () => choose(index),
          onBlur: () => dispatch({ type: 'settle' }),
        };
        return isMovable(design) && shape !== null ? (
          <MovableMark key={index} {...mark} design={design} shape={shape} />
        ) : (
          <BorderMark key={index} {...mark} lines={placedDesign(design, area, artworks, faces).lines} />
        );
      })}
      {grips}
    </>
  );
}
