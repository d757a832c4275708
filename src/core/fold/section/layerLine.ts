import type { ReverseCurve } from '../../allowance/reverseCurve.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../../math/vec2.ts';

/** Steps that an arc is drawn in. */
export const ARC_STEPS = 16;

/** Length over which a layer comes down past the end of the layer beneath it, mm; for the drawing only. */
export const LINING_RAMP = 4;

/** Points along a reverse curve that rises from the origin by its offset. */
export function curvePoints({ angle, straight, run }: ReverseCurve, radius: number): Vec2[] {
  const first = Array.from({ length: ARC_STEPS + 1 }, (_, i): Vec2 => {
    const turned = (angle * i) / ARC_STEPS;
    return [radius * Math.sin(turned), radius * (1 - Math.cos(turned))];
  });
  const offset = 2 * first.at(-1)![1] + straight;
  return [...first, ...first.map(([u, v]): Vec2 => [run - u, offset - v]).reverse()];
}

/** A line moved to its left by `by`, mm. */
export const movedLeft = (line: readonly Vec2[], by: number): Vec2[] =>
  line.map((point, i) => {
    const [before, after] = [line[Math.max(0, i - 1)]!, line[Math.min(line.length - 1, i + 1)]!];
    return addScaled(point, leftOf(heading(Math.atan2(after[1] - before[1], after[0] - before[0]))), by);
  });

/** Outline of a line drawn with a thickness, its ends cut square. */
export const thicken = (line: readonly Vec2[], thickness: number): Vec2[] => [
  ...movedLeft(line, thickness / 2),
  ...movedLeft(line, -thickness / 2).reverse(),
];
