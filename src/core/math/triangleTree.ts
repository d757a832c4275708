import { squaredTriangleDistance } from './triangleDistance.ts';

/** Triangles in a tree of boxes, along whose axes rays and distances are found. */
export interface TriangleTree {
  /**
   * Where a point stands on the line through it along the third axis: 0 outside of the closed surface, else the distance to
   * the nearer crossing. A point is inside where an odd number of triangles lie above it.
   */
  depthAlong(x: number, y: number, z: number): number;
  /** Distance to the nearest triangle; once one is found within `enough`, its distance may be given instead. */
  distance(x: number, y: number, z: number, enough: number): number;
}

type Triple = [number, number, number];

/** Triangles in one leaf of the tree. */
const LEAF = 6;

/**
 * Builds the tree by halving boxes at the middle of their triangles' centres, along the longest side.
 * @param corners nine coordinates for each triangle
 */
export function triangleTree(corners: Float64Array): TriangleTree {
  const count = corners.length / 9;
  const order = Uint32Array.from({ length: count }, (_, i) => i);
  const centre = (t: number, axis: number): number =>
    corners[9 * t + axis]! + corners[9 * t + 3 + axis]! + corners[9 * t + 6 + axis]!;
  /** Least and greatest corner of each node's box; where its triangles begin and end; its second child, 0 for a leaf. */
  const boxes: number[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const second: number[] = [];
  const build = (start: number, end: number): void => {
    const node = from.length;
    from.push(start);
    to.push(end);
    second.push(0);
    const box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    const middles = [...box];
    for (let i = start; i < end; i++)
      for (let axis = 0; axis < 3; axis++) {
        for (let k = 9 * order[i]! + axis, n = 0; n < 3; n++, k += 3) {
          box[axis] = Math.min(box[axis]!, corners[k]!);
          box[axis + 3] = Math.max(box[axis + 3]!, corners[k]!);
        }
        const middle = centre(order[i]!, axis);
        middles[axis] = Math.min(middles[axis]!, middle);
        middles[axis + 3] = Math.max(middles[axis + 3]!, middle);
      }
    boxes.push(...box);
    if (end - start <= LEAF) return;
    const size = (axis: number): number => middles[axis + 3]! - middles[axis]!;
    const axis = size(0) > size(1) ? (size(0) > size(2) ? 0 : 2) : size(1) > size(2) ? 1 : 2;
    const middle = (middles[axis]! + middles[axis + 3]!) / 2;
    let split = start;
    for (let i = start; i < end; i++)
      if (centre(order[i]!, axis) < middle) {
        [order[i], order[split]] = [order[split]!, order[i]!];
        split++;
      }
    // Triangles about one place cannot be told apart: half of them go to either side.
    if (split === start || split === end) split = (start + end) >> 1;
    build(start, split);
    second[node] = from.length;
    build(split, end);
  };
  build(0, count);

  const stack = new Uint32Array(128);
  const [a, b, c] = [0, 1, 2].map((): [number, number, number] => [0, 0, 0]) as [Triple, Triple, Triple];
  const boxDistance = (node: number, x: number, y: number, z: number): number => {
    const at = 6 * node;
    const dx = Math.max(0, boxes[at]! - x, x - boxes[at + 3]!);
    const dy = Math.max(0, boxes[at + 1]! - y, y - boxes[at + 4]!);
    const dz = Math.max(0, boxes[at + 2]! - z, z - boxes[at + 5]!);
    return dx * dx + dy * dy + dz * dz;
  };
  return {
    depthAlong(x, y, z) {
      let crossings = 0;
      let nearest = Number.POSITIVE_INFINITY;
      let depth = 1;
      stack[0] = 0;
      while (depth > 0) {
        const node = stack[--depth]!;
        const at = 6 * node;
        if (x < boxes[at]! || x > boxes[at + 3]! || y < boxes[at + 1]! || y > boxes[at + 4]!) continue;
        if (second[node]! > 0) {
          stack[depth++] = second[node]!;
          stack[depth++] = node + 1;
          continue;
        }
        for (let i = from[node]!; i < to[node]!; i++) {
          const k = 9 * order[i]!;
          const [ax, ay] = [corners[k]! - x, corners[k + 1]! - y];
          const [bx, by] = [corners[k + 3]! - x, corners[k + 4]! - y];
          const [cx, cy] = [corners[k + 6]! - x, corners[k + 7]! - y];
          const w = ax * by - ay * bx;
          const u = bx * cy - by * cx;
          const v = cx * ay - cy * ax;
          if (u * w <= 0 || v * w <= 0) continue;
          const height = (u * corners[k + 2]! + v * corners[k + 5]! + w * corners[k + 8]!) / (u + v + w) - z;
          nearest = Math.min(nearest, Math.abs(height));
          if (height > 0) crossings++;
        }
      }
      return crossings % 2 === 1 ? nearest : 0;
    },
    distance(x, y, z, enough) {
      let best = Number.POSITIVE_INFINITY;
      let depth = 1;
      stack[0] = 0;
      while (depth > 0 && best > enough * enough) {
        const node = stack[--depth]!;
        if (boxDistance(node, x, y, z) >= best) continue;
        if (second[node]! > 0) {
          const [near, far] = [node + 1, second[node]!];
          const isFirst = boxDistance(near, x, y, z) <= boxDistance(far, x, y, z);
          stack[depth++] = isFirst ? far : near;
          stack[depth++] = isFirst ? near : far;
          continue;
        }
        for (let i = from[node]!; i < to[node]!; i++) {
          const k = 9 * order[i]!;
          a[0] = corners[k]! - x;
          a[1] = corners[k + 1]! - y;
          a[2] = corners[k + 2]! - z;
          b[0] = corners[k + 3]! - x;
          b[1] = corners[k + 4]! - y;
          b[2] = corners[k + 5]! - z;
          c[0] = corners[k + 6]! - x;
          c[1] = corners[k + 7]! - y;
          c[2] = corners[k + 8]! - z;
          best = Math.min(best, squaredTriangleDistance(a, b, c));
        }
      }
      return Math.sqrt(best);
    },
  };
}
