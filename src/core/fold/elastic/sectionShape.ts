import { wrapAngle } from '../../math/angle.ts';
import { measureNodeGap, type NodeGap, nearestEdge } from '../../strip/nodeGap.ts';
import type { Obstacle } from '../../strip/obstacle.ts';

/** What the shape of a strip says, in the unit of its nodes. */
export interface SectionShape {
  /** Sum of the turns at the nodes, without sign, rad. */
  readonly turning: number;
  /** Direction of every edge, unwound, rad. */
  readonly angles: Float64Array;
  /** Smallest radius of the mid-surface; Infinity if it is straight. */
  readonly leastRadius: number;
  /** Farthest the strip stands off the outline over the spine, and over the boards. */
  readonly spineBow: number;
  readonly faceBulge: number;
}

/**
 * Measures the shape of a strip over an outline.
 *
 * @param nodes x and y in turn
 * @param spacing rest length of an edge
 * @param obstacle outline it lies on; a node belongs to the spine where its nearest edge does
 * @param spine first and last point, among the points the outline was grown from, that belong to the spine
 */
export function sectionShape(
  nodes: Float64Array,
  spacing: number,
  obstacle: Obstacle,
  spine: { readonly first: number; readonly last: number },
): SectionShape {
  const count = nodes.length / 2;
  const angles = new Float64Array(count - 1);
  const node: NodeGap = { gap: 0, nx: 0, ny: 0, past: false };
  let turning = 0;
  let sharpest = 0;
  let spineBow = 0;
  let faceBulge = 0;
  for (let k = 0; k < count - 1; k++) {
    const b = 2 * k;
    const direction = Math.atan2(nodes[b + 3]! - nodes[b + 1]!, nodes[b + 2]! - nodes[b]!);
    if (k === 0) {
      angles[0] = direction;
      continue;
    }
    const turn = wrapAngle(direction - angles[k - 1]!);
    angles[k] = angles[k - 1]! + turn;
    turning += Math.abs(turn);
    sharpest = Math.max(sharpest, Math.abs(turn));
    const near = nearestEdge(obstacle, nodes[b]!, nodes[b + 1]!);
    const edge = measureNodeGap(obstacle, nodes[b]!, nodes[b + 1]!, near, node);
    if (!Number.isFinite(node.gap)) continue;
    const next = edge + 1 === obstacle.x.length ? 0 : edge + 1;
    const onSpine = obstacle.source[edge]! >= spine.first && obstacle.source[next]! <= spine.last;
    if (onSpine) spineBow = Math.max(spineBow, node.gap);
    else faceBulge = Math.max(faceBulge, node.gap);
  }
  return { turning, angles, leastRadius: spacing / sharpest, spineBow, faceBulge };
}
