import type { Pixel } from './placeLabels.ts';

/** A dimension mark in the picture: path data for its lines and arrow heads, and where its label hangs on. */
export interface DimensionLine {
  readonly extension: string;
  readonly dimension: string;
  readonly arrows: string;
  readonly middle: Pixel;
  /** From the feet to the dimension line, px. */
  readonly stand: Pixel;
}

const ARROW = 7;
const TAIL = 12;
const OVERSHOOT = 4;
const SHORTEST_FOR_INNER_ARROWS = 34;

/**
 * Draws a dimension between two points of the picture, standing off by a step. A short one has its arrows outside,
 * pointing in, as draughtsmen do.
 * @param from foot of the first extension line, px
 * @param to foot of the second, px
 * @param step from the feet to the dimension line, px
 */
export function dimensionLine(from: Pixel, to: Pixel, step: Pixel): DimensionLine {
  const a = add(from, step);
  const b = add(to, step);
  const span = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const stand = Math.hypot(...step);
  const along: Pixel = span > 0.5 ? [(b[0] - a[0]) / span, (b[1] - a[1]) / span] : turn(step, stand);
  const past: Pixel = stand > 0 ? add(step, step, OVERSHOOT / stand) : step;
  const inner = span >= SHORTEST_FOR_INNER_ARROWS;
  const outside = inner ? 0 : ARROW + TAIL;
  return {
    extension: `M${at(from)}L${at(add(from, past))}M${at(to)}L${at(add(to, past))}`,
    dimension: `M${at(add(a, along, -outside))}L${at(add(b, along, outside))}`,
    arrows: arrow(a, along, inner ? 1 : -1) + arrow(b, along, inner ? -1 : 1),
    middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    stand: step,
  };
}

const add = (p: Pixel, q: Pixel, share = 1): Pixel => [p[0] + q[0] * share, p[1] + q[1] * share];
const at = ([x, y]: Pixel): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
const turn = ([x, y]: Pixel, length: number): Pixel => (length > 0 ? [-y / length, x / length] : [1, 0]);

/** Head with its point at `tip`, its body toward `along * side`. */
function arrow(tip: Pixel, along: Pixel, side: 1 | -1): string {
  const base = add(tip, along, side * ARROW);
  const across: Pixel = [-along[1] * 2.4, along[0] * 2.4];
  return `M${at(tip)}L${at(add(base, across))}L${at(add(base, across, -1))}Z`;
}
