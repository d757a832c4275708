import { wrapAngle } from '../../math/angle.ts';
import { convexChain } from '../../math/convexChain.ts';
import { findLevel } from '../../math/findLevel.ts';
import { addScaled, distance, heading, subtract, type Vec2 } from '../../math/vec2.ts';
import { growOutline, type Obstacle } from '../../strip/obstacle.ts';
import { turningAlong } from '../../strip/turning.ts';

/** Paths to begin from, and the taut path it was made from. */
export interface SectionGuess {
  readonly path: readonly number[];
  /** Another, with the spare length drawn out toward both ends; null where they are held or cannot slide so far. */
  readonly drawnOut: readonly number[] | null;
  /** Length of the taut path from one held place to the other. */
  readonly tautLength: number;
}

/** Least and most that the guess stands off the taut path by growing alone, D: clear of the outline, but no balloon. */
const CLEARANCE = { least: 2e-3, most: 0.5 };

/** Points of the path that spare length makes where the taut path is straight. */
const BUMP_POINTS = 24;

/** Rise of a bump, in spans, over which it is an arc of a circle. */
const HIGH = 0.25;

/**
 * Guesses the shape of a strip from the taut path: grown until it has the strip's length (Steiner), ends left in place.
 *
 * Where much is to spare, the length is found on the path itself, legs included: a balloon laid too short would begin pressed
 * together many times over.
 *
 * @param obstacle outline that the strip lies on, its first and last vertices the fore-edges
 * @param from where the strip is held in front
 * @param to where it is held at the back
 * @param length of the strip between them, D
 * @param slide directions in which the strip runs at its two ends if it slides there, rad; null where it is held
 */
export function guessSection(
  obstacle: Obstacle,
  from: Vec2,
  to: Vec2,
  length: number,
  slide: { readonly start: number; readonly end: number } | null,
): SectionGuess {
  const chain: Vec2[] = [from];
  for (let i = 1; i < obstacle.x.length - 1; i++) chain.push([obstacle.x[i]!, obstacle.y[i]!]);
  chain.push(to);
  const taut = convexChain(chain).map((i) => chain[i]!);
  const tautLength = lengthOf(taut.flat());
  const slack = Math.max(0, length - tautLength);
  // A clamped strip whose ends come nearer by a small slack rises by (2/pi) sqrt(slack length) (Euler's first mode).
  const rise = (2 / Math.PI) * Math.sqrt(slack * length);
  const drawnOut = slide && tangentArc(from, to, length, slide);
  if (taut.length === 2) {
    const span = distance(from, to);
    return { path: rise > HIGH * span ? arc(from, to, length) : bump(from, to, rise), drawnOut, tautLength };
  }
  const turning = turningAlong(taut.flat());
  const standingOff = (stand: number): number[] => {
    const grown = growOutline(taut.flat(), false, stand, Math.PI / 12);
    const path: number[] = [...from];
    for (let i = 1; i < grown.x.length - 1; i++) path.push(grown.x[i]!, grown.y[i]!);
    path.push(...to);
    return path;
  };
  const stand = Math.min(slack / turning, rise);
  const isBalloon = stand > CLEARANCE.most;
  const path = standingOff(
    isBalloon ? findLevel((each) => lengthOf(standingOff(each)), length, 0, length) : Math.max(stand, CLEARANCE.least),
  );
  return { path, drawnOut, tautLength };
}

function lengthOf(path: readonly number[]): number {
  let sum = 0;
  for (let i = 2; i < path.length; i += 2) sum += Math.hypot(path[i]! - path[i - 2]!, path[i + 1]! - path[i - 1]!);
  return sum;
}

/** One cosine bump to the right of the line from a to b. */
function bump(a: Vec2, b: Vec2, rise: number): number[] {
  const span = distance(a, b) || 1;
  return along(a, b, (share) => [share, (0.5 * rise * (1 - Math.cos(2 * Math.PI * share))) / span]);
}

/** The arc of a circle of given length to the right of the line from a to b: span = length sin(h)/h, h half its turn. */
function arc(a: Vec2, b: Vec2, length: number): number[] {
  const half = findLevel((h) => h / Math.sin(h), length / distance(a, b), 1e-6, Math.PI - 1e-6);
  const radius = 1 / (2 * Math.sin(half));
  return along(a, b, (share) => {
    const angle = half * (2 * share - 1);
    return [0.5 + radius * Math.sin(angle), radius * (Math.cos(angle) - Math.cos(half))];
  });
}

/**
 * The arc of given length that touches the lines on which both ends slide, which is how leather with much to spare lies
 * round boards that stand open; null where its ends would have to slide past their stops.
 */
function tangentArc(
  from: Vec2,
  to: Vec2,
  length: number,
  slide: { readonly start: number; readonly end: number },
): number[] | null {
  const turn = wrapAngle(slide.end - slide.start);
  if (!(Math.abs(turn) < MOST_OPEN)) return null;
  const middle = slide.start + turn / 2;
  const chord = turn === 0 ? length : (2 * length * Math.sin(turn / 2)) / turn;
  const out = (chord - distance(from, to)) / 2 / Math.cos(turn / 2);
  if (!(out > 0)) return null;
  let at = addScaled(from, heading(slide.start), -out);
  const path: number[] = [...at];
  for (let i = 0; i < BUMP_POINTS; i++) {
    at = addScaled(at, heading(middle + turn * ((i + 0.5) / BUMP_POINTS - 0.5)), length / BUMP_POINTS);
    path.push(...at);
  }
  return path;
}

/** Largest turn between boards, rad, that such an arc is tried for. */
const MOST_OPEN = 3;

/** A path from a to b, given by shares of the way along the line between them and to its right. */
function along(a: Vec2, b: Vec2, at: (share: number) => Vec2): number[] {
  const [dx, dy] = subtract(b, a);
  return Array.from({ length: BUMP_POINTS + 1 }, (_, i) => {
    const [u, v] = at(i / BUMP_POINTS);
    return [a[0] + u * dx + v * dy, a[1] + u * dy - v * dx];
  }).flat();
}
