import type { Segment } from '../math/contour.ts';
import { addScaled, heading, type Vec2 } from '../math/vec2.ts';
import { line } from './drawing.ts';
import type { NamedMarks } from './lettering.ts';
import type { PatternSource } from './seam.ts';

/** Longest barb of an arrow, mm; a short arrow has barbs of a quarter of its length. */
const BARB = 5;

/** A double arrow of some length about its middle; angle in radians. */
export function doubleArrow(middle: Vec2, length: number, angle: number): Segment[] {
  const along = heading(angle);
  const ends = [-1, 1].map((side) => addScaled(middle, along, (side * length) / 2));
  const barb = Math.min(BARB, length / 4);
  const barbs = ends.flatMap((end, i) =>
    [-1, 1].map((side) => {
      const back = angle + (i === 0 ? 0 : Math.PI) + (side * Math.PI) / 6;
      return line(end, addScaled(end, heading(back), barb));
    }),
  );
  return [line(ends[0]!, ends[1]!), ...barbs];
}

/** A double arrow with its name, from head to tail, which lie along the hide's backbone or across it; none on card. */
export function directionMark(
  { job, isCard = false }: PatternSource,
  middle: Vec2,
  length: number,
  angle: number,
): NamedMarks {
  if (isCard) return { marks: [], words: [] };
  const height = Math.min(3, length / 10);
  const near = addScaled(middle, heading(angle + Math.PI / 2), height);
  return {
    marks: doubleArrow(middle, length, angle),
    words: [
      [
        `this way ${job.making.backbone === 'upright' ? 'along' : 'across'} the hide's backbone`,
        near,
        height,
        angle,
        'direction',
      ],
    ],
  };
}
