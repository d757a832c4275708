import { placeEnds } from './stripEnds.ts';
import type { StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

/**
 * Lays the nodes of a strip along a path, evenly by the path's own length; a first guess need not have the strip's length.
 *
 * @param path x, y in turn, from the start of the strip to its end, at least 2 points
 */
export function layAlong(space: StripWorkspace, problem: StripProblem, path: ArrayLike<number>): void {
  const points = path.length / 2;
  let total = 0;
  for (let i = 1; i < points; i++) total += gapBetween(path, i);
  const h = space.spacing;
  const first = problem.start.kind === 'free' ? 0 : -0.5 * h;
  let passed = 0;
  let i = 1;
  for (let k = 0; k < space.count; k++) {
    const along = ((first + k * h) / problem.length) * total;
    while (i < points - 1 && passed + gapBetween(path, i) < along) passed += gapBetween(path, i++);
    const share = (along - passed) / (gapBetween(path, i) || 1);
    for (let c = 0; c < 2; c++) {
      const a = path[2 * i - 2 + c]!;
      space.nodes[2 * k + c] = a + share * (path[2 * i + c]! - a);
    }
  }
  placeEnds(space, problem, space.nodes);
}

const gapBetween = (path: ArrayLike<number>, i: number): number =>
  Math.hypot(path[2 * i]! - path[2 * i - 2]!, path[2 * i + 1]! - path[2 * i - 1]!);

/** Carries a shape from a coarser strip to a finer one by cubic interpolation (Catmull & Rom 1974) at the same place. */
export function refine(coarse: StripWorkspace, fine: StripWorkspace, problem: StripProblem): void {
  const last = coarse.count - 1;
  const held = problem.start.kind === 'free' ? 0 : 0.5;
  for (let k = 0; k < fine.count; k++) {
    const place = ((k - held) * fine.spacing) / coarse.spacing + held;
    const i = Math.min(last - 1, Math.max(0, Math.floor(place)));
    const u = place - i;
    for (let c = 0; c < 2; c++) {
      const b = at(coarse.nodes, i, c);
      const d = at(coarse.nodes, i + 1, c);
      const a = i > 0 ? at(coarse.nodes, i - 1, c) : 2 * b - d;
      const e = i + 1 < last ? at(coarse.nodes, i + 2, c) : 2 * d - b;
      fine.nodes[2 * k + c] = b + 0.5 * u * (d - a + u * (2 * a - 5 * b + 4 * d - e + u * (3 * (b - d) + e - a)));
    }
  }
  placeEnds(fine, problem, fine.nodes);
}

const at = (nodes: Float64Array, i: number, c: number): number => nodes[2 * i + c]!;
