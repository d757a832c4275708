import { ARTWORK_GRID, ARTWORK_LIMITS, type Box2, reachOf, type Vec2, writeArtworkLines } from '../../core/index.ts';
import { count, Refusal } from '../refusal.ts';
import { simplified } from './simplified.ts';

/** Lines on the grid of an artwork, as a job keeps them. */
export interface GridLines {
  readonly width: number;
  readonly height: number;
  readonly lines: string;
  /** Detail finer than this share of the larger side is lost. */
  readonly finest: number;
}

/** Shares of the larger side that the lines may be simplified by; a finer one is tried first. 1/2000 of 200 mm is 0.1 mm. */
export const FINEST = [1 / 8000, 1 / 4000, 1 / 2000] as const;

/**
 * Polylines in any unit, y down, as the lines of an artwork: its box is the least that holds them, its larger side 10,000. They
 * are thinned, as finely as the limits of a job allow.
 *
 * @throws Refusal where there is no line, or where they have too many points even at the coarsest
 */
export function gridLines(polylines: readonly (readonly Vec2[])[]): GridLines {
  const { x: across, y: down } = reachOf(polylines) ?? NOWHERE;
  const side = Math.max(across[1] - across[0], down[1] - down[0]);
  if (!(side > 0))
    throw new Refusal(
      'empty',
      'shows no line',
      'at least one line or shape',
      'draw with visible paths, then open it again',
    );
  const scale = ARTWORK_GRID / side;
  const onGrid = ([x, y]: Vec2): Vec2 => [Math.round((x - across[0]) * scale), Math.round((y - down[0]) * scale)];
  const [width, height] = onGrid([across[1], down[1]]);
  let points = 0;
  for (const finest of FINEST) {
    const thin = polylines
      .map((line) => withoutRepeats(simplified(line, finest * side).map(onGrid)))
      .filter((line) => line.length > 1);
    points = thin.reduce((sum, line) => sum + line.length, 0);
    if (points > ARTWORK_LIMITS.points) continue;
    const lines = writeArtworkLines(thin);
    if (lines.length <= ARTWORK_LIMITS.characters)
      return { width: Math.max(1, width), height: Math.max(1, height), lines, finest };
  }
  throw new Refusal(
    'too_large',
    `has ${count(points)} points after it is simplified`,
    `at most ${count(ARTWORK_LIMITS.points)}, and ${count(ARTWORK_LIMITS.characters)} characters`,
    'draw it with fewer and smoother paths, then open it again',
  );
}

/** The reach of no line at all. */
const NOWHERE: Box2 = { x: [0, 0], y: [0, 0] };

const withoutRepeats = (line: readonly Vec2[]): Vec2[] =>
  line.filter(([x, y], i) => i === 0 || x !== line[i - 1]![0] || y !== line[i - 1]![1]);
