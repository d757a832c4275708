import { holeNoun } from '../job/holeNoun.ts';
import type { Job } from '../job/jobSchema.ts';
import { circle, type Segment } from '../math/contour.ts';
import { addScaled, heading, type Vec2 } from '../math/vec2.ts';
import { line } from './drawing.ts';
import { holeShape, type SeamHole } from './seam.ts';

/** Where a frame on the outside lies on a piece: x' = origin + sign x, y' = y. */
export interface PieceFrame {
  readonly origin: number;
  readonly sign: 1 | -1;
}

/** A place of the outside as it lies on the piece. */
export const placed = ({ origin, sign }: PieceFrame, [x, y]: Vec2): Vec2 => [origin + sign * x, y];

/** `24 holes`, or `24 slits` of a lacing. */
export const holeWords = (job: Job, count: number): string => `${count} ${holeNoun(job)}`;

/** Draws holes as circles of their diameter, or slits as the cut itself, the same through every layer. */
export function holeMarks(job: Job, holes: readonly SeamHole[], frame: PieceFrame): Segment[] {
  const { size, slant } = holeShape(job);
  if (slant === null) return holes.map(({ at }) => circle(placed(frame, at), size / 2));
  return holes.map(({ at, heading: along }) => {
    const direction = heading(along + slant);
    const end = (side: 1 | -1): Vec2 => placed(frame, addScaled(at, direction, (side * size) / 2));
    return line(end(-1), end(1));
  });
}
