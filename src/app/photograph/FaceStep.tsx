import { useEffect, useRef } from 'react';
import { useStore } from 'zustand/react';
import { PhotographedFace } from './PhotographedFace.tsx';
import { type Position, photographs, renamePoints, type Seeking, undoMove } from './photographs.ts';
import { FACE_WORDS } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { seekFace } from './seekFace.ts';

interface FaceStepProps {
  readonly position: Position;
  readonly readings: Readings;
  /** Height of the face over the sheet, mm; null where nothing has measured it. */
  readonly height: number | null;
}

/** A figure that was not changed for so long is typed, ms. */
const TYPING = 900;

/** Heights that differ by less show the same edges, mm. */
const SAME_HEIGHT = 0.5;

/** The face of the book in each photograph: proposed by its edges, and put right by hand. */
export function FaceStep({ position, readings, height }: FaceStepProps) {
  const own = useStore(photographs, (state) => state.shots).filter((shot) => shot.position === position);
  const shots = own.filter(({ picture }) => picture !== null && picture.marks.length > 0);
  const advice = useStore(photographs, (state) => state.advice[position]);
  const isOpening = useStore(photographs, (state) =>
    state.shots.some((shot) => shot.position === position && shot.picture === null && shot.failure === null),
  );
  const seeking = useStore(photographs, (state) => state.seeking[position]);
  const canUndo = useStore(photographs, (state) => state.moves.length > 0);
  const seeks = seeking === 'idle' && !isOpening && shots.length > 0;
  const sought = useRef<number | null>(null);
  const seek = (): void => {
    sought.current = height;
    void seekFace(position, readings, height);
  };
  const latest = useRef(seek);
  useEffect(() => {
    latest.current = seek;
  });
  useEffect(() => {
    if (seeks) latest.current();
  }, [seeks]);
  // At another height the edges are elsewhere, unless corners were placed by hand or looked at meanwhile.
  const isByHand = own.some(({ points }) => points.some((point) => point?.isByHand || point?.isLookedAt));
  const newHeight = seeking !== 'seeking' && !isByHand ? height : null;
  useEffect(() => {
    if (newHeight === null || (sought.current !== null && Math.abs(newHeight - sought.current) < SAME_HEIGHT)) return;
    const typing = setTimeout(() => latest.current(), TYPING);
    return () => clearTimeout(typing);
  }, [newHeight]);
  if (shots.length === 0) return <p className="help">The corners are placed here once a photograph shows the sheet.</p>;
  return (
    <>
      <p>{FACE_WORDS[position].asks}</p>
      <p role="status" className="help">
        {isOpening
          ? 'The photographs are being looked at.'
          : seekingWords(seeking, height !== null, position, shots.length)}
      </p>
      {advice.map((words) => (
        <p key={words} className="issue">
          {words}
        </p>
      ))}
      <div className="photograph-moves">
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
          <PhotographedFace key={shot.id} shot={shot} number={own.indexOf(shot) + 1} />
        ))}
      </div>
    </>
  );
}

function seekingWords(seeking: Seeking, isKnown: boolean, position: Position, count: number): string {
  if (typeof seeking === 'object')
    return `The edges could not be sought: ${seeking.failure} Place the corners by hand.`;
  const byHand = 'Drag each corner to its place under the loupe.';
  return {
    idle: '',
    seeking: 'The edges of the book are being sought; this takes some seconds.',
    found: 'The program placed the corners by the edges it saw. Look at each one; drag one that is not on the book.',
    partly:
      position === 'standing'
        ? 'The corners begin where the program saw the end of the book. Drag each to its place under the loupe.'
        : 'The program placed the corners whose edges it saw. Drag each of the others to its place under the loupe.',
    unclear:
      count === 1
        ? 'One photograph does not tell the book from the sheet. Add one from another side, or place the corners by hand.'
        : isKnown
          ? `The edges are not clear. ${byHand}`
          : position === 'lying'
            ? `The edges are not clear. ${byHand} With the thickness typed above they are sought once more.`
            : `${byHand} If the book lying is measured above, they begin where the program sees its end.`,
  }[seeking];
}
