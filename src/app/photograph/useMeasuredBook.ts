import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand/react';
import { DOUBTS, type Job, type Photograph } from '../../core/index.ts';
import type { FoundBook } from './photographQuestions.ts';
import { askWorker, type Photographs, type Position, photographs, type Shot, waitsForLook } from './photographs.ts';
import { CORNERS } from './photographWords.ts';
import type { Readings } from './readings.ts';

export interface Measured {
  /** Null until all corners of one position are placed. */
  readonly found: FoundBook | null;
  readonly isWorking: boolean;
  readonly failure: string | null;
}

/** A photograph as the core takes it; null for one that is not open or shows no sheet. */
export function photographOf({ picture, points }: Shot): Photograph | null {
  if (picture === null || picture.marks.length === 0) return null;
  const { preview: _preview, advice: _advice, ...photograph } = picture;
  return {
    ...photograph,
    points: points.flatMap((point, i) => (point === null ? [] : [{ point: i, seen: point.at, u: point.u }])),
  };
}

const photographsOf = ({ shots }: Pick<Photographs, 'shots'>, position: Position): Photograph[] =>
  shots.flatMap((shot) => (shot.position === position ? (photographOf(shot) ?? []) : []));

/** Whether each corner of the face is placed in one photograph at least. */
const isPlaced = (own: readonly Photograph[]): boolean =>
  Array.from({ length: CORNERS }, (_, i) => i).every((i) =>
    own.some(({ points }) => points.some(({ point }) => point === i)),
  );

/** The photographs that the measures rest on although their corners, placed by the program, were not looked at. */
export const toBeLookedAt = (state: Pick<Photographs, 'shots'>): Shot[] =>
  state.shots.filter(
    (shot) => photographOf(shot) !== null && waitsForLook(shot) && isPlaced(photographsOf(state, shot.position)),
  );

/** Measures the book anew, in the worker, whenever a corner, a photograph or a reading is another. */
export function useMeasuredBook({ print, thickness }: Readings, height_mm: Job['book']['height_mm']): Measured {
  const shots = useStore(photographs, (state) => state.shots);
  const isParallel = useStore(photographs, (state) => state.isParallel);
  const [measured, setMeasured] = useState<Measured>({ found: null, isWorking: false, failure: null });
  // By its words: a print of the same readings is the same.
  const printed = JSON.stringify(print);
  const { lying, standing } = useMemo(
    () => ({ lying: photographsOf({ shots }, 'lying'), standing: photographsOf({ shots }, 'standing') }),
    [shots],
  );
  const [lies, stands] = [isPlaced(lying), isPlaced(standing)];
  // Of a book that only stands, how far its head is over the sheet is known by hand alone.
  const byHand = lies ? null : height_mm;
  useEffect(() => {
    if (!lies && !stands) {
      setMeasured({ found: null, isWorking: false, failure: null });
      return;
    }
    let isGone = false;
    const book = {
      lying: lies ? lying : [],
      standing: stands ? standing : [],
      print: JSON.parse(printed),
      thickness: thickness === null ? null : { value: thickness, u: DOUBTS.thickness_mm },
      foreEdgeThickness: null,
      height: byHand === null ? null : { value: byHand, u: 2 * DOUBTS.thickness_mm },
      isParallel,
    };
    setMeasured(({ found }) => ({ found, isWorking: true, failure: null }));
    askWorker({ ask: 'measure', book }, 'measure').then(
      (found) => {
        if (!isGone) setMeasured({ found, isWorking: false, failure: null });
      },
      (error: Error) => {
        if (!isGone) setMeasured({ found: null, isWorking: false, failure: error.message });
      },
    );
    return () => {
      isGone = true;
    };
  }, [lying, standing, lies, stands, byHand, isParallel, printed, thickness]);
  return measured;
}
