import { convexChain } from '../../math/convexChain.ts';
import { distance, type Vec2 } from '../../math/vec2.ts';
import { growOutline, type Obstacle } from '../../strip/obstacle.ts';
import { turningAlong } from '../../strip/turning.ts';

/** A path to begin from, and the taut path it was made from. */
export interface SectionGuess {
  readonly path: readonly number[];
  /** Length of the taut path from one held place to the other. */
  readonly tautLength: number;
}

/** Least and most the guess stands off the taut path, D: clear of the outline, but no balloon. */
const CLEARANCE = { least: 2e-3, most: 0.5 };

/** Points of the bump that spare length makes where the taut path is straight. */
const BUMP_POINTS = 24;

/**
 * Guesses the shape of a strip from the taut path: grown until it has the strip's length (Steiner), ends left in place.
 *
 * @param obstacle outline that the strip lies on, its first and last vertices the fore-edges
 * @param from where the strip is held in front
 * @param to where it is held at the back
 * @param length of the strip between them, D
 */
export function guessSection(obstacle: Obstacle, from: Vec2, to: Vec2, length: number): SectionGuess {
  const chain: Vec2[] = [from];
  for (let i = 1; i < obstacle.x.length - 1; i++) chain.push([obstacle.x[i]!, obstacle.y[i]!]);
  chain.push(to);
  const taut = convexChain(chain).map((i) => chain[i]!);
  let tautLength = 0;
  for (let i = 1; i < taut.length; i++) tautLength += distance(taut[i - 1]!, taut[i]!);
  const slack = Math.max(0, length - tautLength);
  // A clamped strip whose ends come nearer by a small slack rises by (2/pi) sqrt(slack length) (Euler's first mode).
  const rise = (2 / Math.PI) * Math.sqrt(slack * length);
  if (taut.length === 2) return { path: bump(from, to, rise), tautLength };
  const turning = turningAlong(taut.flat());
  const stand = Math.min(slack / turning, rise, CLEARANCE.most);
  const grown = growOutline(taut.flat(), false, Math.max(stand, CLEARANCE.least), Math.PI / 12);
  const path: number[] = [...from];
  for (let i = 1; i < grown.x.length - 1; i++) path.push(grown.x[i]!, grown.y[i]!);
  path.push(...to);
  return { path, tautLength };
}

/** One cosine bump to the right of the line from a to b. */
function bump(a: Vec2, b: Vec2, rise: number): number[] {
  const span = distance(a, b) || 1;
  const path: number[] = [];
  for (let i = 0; i <= BUMP_POINTS; i++) {
    const share = i / BUMP_POINTS;
    const off = (0.5 * rise * (1 - Math.cos(2 * Math.PI * share))) / span;
    path.push(a[0] + share * (b[0] - a[0]) + off * (b[1] - a[1]), a[1] + share * (b[1] - a[1]) - off * (b[0] - a[0]));
  }
  return path;
}
