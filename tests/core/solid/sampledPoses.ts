import type { RangePoint } from '../../../src/core/leather/leatherModel.ts';
import type { Pose } from '../../../src/core/solid/pose.ts';
import { LAW_SEED } from '../../laws.ts';
import { nth } from '../../nth.ts';

const POINTS = ['thin', 'thick'] as const satisfies readonly RangePoint[];

/**
 * Poses with an end of the weight range each: every third pose in turns of thin and thick, others for every variant and
 * every seed, so that a few seeds see all. With `LAWS=full` every pose at both ends.
 */
export function sampledPoses(
  poses: readonly Pose[],
  variant: number,
): { pose: Pose; point: (typeof POINTS)[number] }[] {
  if (process.env.LAWS === 'full') return poses.flatMap((pose) => POINTS.map((point) => ({ pose, point })));
  return poses
    .map((pose, i) => ({ pose, point: nth(POINTS, (Math.floor(i / 3) + variant) % 2), turn: i + variant + LAW_SEED }))
    .filter(({ turn }) => turn % 3 === 0);
}
