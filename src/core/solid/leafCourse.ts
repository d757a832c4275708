import { addScaled, heading, type Vec2 } from '../math/vec2.ts';

/** One stretch of a leaf: its length, mm, and how far it turns clockwise over it, evenly, radians; on the spot where it has none. */
export interface Bend {
  readonly length: number;
  readonly turn: number;
}

/** A leaf in the section: where it leaves the spine, in which direction (radians from +x), and how it bends. */
export interface LeafCourse {
  readonly start: Vec2;
  readonly direction: number;
  /** In order; after the last one the leaf runs straight on. */
  readonly bends: readonly Bend[];
}

/**
 * Points of an inextensible leaf at given lengths from the spine.
 *
 * From one place to the next runs a straight piece as long as the leaf between them, in the mean direction of the leaf
 * there: the length is kept exactly whatever the bends, and leaves ordered by their turns do not cross.
 * @param places rising, from 0, mm
 */
export function leafPoints({ start, direction, bends }: LeafCourse, places: ArrayLike<number>): Vec2[] {
  const points = [start];
  let at = start;
  let k = 0;
  /** What is left of the present bend, and the turn up to here. */
  let rest = bends[0]?.length ?? Number.POSITIVE_INFINITY;
  let turned = 0;
  for (let i = 1; i < places.length; i++) {
    const length = places[i]! - places[i - 1]!;
    let left = length;
    let sum = 0;
    while (left > 0) {
      const bend = bends[k];
      const run = Math.min(left, rest);
      const turn = bend && bend.length > 0 ? (bend.turn * run) / bend.length : 0;
      sum += run * (turned + turn / 2);
      turned += turn;
      left -= run;
      rest -= run;
      if (!bend || rest > 0) continue;
      if (bend.length === 0) turned += bend.turn;
      k++;
      rest = bends[k]?.length ?? Number.POSITIVE_INFINITY;
    }
    at = addScaled(at, heading(direction - sum / length), length);
    points.push(at);
  }
  return points;
}

/** As many of the turns, in their order, as make up `most` in all, radians; the rest is left straight. */
export function turnedAtMost(turns: readonly number[], most: number): number[] {
  let left = most;
  return turns.map((turn) => {
    const taken = Math.max(0, Math.min(turn, left));
    left -= taken;
    return taken;
  });
}
