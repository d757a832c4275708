import { cross, dot, type Vec2 } from './vec2.ts';

/** The angle brought into [from, from + 2 pi) by whole turns, radians; an angle that lies there already is not rounded. */
export const wrapAngle = (angle: number, from = -Math.PI): number =>
  angle - 2 * Math.PI * Math.floor((angle - from) / (2 * Math.PI));

/** Turn from one direction to another, radians, -pi to pi and counterclockwise positive: atan2(a x b, a . b). */
export const turnBetween = (a: Vec2, b: Vec2): number => Math.atan2(cross(a, b), dot(a, b));
