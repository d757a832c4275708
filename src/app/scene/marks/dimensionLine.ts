import type { Vector3 } from 'three';
import type { Pixel } from './placeLabels.ts';
import type { View } from './view.ts';

/** A dimension in the picture: path data for its line, its end ticks and its arrowheads, and where its leader starts. */
export interface DimensionLine {
  readonly line: string;
  readonly ticks: string;
  readonly heads: string;
  readonly middle: Pixel;
}

/** How far the line of a short dimension goes on beyond its ticks, and half the length of a tick, px if seen squarely. */
const TAIL = 16;
const TICK = 4;
/** Length of an arrowhead and half its width, px if seen squarely. */
const HEAD = 8;
const HALF_HEAD = 3;
/** A dimension at least this long needs no tails to be seen, px. */
const LONG = 34;

/**
 * Draws a dimension that lies on the surface that it measures: line, ticks and arrowheads are foreshortened with it. Where there
 * is room the arrows stand between the ticks, else outside, pointing in (ISO 129-1).
 * @param from first end, mm
 * @param to second end
 * @param along unit vector in the surface along the edges that it measures between
 * @param across unit vector from the first edge to the second, of a dimension without length too
 */
export function dimensionLine(
  from: Vector3,
  to: Vector3,
  { along, across }: { readonly along: Vector3; readonly across: Vector3 },
  { pixel, pixelAt }: Pick<View, 'pixel' | 'pixelAt'>,
): DimensionLine {
  const size = pixelAt(from);
  const beyond = (end: Vector3, way: Vector3, length: number): Pixel =>
    pixel(end.clone().addScaledVector(way, length * size));
  const isShort = from.distanceTo(to) < LONG * size;
  const tail = isShort ? TAIL : 0;
  const head = (end: Vector3, inward: number): string => {
    const foot = end.clone().addScaledVector(across, (isShort ? -inward : inward) * HEAD * size);
    return `M${at(pixel(end))}L${at(beyond(foot, along, HALF_HEAD))}L${at(beyond(foot, along, -HALF_HEAD))}Z`;
  };
  const tick = (end: Vector3): string => `M${at(beyond(end, along, -TICK))}L${at(beyond(end, along, TICK))}`;
  const [[x, y], [u, v]] = [pixel(from), pixel(to)];
  return {
    line: `M${at(beyond(from, across, -tail))}L${at(beyond(to, across, tail))}`,
    ticks: tick(from) + tick(to),
    heads: head(from, 1) + head(to, -1),
    middle: [(x + u) / 2, (y + v) / 2],
  };
}

const at = ([x, y]: Pixel): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
