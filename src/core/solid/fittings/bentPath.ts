import { TOLERANCE } from '../../math/tolerance.ts';
import { addScaled, cross, dot, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';

/** A stretch of a neutral line: straight, or an arc where it turns. Lengths in mm, turns in radians, positive to the left. */
interface BentPiece {
  readonly length: number;
  readonly turn: number;
}

/** A sheet's neutral line in a plane: where it begins, its direction there, and its stretches one after the other. */
export interface BentPath {
  readonly start: Vec2;
  readonly heading: number;
  readonly pieces: readonly BentPiece[];
}

/** A place on the neutral line and the direction of the sheet there, radians. */
export interface BentPlace {
  readonly at: Vec2;
  readonly heading: number;
}

export const bentLength = ({ pieces }: BentPath): number => pieces.reduce((sum, { length }) => sum + length, 0);
export const bentTurn = ({ pieces }: BentPath): number => pieces.reduce((sum, { turn }) => sum + turn, 0);

/** Places at distances `at` from the start, in rising order, mm. Before the first stretch and past the last it goes on straight. */
export function bentPlaces({ start, heading: first, pieces }: BentPath, at: readonly number[]): BentPlace[] {
  let from: Vec2 = start;
  let along = first;
  let begun = 0;
  let index = 0;
  return at.map((wanted) => {
    for (; index < pieces.length && wanted > begun + pieces[index]!.length; index++) {
      const piece = pieces[index]!;
      from = pointOn(from, along, piece, piece.length);
      along += piece.turn;
      begun += piece.length;
    }
    const piece = pieces[index];
    const rest = wanted - begun;
    if (piece === undefined || rest <= 0 || piece.turn === 0)
      return { at: addScaled(from, heading(along), rest), heading: along };
    return { at: pointOn(from, along, piece, rest), heading: along + (piece.turn * rest) / piece.length };
  });
}

/** The chord of an arc lies midway between its end directions, 2 r sin(turn / 2) long. */
function pointOn(from: Vec2, along: number, { length, turn }: BentPiece, by: number): Vec2 {
  if (turn === 0) return addScaled(from, heading(along), by);
  const angle = (turn * by) / length;
  return addScaled(from, heading(along + angle / 2), (2 * length * Math.sin(angle / 2)) / turn);
}

/**
 * Neutral line of a sheet that is drawn taut over pegs, its inner face on them: a straight stretch from peg to peg, and at each
 * an arc about it. Where the sheet is held down at a peg and goes up from there, it turns to the right, on an arc of its own.
 * @param pegs two or more
 * @param radius of the neutral line about a peg, mm
 * @param hollow radius of the neutral line where it turns to the right, mm
 */
export function pathOverPegs(pegs: readonly Vec2[], radius: number, hollow = radius): BentPath {
  const ways = pegs.slice(1).map((peg, i) => subtract(peg, pegs[i]!));
  const first = Math.atan2(ways[0]![1], ways[0]![0]);
  const turns = ways.slice(1).map((next, i) => Math.atan2(cross(ways[i]!, next), dot(ways[i]!, next)));
  // The neutral line is on the right of the pegs: turning right it meets its arc before it comes to the peg.
  const short = (turn = 0): number => (turn < 0 ? (radius + hollow) * Math.tan(-turn / 2) : 0);
  const pieces = ways.flatMap((way, i): BentPiece[] => {
    const turn = turns[i];
    const straight = { length: Math.max(0, Math.hypot(...way) - short(turns[i - 1]) - short(turn)), turn: 0 };
    return turn === undefined
      ? [straight]
      : [straight, { length: Math.abs(turn) * (turn < 0 ? hollow : radius), turn }];
  });
  return { start: addScaled(pegs[0]!, leftOf(heading(first)), -radius), heading: first, pieces };
}

/**
 * The same sheet, let go from some place on: it is bent no more than `turn` in all and goes on straight from there. Up to its
 * last turn to the right it is held down.
 * @param turn radians, 0 or more
 */
export function bentUpTo(path: BentPath, turn: number): BentPath {
  const held = path.pieces.slice(0, path.pieces.findLastIndex((piece) => piece.turn < 0) + 1);
  let left = turn - bentTurn({ ...path, pieces: held });
  const pieces: BentPiece[] = [...held];
  for (const piece of path.pieces.slice(held.length)) {
    const share = piece.turn > left ? Math.max(0, left) / piece.turn : 1;
    pieces.push(share === 1 ? piece : { length: piece.length * share, turn: piece.turn * share });
    if (share < 1) break;
    left -= piece.turn;
  }
  return { ...path, pieces: pieces.filter(({ length }) => length > TOLERANCE.length) };
}
