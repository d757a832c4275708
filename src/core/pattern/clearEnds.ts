import { endRow } from './endRow.ts';
import type { PatternSource } from './seam.ts';
import { seamLayering } from './seamLayering.ts';

/** The rows of holes at head and tail as what ends across them sees them. */
export interface HolesAcross {
  /** Whether a layer may end at x, in the frame of the outside, front half: on the straight, and no hole too near. */
  isClear(x: number): boolean;
  /** The middle between two holes that is nearest to x. */
  middle(x: number): number;
}

/** Null where there is no row, and where pockets that meet are told of anyway: then nothing has to keep clear. */
export function holesAcross(source: PatternSource): HolesAcross | null {
  const row = endRow(source);
  const { meets, clear } = seamLayering(source);
  if (row === null || meets) return null;
  const { origin, straight, pitch, intervals } = row;
  return {
    isClear: (x) => {
      const place = (x - origin) / pitch;
      const nearest = Math.min(intervals, Math.max(0, Math.round(place)));
      return x >= straight && Math.abs(place - nearest) >= clear - 1e-9;
    },
    middle: (x) => {
      const first = Math.max(0, Math.ceil((straight - origin) / pitch - 0.5));
      return origin + (Math.max(first, Math.round((x - origin) / pitch - 0.5)) + 0.5) * pitch;
    },
  };
}

/** Whether both pocket mouths, or turned ends, lie clear between two holes. */
export function mouthsAreClear(source: PatternSource): boolean {
  const holes = holesAcross(source);
  if (holes === null) return true;
  const half = source.pieces.outside.width / 2;
  const { steps } = seamLayering(source);
  return steps.every(({ layer, x }) => layer === 'lining' || x > half || holes.isClear(x));
}
