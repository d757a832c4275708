import type { Vec2 } from '../../core/index.ts';
import type { Proposed } from './photographQuestions.ts';
import { askWorker, type Position, photographs, placePoints, setSeeking } from './photographs.ts';
import type { Readings } from './readings.ts';
import { photographOf } from './useMeasuredBook.ts';

/** Corners of a photograph in which none were found: within the picture, clear of its rim. */
const MIDDLE: Readonly<Record<Position, readonly Vec2[]>> = {
  lying: [
    [0.35, 0.3],
    [0.65, 0.3],
    [0.65, 0.7],
    [0.35, 0.7],
  ],
  // With its front board upward a book that stands has its spine to the right.
  standing: [
    [0.65, 0.3],
    [0.35, 0.3],
    [0.35, 0.7],
    [0.65, 0.7],
    [0.7, 0.5],
    [0.5, 0.34],
  ],
};

/** Corners of a face seen from above clockwise, from the upper left, by the order of their names. */
const CLOCKWISE: Readonly<Record<Position, readonly number[]>> = { lying: [0, 1, 2, 3], standing: [1, 0, 3, 2] };

/**
 * Seeks the face of the book in all photographs of a position. Of a book that lies, the corners are put where the edges are clear; of one
 * that stands they only begin there, for pages stand back at its fore-edge and a rounded spine stands out.
 *
 * @param height of the face over the sheet, mm; null to seek it too, of a book that lies
 */
export async function seekFace(position: Position, { print }: Readings, height: number | null): Promise<void> {
  const seen = photographs.getState().shots.filter((shot) => shot.position === position && photographOf(shot) !== null);
  if (seen.length === 0) return;
  setSeeking(position, 'seeking');
  try {
    const { corners, found, advice } =
      position === 'standing' && height === null
        ? NOTHING
        : await askWorker(
            {
              ask: 'propose',
              of: seen.map(({ id, file, paper }) => ({ id, file, paper })),
              photographs: seen.map((shot) => ({ ...photographOf(shot)!, points: [] })),
              print,
              height,
            },
            `propose ${position}`,
          );
    const isFound = found.some(Boolean);
    seen.forEach((shot, i) => {
      const own = CLOCKWISE[position].map((k) => corners[i]?.[k]);
      // What was not found of a narrow end leads astray; of a board it is mostly near.
      const isGuessed = own[0] !== undefined && (isFound || position === 'lying');
      const { width, height: tall } = shot.picture!;
      placePoints(shot.id, {
        isGuessed,
        begin: MIDDLE[position].map(([x, y], k) => (isGuessed ? own[k]?.at : undefined) ?? [x * width, y * tall]),
        points: MIDDLE[position].map((_, k) => {
          const corner = own[k];
          const isSure = position === 'lying' && found[k] === true;
          return isSure && corner !== undefined ? { ...corner, isByHand: false, isLookedAt: false } : null;
        }),
      });
    });
    setSeeking(
      position,
      !isFound ? 'unclear' : position === 'lying' && found.every(Boolean) ? 'found' : 'partly',
      advice,
    );
  } catch (error) {
    setSeeking(position, { failure: error instanceof Error ? error.message : String(error) });
  }
}

const NOTHING: Proposed = { corners: [], found: [], advice: [] };
