import type { Vec2 } from '../core/index.ts';
import { type FaceSide, type FoundSide, foundSide, movedSide, type Seer } from './faceSides.ts';

/** Side at the spine by its place among the sides, which are those at head, fore-edge, tail and spine. */
export const SPINE = 3;

/** The four sides of a face as they were found. */
export interface FaceLines {
  readonly sides: readonly FaceSide[];
  /** As sought last, and what was found about it. */
  readonly sought: readonly FaceSide[];
  readonly lines: readonly FoundSide[];
}

/**
 * Seeks sides about where they are guessed, with a reach that gets less, mm, and is half as far for one that is nearly known; each
 * time all four, whose ends then are where they meet.
 */
export function linesAbout(
  seers: readonly Seer[],
  guess: readonly FaceSide[],
  reaches: readonly number[],
  known: number | null = null,
): FaceLines | null {
  let sides = guess;
  let result: FaceLines | null = null;
  for (const reach of reaches) {
    const lines = sides
      .map((side, k) => foundSide(seers, side, k === known ? reach / 2 : reach))
      .filter((line) => line !== null);
    if (lines.length < sides.length) return null;
    const moved = sides.map((side, k) => movedSide(side, lines[k]!));
    result = { sides: moved, sought: sides, lines };
    sides = joined(moved);
  }
  return result;
}

/** Sides that end where they meet. */
export function joined(sides: readonly FaceSide[]): FaceSide[] {
  const met = meetings(sides);
  return sides.map(({ heights }, k) => ({ from: met[k]!, to: met[(k + 1) % 4]!, heights }));
}

/** Where each side meets the one before it. */
export const meetings = (sides: readonly FaceSide[]): Vec2[] =>
  sides.map((side, k) => meeting(sides[(k + 3) % 4]!, side));

function meeting(a: FaceSide, b: FaceSide): Vec2 {
  const [px, py] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [qx, qy] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const t = ((b.from[0] - a.from[0]) * qy - (b.from[1] - a.from[1]) * qx) / (px * qy - py * qx);
  return [a.from[0] + t * px, a.from[1] + t * py];
}
