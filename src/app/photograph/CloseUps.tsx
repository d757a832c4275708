import { useCallback } from 'react';
import type { Vec2 } from '../../core/index.ts';
import type { CloseUp, DrawnPicture } from './photographQuestions.ts';
import { useMagnified } from './useMagnified.ts';

interface Corner {
  readonly name: string;
  readonly at: Vec2;
  /** Where the lines that end in it lead. */
  readonly toward: readonly Vec2[];
  readonly isPlaced: boolean;
}

interface CloseUpsProps {
  /** Of which photograph they are, for those who hear it. */
  readonly label: string;
  readonly picture: DrawnPicture;
  readonly corners: readonly Corner[];
  readonly closeUp: (at: Vec2, corner: number) => Promise<CloseUp>;
  /** Leads to the corner in the picture. */
  readonly choose: (corner: number) => void;
}

/** Side of a close-up, px. */
const SIDE = 96;
/** A picture of so many pixels is shown as large as in the file, a smaller one twice as large: about a finger's breadth of the book. */
const LARGE = 2400;

/** What is round each corner of one photograph, side by side, to see at a glance whether it stands on the book. */
export const CloseUps = ({ label, picture, corners, closeUp, choose }: CloseUpsProps) => (
  <ul className="close-ups" aria-label={label}>
    {corners.map((corner, i) => (
      <li key={corner.name}>
        <CornerCloseUp picture={picture} corner={corner} index={i} closeUp={closeUp} choose={choose} />
      </li>
    ))}
  </ul>
);

interface CornerCloseUpProps extends Pick<CloseUpsProps, 'picture' | 'closeUp' | 'choose'> {
  readonly corner: Corner;
  readonly index: number;
}

function CornerCloseUp({ picture, corner, index, closeUp, choose }: CornerCloseUpProps) {
  const { name, at, toward, isPlaced } = corner;
  const own = useCallback((place: Vec2) => closeUp(place, index), [closeUp, index]);
  const zoom = Math.max(picture.width, picture.height) < LARGE ? 2 : 1;
  const canvas = useMagnified({ picture, at, toward, side: SIDE, zoom }, own);
  return (
    <button type="button" onClick={() => choose(index)}>
      <canvas ref={canvas} width={SIDE} height={SIDE} />
      {name}
      {!isPlaced && <span className="help"> not placed</span>}
      <span className="only-heard">, to this corner in the picture</span>
    </button>
  );
}
