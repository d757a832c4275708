import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand/react';
import type { Vec2 } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBench } from '../state/BenchContext.tsx';
import { PhotographDrawing } from './PhotographDrawing.tsx';
import {
  askWorker,
  changePoints,
  closeUpOf,
  handDoubt,
  movePoint,
  type Position,
  photographs,
  renamePoints,
  type Seeking,
  type Shot,
  undoMove,
} from './photographs.ts';
import { CORNER_NAMES, CORNERS, FACE_WORDS } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { seekFace } from './seekFace.ts';

interface FaceStepProps {
  readonly position: Position;
  readonly readings: Readings;
  readonly height: number;
  /** Whether the height is measured; if not, the corners are placed by hand. */
  readonly isKnown: boolean;
}

const SIDES = [
  [0, 1],
  [1, 2],
  [2, 3],
  [3, 0],
] as const;

/** A figure that was not changed for so long is typed, ms. */
const TYPING = 900;

/** How far from a corner an edge is sought, as a share of the picture's width. */
const REACH = 0.006;

/** The face of the book in each photograph: proposed by its edges, and put right by hand. */
export function FaceStep({ position, readings, height, isKnown }: FaceStepProps) {
  const own = useStore(photographs, (state) => state.shots).filter((shot) => shot.position === position);
  const shots = own.filter(({ picture }) => picture !== null && picture.marks.length > 0);
  const advice = useStore(photographs, (state) => state.advice[position]);
  const isOpening = useStore(photographs, (state) =>
    state.shots.some((shot) => shot.position === position && shot.picture === null && shot.failure === null),
  );
  const seeking = useStore(photographs, (state) => state.seeking[position]);
  const canUndo = useStore(photographs, (state) => state.moves.length > 0);
  const seeks = seeking === 'idle' && !isOpening && shots.length > 0;
  const isRounded = useBench(({ history }) => history.good.job.book.spine.shape === 'rounded');
  const sought = useRef<number | null>(null);
  const seek = (): void => {
    sought.current = isKnown ? height : null;
    void seekFace(position, readings, { height, isKnown, isRounded });
  };
  const latest = useRef(seek);
  useEffect(() => {
    latest.current = seek;
  });
  useEffect(() => {
    if (seeks) latest.current();
  }, [seeks]);
  // A height that becomes known lets the edges be found, unless corners were placed by hand meanwhile.
  const isByHand = own.some(({ points }) => points.some((point) => point?.isByHand));
  const newHeight = seeking === 'unclear' && isKnown && !isByHand ? height : null;
  useEffect(() => {
    if (newHeight === null || newHeight === sought.current) return;
    const typing = setTimeout(() => latest.current(), TYPING);
    return () => clearTimeout(typing);
  }, [newHeight]);
  const wasRounded = useRef(isRounded);
  useEffect(() => {
    if (wasRounded.current === isRounded) return;
    wasRounded.current = isRounded;
    if (!isByHand) latest.current();
  }, [isRounded, isByHand]);
  if (shots.length === 0) return <p className="help">The corners are placed here once a photograph shows the sheet.</p>;
  return (
    <>
      <p>{FACE_WORDS[position].asks}</p>
      <p role="status" className="help">
        {isOpening ? 'The photographs are being looked at.' : seekingWords(seeking, isKnown, position, isRounded)}
      </p>
      {advice.map((words) => (
        <p key={words} className="issue">
          {words}
        </p>
      ))}
      {position === 'lying' && (
        <ChoiceField
          path="book.spine.shape"
          title="Spine of the book"
          options={optionsOf(['flat', 'rounded'])}
          along={(value) => (value === 'flat' ? [{ path: 'book.spine.rise_mm', value: undefined }] : [])}
        />
      )}
      <div className="row">
        <button type="button" onClick={seek}>
          Find the edges again
        </button>
        <button type="button" onClick={() => renamePoints(position, [3, 0, 1, 2])}>
          Turn the names
        </button>
        <button type="button" onClick={() => renamePoints(position, [1, 0, 3, 2])}>
          Swap spine and fore-edge
        </button>
        <button type="button" disabled={!canUndo} onClick={undoMove}>
          Undo the last move
        </button>
      </div>
      <div className="faces">
        {shots.map((shot) => (
          <Face key={shot.id} shot={shot} number={own.indexOf(shot) + 1} />
        ))}
      </div>
    </>
  );
}

function seekingWords(seeking: Seeking, isKnown: boolean, position: Position, isRounded: boolean): string {
  if (typeof seeking === 'object')
    return `The edges could not be sought: ${seeking.failure} Place the corners by hand.`;
  const byHand = 'Drag each corner to its place under the loupe.';
  return {
    idle: '',
    seeking: 'The edges of the book are being sought; this takes some seconds.',
    found:
      isRounded && position === 'lying'
        ? 'The edges were found, but not at the spine. A rounded spine is easily taken for the board: place its two corners by hand.'
        : 'The edges were found. Look at each corner; drag one that is not on the book.',
    unclear: isKnown
      ? `The edges are not clear. ${byHand}`
      : position === 'lying'
        ? `${byHand} If the thickness is typed above, the edges are found without you.`
        : `${byHand} If the book lying is measured above, the edges are found without you.`,
  }[seeking];
}

function Face({ shot, number }: { readonly shot: Shot; readonly number: number }) {
  const { id, file, paper, picture, points, begin, position } = shot;
  const [note, setNote] = useState('');
  const names = CORNER_NAMES[position];
  const isPlaced = points.slice(0, CORNERS).every((point) => point !== null) && points.length > 0;
  // Points beyond the corners stand only where they were added.
  const shown = [...begin.keys()].filter((i) => i < CORNERS || points[i] != null);
  const closeUp = useCallback((at: Vec2) => closeUpOf({ id, file, paper }, at), [id, file, paper]);
  const marks = picture!.marks;
  const outlines = useMemo(() => marks.map(({ seen }) => seen), [marks]);
  const placeOf = (i: number): Vec2 => points[i]?.at ?? begin[i]!;
  const label = `${file.name}, photograph ${number}`;

  const confirm = (): void => {
    // Looked at, but not placed under the loupe.
    const u = 2 * handDoubt(picture!);
    changePoints(
      id,
      names.map((_, i) => (i < CORNERS ? (points[i] ?? { at: placeOf(i), u, isByHand: true }) : (points[i] ?? null))),
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
        names.map((_, i) => (i < CORNERS ? { ...refined[i]!, isByHand: true } : (points[i] ?? null))),
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
      />
      <figcaption>
        <p>
          {number}. {file.name}
          {begin.length > 0 && !isPlaced && ': not all corners are placed'}
        </p>
        <div className="row">
          {begin.length > 0 && !isPlaced && (
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
