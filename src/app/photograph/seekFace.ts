import type { Vec2 } from '../../core/index.ts';
import { askWorker, type Position, photographs, placePoints, type Shot, setSeeking } from './photographs.ts';
import { CORNER_NAMES } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { photographOf } from './useMeasuredBook.ts';

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

/**
 * Seeks the face of the book in all photographs of a position, and puts its corners where the edges are clear.
 *
 * @param height of the face over the sheet, mm; null to seek it too, of a book that lies
 * @param isRounded whether the job says that the spine is rounded
 */
export async function seekFace(
  position: Position,
  { print }: Readings,
  height: number | null,
  isRounded: boolean,
): Promise<void> {
  const seen = photographs.getState().shots.filter((shot) => shot.position === position && photographOf(shot) !== null);
  if (seen.length === 0) return;
  setSeeking(position, 'seeking');
  if (position === 'standing' && height === null) {
    for (const shot of seen)
      placePoints(shot.id, { begin: middleOf(shot), isGuessed: false, points: middleOf(shot).map(() => null) });
    setSeeking(position, 'unclear');
    return;
  }
  try {
    const { corners, found, advice } = await askWorker(
      {
        ask: 'propose',
        of: seen.map(({ id, file, paper }) => ({ id, file, paper })),
        photographs: seen.map((shot) => ({ ...photographOf(shot)!, points: [] })),
        print,
        height,
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
        isGuessed: near !== null,
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
