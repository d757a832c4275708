/**
 * Sum of the signed turns from a path's first stretch to its last, rad. Between ends of given directions it can only change
 * by whole circles, and no elastic strip of low energy does that: such a change is the mark of a loop.
 *
 * @param path x and y in turn; repeated points are skipped
 */
export function turningAlong(path: ArrayLike<number>): number {
  let sum = 0;
  let ax = 0;
  let ay = 0;
  for (let i = 2; i + 1 < path.length; i += 2) {
    const bx = path[i]! - path[i - 2]!;
    const by = path[i + 1]! - path[i - 1]!;
    if (bx === 0 && by === 0) continue;
    if (ax !== 0 || ay !== 0) sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    ax = bx;
    ay = by;
  }
  return sum;
}
