import { OUTLINE_LIMITS } from '../../job/hideSchema.ts';
import { thinnedLine } from '../../math/thinnedLine.ts';
import type { Vec2 } from '../../math/vec2.ts';

/** A corner on the nearest whole step, within what the job allows. */
export function onGrid(corner: Vec2, step: number): Vec2 {
  const set = (value: number): number => {
    const stepped = Math.round(Math.min(OUTLINE_LIMITS.max, Math.max(OUTLINE_LIMITS.min, value)) / step) * step;
    // Without the noise of the product, and no minus before 0.
    return Number(stepped.toFixed(6)) + 0;
  };
  return [set(corner[0]), set(corner[1])];
}

/**
 * Corners of a line drawn by hand: thinned to a tolerance, each on a whole step, none twice in a row. The line lies within the
 * tolerance and a step of them; where that takes more than `most` corners, the tolerance is doubled until it does not.
 * @param tolerance mm, over 0
 * @param step mm, over 0
 * @returns the corners, and the tolerance that was kept to
 */
export function handDrawn(
  points: readonly Vec2[],
  {
    tolerance,
    step,
    most = OUTLINE_LIMITS.corners,
  }: { readonly tolerance: number; readonly step: number; readonly most?: number },
): { readonly corners: Vec2[]; readonly tolerance: number } {
  const corners = thinnedLine(points, tolerance)
    .map((corner) => onGrid(corner, step))
    .filter(([x, y], i, all) => x !== all[i - 1]?.[0] || y !== all[i - 1]?.[1]);
  return corners.length <= Math.max(2, most)
    ? { corners, tolerance }
    : handDrawn(points, { tolerance: 2 * tolerance, step, most });
}
