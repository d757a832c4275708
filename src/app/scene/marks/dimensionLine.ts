import type { Pixel } from './placeLabels.ts';

/** A dimension mark in the picture: path data for its lines and arrow heads, and where its leader starts. */
export interface DimensionLine {
  readonly extension: string;
  readonly dimension: string;
  readonly arrows: string;
  readonly middle: Pixel;
}

const ARROW = 7;
const TAIL = 9;
/** Half length of the ticks at the feet, px. */
const TICK = 6;
const SHORTEST_FOR_INNER_ARROWS = 34;

/**
 * Draws a dimension between two points of the picture, on their surface. A short one has its arrows outside, pointing
 * in, as in technical drawings.
 * @param from first foot, px
 * @param to second foot, px
 * @param edge direction of the edges between which it measures; of no length where they run toward the camera
 */
export function dimensionLine(from: Pixel, to: Pixel, edge: Pixel): DimensionLine {
  const span = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const length = Math.hypot(...edge);
  const tick: Pixel = length > 0 ? [(edge[0] * TICK) / length, (edge[1] * TICK) / length] : [0, 0];
  const along: Pixel =
    span > 0.5 ? [(to[0] - from[0]) / span, (to[1] - from[1]) / span] : [-tick[1] / TICK, tick[0] / TICK];
  const inner = span >= SHORTEST_FOR_INNER_ARROWS;
  const outside = inner ? 0 : ARROW + TAIL;
  return {
    extension: [from, to].map((foot) => `M${at(add(foot, tick, -1))}L${at(add(foot, tick))}`).join(''),
    dimension: `M${at(add(from, along, -outside))}L${at(add(to, along, outside))}`,
    arrows: arrow(from, along, inner ? 1 : -1) + arrow(to, along, inner ? -1 : 1),
    middle: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
  };
}

const add = (p: Pixel, q: Pixel, share = 1): Pixel => [p[0] + q[0] * share, p[1] + q[1] * share];
const at = ([x, y]: Pixel): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** Head with its point at `tip`, its body toward `along * side`. */
function arrow(tip: Pixel, along: Pixel, side: 1 | -1): string {
  const base = add(tip, along, side * ARROW);
  const across: Pixel = [-along[1] * 2.4, along[0] * 2.4];
  return `M${at(tip)}L${at(add(base, across))}L${at(add(base, across, -1))}Z`;
}
