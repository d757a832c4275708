import { HALF_BANDWIDTH, ROW_STRIDE } from './bandedLdl.ts';
import type { StripEnd, StripProblem } from './stripProblem.ts';
import type { StripWorkspace } from './stripWorkspace.ts';

const isHeld = (end: StripEnd): boolean => end.kind !== 'free';

/** Rest length of an edge: a clamp plane lies in the middle of the first or last edge, a free end at its node. */
function edgeLength(problem: StripProblem, segments: number): number {
  return problem.length / (segments + 1 - (isHeld(problem.start) ? 0.5 : 0) - (isHeld(problem.end) ? 0.5 : 0));
}

/** Arc length from the start of the strip to its first node: minus half an edge if the start is held. */
const firstNodePlace = (problem: StripProblem, spacing: number): number => (isHeld(problem.start) ? -0.5 * spacing : 0);

/** Writes edge length, loads, rest turns and held coordinates of a problem into the workspace. */
export function loadProblem(space: StripWorkspace, problem: StripProblem): void {
  const { count, load, restTurn, held } = space;
  const h = edgeLength(problem, space.segments);
  space.spacing = h;
  load.fill(0);
  held.fill(0);
  restTurn.fill(0);
  const origin = firstNodePlace(problem, h);
  for (const { at, fx, fy } of problem.loads ?? []) {
    const place = (at * problem.length - origin) / h;
    const k = Math.min(count - 2, Math.max(0, Math.floor(place)));
    const share = Math.min(1, Math.max(0, place - k));
    load[2 * k] = load[2 * k]! + (1 - share) * fx;
    load[2 * k + 1] = load[2 * k + 1]! + (1 - share) * fy;
    load[2 * k + 2] = load[2 * k + 2]! + share * fx;
    load[2 * k + 3] = load[2 * k + 3]! + share * fy;
  }
  const rest = problem.restAngle;
  if (rest) {
    for (let k = 1; k < count - 1; k++) {
      const s = origin + k * h;
      restTurn[k] = angleAt(rest, (s + 0.5 * h) / problem.length) - angleAt(rest, (s - 0.5 * h) / problem.length);
    }
  }
  for (let side = 0; side < 2; side++) {
    const end = side === 0 ? problem.start : problem.end;
    if (end.kind === 'free') continue;
    for (let k = 0; k < 2; k++) {
      const node = side === 0 ? k : count - 2 + k;
      held[2 * node] = end.kind === 'clamp' ? 1 : 0;
      held[2 * node + 1] = 1;
    }
    if (end.kind === 'slide' && end.force) {
      const node = side === 0 ? 0 : count - 1;
      load[2 * node] = load[2 * node]! + end.force * Math.cos(end.angle);
      load[2 * node + 1] = load[2 * node + 1]! + end.force * Math.sin(end.angle);
    }
  }
}

function angleAt(angles: ArrayLike<number>, share: number): number {
  const place = Math.min(1, Math.max(0, share)) * (angles.length - 1);
  const k = Math.min(angles.length - 2, Math.floor(place));
  return angles[k]! + (place - k) * (angles[k + 1]! - angles[k]!);
}

/** Moves the end nodes onto their clamps (half an edge before and after the plane) or onto their slide lines. */
export function placeEnds(space: StripWorkspace, problem: StripProblem, nodes: Float64Array): void {
  for (let side = 0; side < 2; side++) {
    const end = side === 0 ? problem.start : problem.end;
    if (end.kind === 'free') continue;
    const c = Math.cos(end.angle);
    const s = Math.sin(end.angle);
    for (let k = 0; k < 2; k++) {
      const b = 2 * (side === 0 ? k : space.count - 2 + k);
      const along =
        end.kind === 'clamp' ? (k - 0.5) * space.spacing : (nodes[b]! - end.x) * c + (nodes[b + 1]! - end.y) * s;
      nodes[b] = end.x + along * c - space.endSag[side]! * s;
      nodes[b + 1] = end.y + along * s + space.endSag[side]! * c;
    }
  }
}

/** Turns the rows of sliding nodes to their line, then clears held rows and columns to the identity. */
export function holdEnds(space: StripWorkspace, problem: StripProblem): void {
  const { count, gradient, band, held } = space;
  for (let k = 0; k < 2; k++) {
    if (problem.start.kind === 'slide') turnNode(gradient, band, k, count, problem.start.angle);
    if (problem.end.kind === 'slide') turnNode(gradient, band, count - 2 + k, count, problem.end.angle);
  }
  const size = 2 * count;
  for (let i = 0; i < size; i++) {
    if (!held[i]) continue;
    gradient[i] = 0;
    for (let j = Math.max(0, i - HALF_BANDWIDTH); j < Math.min(size, i + HALF_BANDWIDTH + 1); j++) {
      band[place(i, j)] = i === j ? 1 : 0;
    }
  }
}

/** Turns the step of sliding nodes back into x and y. */
export function releaseStep(space: StripWorkspace, problem: StripProblem): void {
  const last = space.count - 2;
  for (let k = 0; k < 2; k++) {
    if (problem.start.kind === 'slide') turnBack(space.step, k, problem.start.angle);
    if (problem.end.kind === 'slide') turnBack(space.step, last + k, problem.end.angle);
  }
}

function turnBack(step: Float64Array, node: number, angle: number): void {
  const along = step[2 * node]!;
  const across = step[2 * node + 1]!;
  step[2 * node] = along * Math.cos(angle) - across * Math.sin(angle);
  step[2 * node + 1] = along * Math.sin(angle) + across * Math.cos(angle);
}

const place = (i: number, j: number): number =>
  i >= j ? i * ROW_STRIDE + HALF_BANDWIDTH + j - i : j * ROW_STRIDE + HALF_BANDWIDTH + i - j;

/** Turns the first of one node's two rows and columns into that along a line; the second, across it, is held and not needed. */
function turnNode(gradient: Float64Array, band: Float64Array, node: number, count: number, angle: number): void {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const r = 2 * node;
  gradient[r] = c * gradient[r]! + s * gradient[r + 1]!;
  for (let j = Math.max(0, r - 4); j < Math.min(2 * count, r + 6); j++) {
    if (j === r || j === r + 1) continue;
    band[place(r, j)] = c * band[place(r, j)]! + s * band[place(r + 1, j)]!;
  }
  const xx = place(r, r);
  band[xx] = c * c * band[xx]! + 2 * c * s * band[place(r + 1, r)]! + s * s * band[place(r + 1, r + 1)]!;
}
