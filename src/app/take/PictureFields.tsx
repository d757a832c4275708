import { useEffect, useId, useState } from 'react';
import type { PictureSize } from '../scene/pictureTiles.ts';
import type { TakenView } from './takenView.ts';
import { PICTURE_SIDES, pictureSize } from './takePicture.ts';

interface PictureFieldsProps {
  readonly view: TakenView;
  readonly isBusy: boolean;
  readonly onTake: (side: number | null) => Promise<void>;
}

const NAMES = ['As on the screen', '4K', '8K'];

/** A picture of the view, in the size that is chosen. */
export function PictureFields({ view, isBusy, onTake }: PictureFieldsProps) {
  const [chosen, setChosen] = useState(0);
  const [shown, setShown] = useState<PictureSize | null>(null);
  const id = useId();
  useEffect(() => {
    let isLeft = false;
    void view.scene().then((scene) => {
      if (!isLeft) setShown(scene?.shownSize() ?? null);
    });
    return () => {
      isLeft = true;
    };
  }, [view]);
  const words = (i: number): string => {
    if (shown === null) return NAMES[i]!;
    const { width, height } = pictureSize(shown, PICTURE_SIDES[i]!);
    return `${NAMES[i]}, ${width} × ${height}`;
  };
  return (
    <fieldset>
      <legend>Picture</legend>
      <div className="row take-row">
        <label htmlFor={id}>Size</label>
        <select id={id} value={chosen} disabled={isBusy} onChange={(event) => setChosen(Number(event.target.value))}>
          {PICTURE_SIDES.map((side, i) => (
            <option key={side} value={i}>
              {words(i)}
            </option>
          ))}
        </select>
        <button type="button" disabled={isBusy} onClick={() => void onTake(PICTURE_SIDES[chosen]!)}>
          Save picture
        </button>
      </div>
      <p className="help">PNG, as the view now stands, with smoothed edges. A large one takes a while.</p>
    </fieldset>
  );
}
