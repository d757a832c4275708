import type { Vec2 } from '../../core/index.ts';
import { type GridLines, gridLines } from '../lines/gridLines.ts';
import { simplified } from '../lines/simplified.ts';
import { Refusal } from '../refusal.ts';
import type { Grey } from './grey.ts';
import { softened } from './softened.ts';
import { otsuThreshold } from './threshold.ts';
import { tracedOutlines } from './tracedOutlines.ts';

export interface TraceOptions {
  /** Greys below it are dark, 1 to 255; null lets the picture decide. */
  readonly threshold: number | null;
  /** Areas smaller than this, dark or light, are dropped; pixels of the picture as it is kept, 512 on its longer side. */
  readonly speck_px: number;
}

export const TRACE_DEFAULTS: TraceOptions = { threshold: null, speck_px: 8 };

/** How far a traced line may stray from the outline, pixels: half of what an edge is known to. Assumption. */
const STRAY = 0.25;

/**
 * The outlines of the dark areas of a picture, as the lines of an artwork. The picture is softened by a pixel first, so that a
 * stepped edge becomes a smooth one.
 *
 * @throws Refusal where nothing is dark, or the lines are over the limits
 */
export function tracedPicture(grey: Grey, { threshold, speck_px }: TraceOptions): GridLines {
  const soft = softened(grey);
  const outlines = tracedOutlines(soft, threshold ?? otsuThreshold(soft.values)).filter(
    (line) => areaOf(line) >= speck_px,
  );
  if (outlines.length === 0)
    throw new Refusal(
      'empty',
      'shows no dark area to trace',
      'dark lines or areas on a light ground',
      'move the threshold, or lay it as it is',
    );
  return gridLines(outlines.map((line) => simplified(line, STRAY)));
}

/** Area within a closed line (the shoelace formula). */
function areaOf(line: readonly Vec2[]): number {
  let twice = 0;
  for (let i = 1; i < line.length; i++) twice += line[i - 1]![0] * line[i]![1] - line[i]![0] * line[i - 1]![1];
  return Math.abs(twice) / 2;
}
