import type { Vector3 } from 'three';
import type { Pixel } from './placeLabels.ts';
import type { View } from './view.ts';

/** A dimension in the picture: path data for its line and end ticks, and where its leader starts. */
export interface DimensionLine {
  readonly line: string;
  readonly ticks: string;
  readonly middle: Pixel;
}

/** How far the line of a short dimension goes on beyond its ticks, and half the length of a tick, px if seen squarely. */
const TAIL = 13;
const TICK = 7;
/** A dimension at least this long needs no tails to be seen, px. */
const LONG = 34;

/**
 * Draws a dimension that lies on the surface that it measures: line and ticks are foreshortened with it.
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
  const tail = from.distanceTo(to) < LONG * size ? TAIL : 0;
  const tick = (end: Vector3): string => `M${at(beyond(end, along, -TICK))}L${at(beyond(end, along, TICK))}`;
  const [[x, y], [u, v]] = [pixel(from), pixel(to)];
  return {
    line: `M${at(beyond(from, across, -tail))}L${at(beyond(to, across, tail))}`,
    ticks: tick(from) + tick(to),
    middle: [(x + u) / 2, (y + v) / 2],
  };
}

const at = ([x, y]: Pixel): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
