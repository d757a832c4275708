import { reachOf, segmentToBox } from '../math/box2.ts';
import { pictureFrame } from '../pattern/drawing.ts';
import type { PlacedDesign } from './placedDesign.ts';
import { type Bound, SIDES, type Side, type ToolingArea } from './toolingArea.ts';

/** A fold, edge, hole or cut that a design comes nearer to than its margin. */
export interface DesignWarning {
  readonly bound: Bound;
  /** Which side of the face it is at; null for what lies within. */
  readonly side: Side | null;
  /** From the design, mm; negative where the design goes on beyond it. */
  readonly distance: number;
  readonly margin: number;
}

/** Nearer by less than this, a design keeps its margin: what the chords of its curves leave out, mm. */
const CHORDS = 0.02;

/**
 * Where a design comes within its margin of what bounds its face: one warning for each side of the face, and one, the worst,
 * for each kind of thing within it. To those the least of the four margins is kept.
 */
export function designWarnings(
  placed: PlacedDesign,
  { whole, margins, bounds, obstacles }: ToolingArea,
): DesignWarning[] {
  const lines = [...placed.lines, ...placed.pictures.map(pictureFrame)];
  const reach = reachOf(lines);
  if (reach === null) return [];
  const distances: Record<Side, number> = {
    left: reach.x[0] - whole.x[0],
    right: whole.x[1] - reach.x[1],
    bottom: reach.y[0] - whole.y[0],
    top: whole.y[1] - reach.y[1],
  };
  const beside = SIDES.filter((side) => distances[side] < margins[side] - CHORDS).map(
    (side): DesignWarning => ({ side, bound: bounds[side], distance: distances[side], margin: margins[side] }),
  );
  const margin = Math.min(...SIDES.map((side) => margins[side]));
  const within = new Map<Bound, DesignWarning>();
  for (const obstacle of obstacles) {
    const { x, y, bound } = obstacle;
    if (x[0] > reach.x[1] + margin || x[1] < reach.x[0] - margin) continue;
    if (y[0] > reach.y[1] + margin || y[1] < reach.y[0] - margin) continue;
    let distance = margin;
    for (const line of lines)
      for (let i = 1; i < line.length && distance > 0; i++)
        distance = Math.min(distance, segmentToBox(line[i - 1]!, line[i]!, obstacle));
    if (distance < margin - CHORDS && distance < (within.get(bound)?.distance ?? margin))
      within.set(bound, { bound, side: null, distance, margin });
  }
  return [...beside, ...within.values()];
}
