import { useCallback, useMemo, useState } from 'react';
import type { Vec2 } from '../../core/index.ts';
import { CloseUps } from './CloseUps.tsx';
import { LookedAt } from './LookedAt.tsx';
import { endsFrom, PhotographDrawing } from './PhotographDrawing.tsx';
import { askWorker, changePoints, closeUpOf, handDoubt, movePoint, type Shot, undoMove } from './photographs.ts';
import { CORNER_NAMES, CORNERS } from './photographWords.ts';

const SIDES = [
  [0, 1],
  [1, 2],
  [2, 3],
  [3, 0],
] as const;

/** How far from a corner an edge is sought, as a share of the picture's width. */
const REACH = 0.006;

/** The face of the book in one photograph: its corners to drag, close-ups of them, and the word that they were looked at. */
export function PhotographedFace({ shot, number }: { readonly shot: Shot; readonly number: number }) {
  const { id, file, paper, picture, points, begin, isGuessed, position } = shot;
  const [note, setNote] = useState('');
  const names = CORNER_NAMES[position];
  const hasPlaced = points.some((point) => point != null);
  const isPlaced = points.slice(0, CORNERS).every((point) => point !== null) && points.length > 0;
  // Points beyond the corners stand only where they were added.
  const shown = [...begin.keys()].filter((i) => i < CORNERS || points[i] != null);
  const closeUp = useCallback(
    (at: Vec2, corner?: number) => closeUpOf({ id, file, paper }, at, corner),
    [id, file, paper],
  );
  const marks = picture!.marks;
  const outlines = useMemo(() => marks.map(({ seen }) => seen), [marks]);
  const placeOf = (i: number): Vec2 => points[i]?.at ?? begin[i]!;
  const label = `${file.name}, photograph ${number}`;

  const confirm = (): void => {
    // Looked at, but not placed under the loupe.
    const u = 2 * handDoubt(picture!);
    changePoints(
      id,
      names.map((_, i) => {
        const point = points[i] ?? (i < CORNERS ? { at: placeOf(i), u, isByHand: true } : null);
        return point && { ...point, isLookedAt: true };
      }),
    );
  };
  const refine = async (): Promise<void> => {
    setNote('');
    const corners = [0, 1, 2, 3].map(placeOf);
    const reach = REACH * Math.max(picture!.width, picture!.height);
    const refined = await askWorker({ ask: 'refine', of: { id, file, paper }, corners, reach }, `refine ${id}`)
      .then((answer) => answer.corners)
      .catch(() => null);
    if (refined === null) setNote('No clear edges were found near the corners; they stay as they are.');
    else
      changePoints(
        id,
        names.map((_, i) =>
          i < CORNERS ? { ...refined[i]!, isByHand: true, isLookedAt: false } : (points[i] ?? null),
        ),
      );
  };

  return (
    <figure className="face" data-placed={isPlaced ? '' : undefined}>
      <PhotographDrawing
        label={label}
        picture={picture!}
        points={shown.map((i) => ({ name: names[i]!, at: placeOf(i) }))}
        lines={begin.length > 0 ? SIDES : []}
        outlines={outlines}
        move={(point, at) => movePoint(id, shown[point]!, at)}
        undo={undoMove}
        closeUp={closeUp}
        below={
          hasPlaced
            ? (at, choose) => (
                <CloseUps
                  label={`Corners of photograph ${number}, close up`}
                  picture={picture!}
                  corners={names.slice(0, CORNERS).map((name, i) => ({
                    name,
                    at: at(i),
                    toward: endsFrom(SIDES, i).map(at),
                    isPlaced: points[i] != null,
                  }))}
                  closeUp={closeUp}
                  choose={choose}
                />
              )
            : undefined
        }
      />
      <figcaption>
        <p>
          {number}. {file.name}
          {begin.length > 0 && !isPlaced && ': not all corners are placed'}
        </p>
        {hasPlaced && <LookedAt shot={shot} number={number} isWhole={isPlaced} />}
        <div className="photograph-moves">
          {isGuessed && !isPlaced && (
            <button type="button" aria-label={`The corners of photograph ${number} are right`} onClick={confirm}>
              These corners are right
            </button>
          )}
          {begin.length > 0 && (
            <button
              type="button"
              aria-label={`Move the corners of photograph ${number} to the edges nearby`}
              onClick={() => void refine()}
            >
              To the edges nearby
            </button>
          )}
          {names.slice(CORNERS).map((name, k) => {
            const i = CORNERS + k;
            return begin.length > 0 && points[i] == null ? (
              <button key={name} type="button" onClick={() => movePoint(id, i, begin[i]!)}>
                Add: {name.toLowerCase()}
              </button>
            ) : null;
          })}
        </div>
        <p role="status" className="help">
          {note}
        </p>
      </figcaption>
    </figure>
  );
}
