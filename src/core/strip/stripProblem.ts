import type { Obstacle } from './obstacle.ts';

/** Strip units: lengths in D, forces in EI/D^2, moments and energy in EI/D, angles in radians. */
export type StripEnd = FreeEnd | ClampEnd | SlideEnd;

/** Nothing holds this end; a load may still pull it. */
export interface FreeEnd {
  readonly kind: 'free';
}

/** The end is held at a point, pointing along `angle` (the way the strip runs, start to end, at both ends). */
export interface ClampEnd {
  readonly kind: 'clamp';
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** The end keeps to the line through (x, y) and points along it, but may slide. */
export interface SlideEnd {
  readonly kind: 'slide';
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  /** Dead load along `angle`; 0 if left out. A positive one pulls the far end taut and pushes the near one in. */
  readonly force?: number;
  /** Least and most slide past (x, y) along `angle`; unlimited if left out. */
  readonly min?: number;
  readonly max?: number;
}

/** A dead load on the strip, `at` a fraction (0 to 1) of its length. */
export interface StripLoad {
  readonly at: number;
  readonly fx: number;
  readonly fy: number;
}

/** A straight floor through (x, y) that runs on along `angle`; the strip keeps to its left. */
export interface Floor {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** A planar elastic strip, at rest `length` long, with the obstacle on its left as it runs from start to end. */
export interface StripProblem {
  /** More than 0. */
  readonly length: number;
  /** EA D^2/EI, more than 0; a solid strip of thickness t has 12 (D/t)^2. */
  readonly stretchStiffness: number;
  readonly start: StripEnd;
  readonly end: StripEnd;
  readonly loads?: readonly StripLoad[];
  /** Tangent angle of the unstressed strip at evenly spaced places from start to end, at least two; straight if left out. */
  readonly restAngle?: ArrayLike<number>;
  readonly obstacle?: Obstacle;
  /** On the other side of the strip than the obstacle. */
  readonly floor?: Floor;
}

/** Says what is wrong with a problem, as place, what was got and what is allowed; null when nothing is. */
export function faultIn(problem: StripProblem, segments: number): string | null {
  if (!Number.isInteger(segments) || segments < 4) return `segments: got ${segments}, allowed a whole number from 4`;
  if (!(problem.length > 0 && Number.isFinite(problem.length))) return `length: got ${problem.length}, allowed above 0`;
  if (!(problem.stretchStiffness > 0 && Number.isFinite(problem.stretchStiffness))) {
    return `stretchStiffness: got ${problem.stretchStiffness}, allowed above 0`;
  }
  for (const [name, end] of [
    ['start', problem.start],
    ['end', problem.end],
  ] as const) {
    if (end.kind === 'free') continue;
    if (![end.x, end.y, end.angle].every(Number.isFinite)) return `${name}: place and angle must be finite numbers`;
    if (end.kind !== 'slide') continue;
    if (!Number.isFinite(end.force ?? 0)) return `${name}.force: got ${end.force}, allowed a finite number`;
    if (!((end.min ?? -Infinity) <= (end.max ?? Infinity))) {
      return `${name}: min ${end.min} is not at most max ${end.max}`;
    }
  }
  for (const load of problem.loads ?? []) {
    if (!(load.at >= 0 && load.at <= 1)) return `loads.at: got ${load.at}, allowed 0 to 1`;
    if (!Number.isFinite(load.fx) || !Number.isFinite(load.fy)) return 'loads: forces must be finite numbers';
  }
  const rest = problem.restAngle;
  if (rest && (rest.length < 2 || !Array.from(rest).every(Number.isFinite))) {
    return 'restAngle: at least two finite angles are needed';
  }
  const { floor, obstacle } = problem;
  if (floor && ![floor.x, floor.y, floor.angle].every(Number.isFinite)) return 'floor: place and angle must be finite';
  if (obstacle && obstacle.x.length < 2) return 'obstacle: at least two points apart are needed';
  if (obstacle && !(obstacle.x.every(Number.isFinite) && obstacle.y.every(Number.isFinite))) {
    return 'obstacle: every coordinate must be a finite number';
  }
  return null;
}
