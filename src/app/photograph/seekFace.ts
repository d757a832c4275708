import type { Job, Vec2 } from '../../core/index.ts';
import { askWorker, type Position, photographs, placePoints, type Shot, setSeeking } from './photographs.ts';
import { CORNER_NAMES } from './photographWords.ts';
import type { Readings } from './readings.ts';
import { photographOf } from './useMeasuredBook.ts';

/** Thicknesses that are tried where the job's own leads nowhere, mm. */
const TRIED = [8, 16, 28, 45, 60] as const;

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
export async function seekFace(position: Position, { print, thickness }: Readings, book: Job['book']): Promise<void> {
  const seen = photographs.getState().shots.filter((shot) => shot.position === position && photographOf(shot) !== null);
  if (seen.length === 0) return;
  setSeeking(position, 'seeking');
  const heights =
    position === 'standing' ? [book.height_mm] : thickness === null ? [book.thickness_mm, ...TRIED] : [thickness];
  try {
    const { corners, found, advice } = await askWorker(
      {
        ask: 'propose',
        of: seen.map(({ id, file, paper }) => ({ id, file, paper })),
        photographs: seen.map((shot) => ({ ...photographOf(shot)!, points: [] })),
        print,
        heights,
      },
      `propose ${position}`,
    );
    seen.forEach((shot, i) => {
      const own = corners[i] ?? null;
      const begin = middleOf(shot).map((place, k) => own?.[k]?.at ?? place);
      const names = CORNER_NAMES[position].slice(0, begin.length);
      placePoints(shot.id, {
        begin,
        points: names.map((_, k) => {
          const corner = own?.[k];
          return found && corner !== undefined ? { ...corner, isByHand: false } : null;
        }),
      });
    });
    setSeeking(position, found ? 'found' : 'unclear', advice);
  } catch (error) {
    setSeeking(position, { failure: error instanceof Error ? error.message : String(error) });
  }
}
