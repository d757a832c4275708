import type { Vec2 } from '../../core/index.ts';
import { askWorker, type Position, photographs, placePoints, type Shot, setSeeking } from './photographs.ts';
import { CORNER_NAMES } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { photographOf } from './useMeasuredBook.ts';

/** How high the face is over the sheet, mm: measured, or only supposed. */
export interface FaceHeight {
  readonly height: number;
  readonly isKnown: boolean;
  /** Whether the spine is rounded, so that it stands out over the edge of the board. */
  readonly isRounded: boolean;
}

/** Corners at the spine by their places in the list. */
const AT_SPINE: ReadonlySet<number> = new Set([0, 3]);

/** Corners of a photograph in which none were found: within the picture, clear of its rim. */
function middleOf({ picture }: Shot): Vec2[] {
  const { width, height } = picture!;
  return [
    [0.35, 0.3],
    [0.65, 0.3],
    [0.65, 0.7],
    [0.35, 0.7],
    [0.3, 0.5],
    [0.5, 0.34],
  ].map(([x, y]): Vec2 => [x! * width, y! * height]);
}

/** Seeks the face of the book in all photographs of a position, and puts its corners where the edges are clear. */
export async function seekFace(
  position: Position,
  { print }: Readings,
  { isRounded, ...at }: FaceHeight,
): Promise<void> {
  const seen = photographs.getState().shots.filter((shot) => shot.position === position && photographOf(shot) !== null);
  if (seen.length === 0) return;
  setSeeking(position, 'seeking');
  try {
    const { corners, found, advice } = await askWorker(
      {
        ask: 'propose',
        of: seen.map(({ id, file, paper }) => ({ id, file, paper })),
        photographs: seen.map((shot) => ({ ...photographOf(shot)!, points: [] })),
        print,
        isSpineRounded: isRounded && position === 'lying',
        ...at,
      },
      `propose ${position}`,
    );
    seen.forEach((shot, i) => {
      const own = corners[i] ?? null;
      // What was not found of a narrow end leads astray; of a board it is mostly near.
      const near = found.some(Boolean) || position === 'lying' ? own : null;
      const begin = middleOf(shot).map((place, k) => near?.[k]?.at ?? place);
      const names = CORNER_NAMES[position].slice(0, begin.length);
      placePoints(shot.id, {
        begin,
        points: names.map((_, k) => {
          const corner = own?.[k];
          // From above, the end of a rounded spine is no edge of a board.
          const isSure = found[k] === true && !(isRounded && position === 'standing' && AT_SPINE.has(k));
          return isSure && corner !== undefined ? { ...corner, isByHand: false, isLookedAt: false } : null;
        }),
      });
    });
    setSeeking(position, found.length === 0 ? 'unclear' : found.every(Boolean) ? 'found' : 'partly', advice);
  } catch (error) {
    setSeeking(position, { failure: error instanceof Error ? error.message : String(error) });
  }
}
