import { addScaled, cross, heading, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import type { Obstacle } from '../../strip/obstacle.ts';
import type { EndReaction, StripSolution } from '../../strip/stripSolution.ts';

/** One board's held place: where it is, the direction of the strip there, and the outline points of its tip and hinge. */
interface HeldEnd {
  readonly at: Vec2;
  readonly angle: number;
  readonly tip: number;
  readonly hinge: number;
}

/** What the strip does to a book that opens, in the units of the strip. */
export interface OpeningMoment {
  /** M, positive where it opens the book, EI/D. */
  readonly moment: number;
  /** Sum of the contact forces, EI/D^2: friction is in proportion to it. */
  readonly press: number;
}

/**
 * Moment of the strip on the opening, from the forces that hold it: M = -(sum f . v), v the velocity of the book's surface
 * under each force as the opening grows.
 *
 * Principle of virtual work. It equals -dE/d(opening) at constant length of the strip (envelope theorem), and needs one
 * solve where a difference quotient of the energy needs two. A force of contact is normal to the surface, so the velocity
 * of the outline beneath it counts, and how far the outline was grown does not.
 *
 * @param solution converged
 * @param obstacle the outline grown
 * @param outline points that it was grown from, x and y in turn
 * @param rate velocity of each of them for one radian of opening
 */
export function openingMoment(
  solution: StripSolution,
  obstacle: Obstacle,
  outline: ArrayLike<number>,
  rate: ArrayLike<number>,
  ends: { readonly start: HeldEnd; readonly end: HeldEnd },
): OpeningMoment {
  const point = (i: number): Vec2 => [outline[2 * i]!, outline[2 * i + 1]!];
  const velocity = (i: number): Vec2 => [rate[2 * i]!, rate[2 * i + 1]!];
  let work = 0;
  let press = 0;
  for (const { kind, index, x, y, fx, fy } of solution.contacts) {
    press += Math.hypot(fx, fy);
    const from = obstacle.source[index]!;
    const to = kind === 'edge' ? obstacle.source[(index + 1) % obstacle.source.length]! : from;
    const edge = subtract(point(to), point(from));
    const square = dot(edge, edge);
    const share = square > 0 ? dot(subtract([x, y], point(from)), edge) / square : 0;
    const v = addScaled(velocity(from), subtract(velocity(to), velocity(from)), share);
    work += dot([fx, fy], v);
  }
  const held = (reaction: EndReaction, { at, angle, tip, hinge }: HeldEnd): number => {
    const board = subtract(point(hinge), point(tip));
    const spin = cross(board, subtract(velocity(hinge), velocity(tip))) / dot(board, board);
    const v = addScaled(velocity(tip), leftOf(subtract(at, point(tip))), spin);
    // The reaction has what holds the end across its line; the stop holds it along.
    const force = addScaled([reaction.fx, reaction.fy], heading(angle), reaction.stop);
    return dot(force, v) + reaction.moment * spin;
  };
  return { moment: -(work + held(solution.start, ends.start) + held(solution.end, ends.end)), press };
}

const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
