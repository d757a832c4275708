import type { PartPose } from './partTakes.ts';

/** How far a vertex may be from its place between two key poses, mm: not seen in a film. */
const FURTHEST = 0.3;

/**
 * Chooses the poses of a part that the others follow from, by linear interpolation, within 0.3 mm or with as many as there may be: the one
 * that is furthest off is added until none is too far (Ramer, Douglas and Peucker).
 * @param times place of each pose in the sequence
 * @param poses null where the part is not there
 * @returns indices of poses, rising; the first and the last that are there are among them
 */
export function keyPoses(times: readonly number[], poses: readonly (PartPose | null)[], most: number): number[] {
  const there = poses.flatMap((pose, i) => (pose === null ? [] : [i]));
  const [first, last] = [there[0]!, there.at(-1)!];
  const keys = first === last ? [last] : [first, last];
  while (keys.length < most) {
    let [worst, furthest] = [FURTHEST, -1];
    for (let k = 1; k < keys.length; k++)
      for (let i = keys[k - 1]! + 1; i < keys[k]!; i++) {
        const [from, to] = [keys[k - 1]!, keys[k]!];
        const share = (times[i]! - times[from]!) / (times[to]! - times[from]!);
        const off = distance(poses[i]!.positions, poses[from]!.positions, poses[to]!.positions, share);
        if (off > worst) [worst, furthest] = [off, i];
      }
    if (furthest < 0) break;
    keys.push(furthest);
    keys.sort((a, b) => a - b);
  }
  // A part that does not move needs no more than its shape at rest.
  return keys.length === 2 && distance(poses[first]!.positions, poses[last]!.positions, poses[last]!.positions, 0) === 0
    ? [last]
    : keys;
}

/** Furthest way of a vertex from its place between two poses. */
function distance(own: Float32Array, from: Float32Array, to: Float32Array, share: number): number {
  let most = 0;
  for (let i = 0; i < own.length; i += 3) {
    let sum = 0;
    for (let k = i; k < i + 3; k++) sum += (own[k]! - from[k]! - share * (to[k]! - from[k]!)) ** 2;
    most = Math.max(most, sum);
  }
  return Math.sqrt(most);
}
