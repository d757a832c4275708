import type { Obstacle } from './obstacle.ts';

/** Where one strip node stands to the outline; written by {@link measureNodeGap}, never allocated in the loop. */
export interface NodeGap {
  /** Distance outside the nearest edge, negative inside; Infinity where there is no outline. */
  gap: number;
  /** Unit normal out of the solid. */
  nx: number;
  ny: number;
  /** The node lies past the end of its edge, where the corner itself makes the contact. */
  past: boolean;
}

const edgeCount = (obstacle: Obstacle): number => obstacle.x.length - (obstacle.closed ? 0 : 1);

const after = (obstacle: Obstacle, i: number): number => (i + 1 === obstacle.x.length ? 0 : i + 1);

/** Finds the edge nearest to a point by looking at them all. */
export function nearestEdge(obstacle: Obstacle, px: number, py: number): number {
  let best = 0;
  let bestSquare = Infinity;
  for (let i = 0; i < edgeCount(obstacle); i++) {
    const j = after(obstacle, i);
    const ex = obstacle.x[j]! - obstacle.x[i]!;
    const ey = obstacle.y[j]! - obstacle.y[i]!;
    const dx = px - obstacle.x[i]!;
    const dy = py - obstacle.y[i]!;
    const share = Math.min(1, Math.max(0, (dx * ex + dy * ey) / (ex * ex + ey * ey)));
    const square = (dx - share * ex) ** 2 + (dy - share * ey) ** 2;
    if (square < bestSquare) {
      bestSquare = square;
      best = i;
    }
  }
  return best;
}

/**
 * Measures how far a node stands off the outline, walking from the edge it was last nearest to.
 *
 * On an edge the gap is the distance along the edge's normal; past its end it is the distance to the corner.
 *
 * @returns the edge now nearest
 */
export function measureNodeGap(obstacle: Obstacle, px: number, py: number, from: number, out: NodeGap): number {
  const edges = edgeCount(obstacle);
  let edge = from;
  let came = 0;
  out.gap = Infinity;
  out.past = false;
  for (let steps = 0; steps <= edges; steps++) {
    const j = after(obstacle, edge);
    const ex = obstacle.x[j]! - obstacle.x[edge]!;
    const ey = obstacle.y[j]! - obstacle.y[edge]!;
    const length = Math.sqrt(ex * ex + ey * ey);
    const dx = px - obstacle.x[edge]!;
    const dy = py - obstacle.y[edge]!;
    const along = dx * ex + dy * ey;
    const way = along < 0 ? -1 : along > length * length ? 1 : 0;
    if (way === 0) {
      out.gap = (dx * ey - dy * ex) / length;
      out.nx = ey / length;
      out.ny = -ex / length;
      return edge;
    }
    const next = edge + way;
    const open = !obstacle.closed && (next < 0 || next >= edges);
    if (open) return edge;
    if (came === -way) {
      const corner = way === 1 ? j : edge;
      const cx = px - obstacle.x[corner]!;
      const cy = py - obstacle.y[corner]!;
      const distance = Math.sqrt(cx * cx + cy * cy);
      out.past = true;
      out.gap = distance;
      out.nx = cx / distance;
      out.ny = cy / distance;
      return edge;
    }
    came = way;
    edge = (next + edges) % edges;
  }
  return edge;
}
