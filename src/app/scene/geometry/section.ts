import { type Plane, Vector2, Vector3 } from 'three';
import type { MeshData } from '../../../core/index.ts';

/** Axes of a plane: `right` and `up` lie in it, `origin` is its point nearest the frame's origin. */
export interface PlaneAxes {
  readonly origin: Vector3;
  readonly right: Vector3;
  readonly up: Vector3;
}

/** Axes of a plane square to the spine (right is x) or parallel to it (right is z); up is never downward. */
export function planeAxes(plane: Plane): PlaneAxes {
  const right = Math.abs(plane.normal.z) > 0.5 ? new Vector3(1, 0, 0) : new Vector3(0, 0, 1);
  const up = new Vector3().crossVectors(plane.normal, right).normalize();
  if (up.y < 0) up.negate();
  return { origin: plane.coplanarPoint(new Vector3()), right, up };
}

/** Two places closer than this, mm, are one corner of the section: far under any length of the model. */
const WELD = 1e-4;

/** The cut is made this far beside the plane, mm, so that no corner lies exactly on it. */
const HAIR = 3e-4;

/**
 * Cuts a closed solid with a plane; returns the outlines of the cut face in the plane's axes, mm. Every triangle that
 * crosses gives one step of an outline; steps are chained end to end. A chain that does not close (the solid had a hole
 * in its surface) is left out.
 */
export const section = (mesh: MeshData, plane: Plane, axes: PlaneAxes): Vector2[][] =>
  chain(crossings(mesh, plane, axes));

type Step = readonly [from: Vector2, to: Vector2];

function crossings({ positions, indices }: MeshData, plane: Plane, axes: PlaneAxes): Step[] {
  const steps: Step[] = [];
  const corners = [new Vector3(), new Vector3(), new Vector3()] as const;
  const flat = (point: Vector3): Vector2 => {
    const from = point.clone().sub(axes.origin);
    return new Vector2(from.dot(axes.right), from.dot(axes.up));
  };
  for (let i = 0; i < indices.length; i += 3) {
    const heights = corners.map(
      (corner, k) => plane.distanceToPoint(corner.fromArray(positions, 3 * indices[i + k]!)) + HAIR,
    );
    const above = heights.map((height) => height >= 0);
    if (above[0] === above[1] && above[1] === above[2]) continue;
    let [from, to]: [Vector2 | null, Vector2 | null] = [null, null];
    for (let k = 0; k < 3; k++) {
      const next = (k + 1) % 3;
      if (above[k] === above[next]) continue;
      // Always from the upper end, so that both triangles of an edge find the same point.
      const [high, low] = above[k] ? [k, next] : [next, k];
      const share = heights[high]! / (heights[high]! - heights[low]!);
      const point = flat(corners[high]!.clone().lerp(corners[low]!, share));
      if (above[k]) from = point;
      else to = point;
    }
    if (from && to) steps.push([from, to]);
  }
  return steps;
}

function chain(steps: Step[]): Vector2[][] {
  const key = ({ x, y }: Vector2): string => `${Math.round(x / WELD)},${Math.round(y / WELD)}`;
  const next = new Map<string, Step[]>();
  for (const step of steps) {
    if (key(step[0]) === key(step[1])) continue;
    const known = next.get(key(step[0]));
    if (known) known.push(step);
    else next.set(key(step[0]), [step]);
  }
  const loops: Vector2[][] = [];
  for (const start of next.keys()) {
    const loop: Vector2[] = [];
    let at = start;
    for (let step = next.get(at)?.pop(); step; step = next.get(at)?.pop()) {
      loop.push(step[0]);
      at = key(step[1]);
      if (at === start) break;
    }
    if (at === start && loop.length > 2) loops.push(loop);
  }
  return loops;
}
