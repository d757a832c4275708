import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';

/** How far the pitch of one side may stand off the one asked for, as a share of it. */
export const PITCH_TOLERANCE = 0.05;

/** Strides of an iron that are longer or shorter than the others. */
interface Uneven {
  /** Whole strides before them, and after them. */
  readonly first: number;
  readonly count: number;
  /** mm */
  readonly pitch: number;
}

/** A side divided into pitches, all alike but where an iron's strides do not fill it. */
export interface EvenPitch {
  readonly intervals: number;
  /** mm */
  readonly pitch: number;
  /** Pitch over the one asked for, less 1; beyond `PITCH_TOLERANCE` only where the side is too short. */
  readonly off: number;
  /** In the middle of the side; left out where all are alike. */
  readonly uneven?: Uneven;
}

/** How far hole k of a side is from its first, mm; the middle between two for half a number. */
export function placeOfHole({ pitch, uneven }: Pick<EvenPitch, 'pitch' | 'uneven'>, k: number): number {
  if (uneven === undefined) return k * pitch;
  const { first, count } = uneven;
  const longer = Math.min(count, Math.max(0, k - first)) * (uneven.pitch - pitch);
  return k * pitch + longer;
}

/** A place along a side where a layer ends, so that a hole must not come near it. */
export interface LayerStep {
  /** mm from the start of the side. */
  readonly at: number;
  /** Least distance to a hole, as a share of the pitch, 0 to 0.5. */
  readonly clear: number;
}

/**
 * Divides a side into a whole number of intervals: of the numbers that keep the pitch within `PITCH_TOLERANCE`, the one
 * whose holes keep clear of the layer step, or else come least near to it; of several, the one whose pitch is nearest to p.
 *
 * A side under about ten pitches may have no number within the tolerance: it then takes the nearest, at least one.
 * @param length L, mm, over 0
 * @param asked p, mm, over 0
 * @param step where a layer ends; null for none
 */
export function evenPitch(length: number, asked: number, step: LayerStep | null = null): EvenPitch {
  const off = (intervals: number): number => Math.abs(length / intervals - asked);
  const below = Math.max(1, Math.floor(length / asked));
  const nearest = off(below + 1) < off(below) ? below + 1 : below;
  const fewest = Math.max(1, Math.ceil(length / (asked * (1 + PITCH_TOLERANCE)) - TOLERANCE.ratio));
  const most = Math.floor(length / (asked * (1 - PITCH_TOLERANCE)) + TOLERANCE.ratio);
  const candidates = Array.from({ length: Math.max(0, most - fewest + 1) }, (_, i) => fewest + i).sort(
    (a, b) => off(a) - off(b),
  );
  /** By how much of a pitch the nearest hole is too near to the step. */
  const wanting = (intervals: number): number => {
    if (step === null) return 0;
    const place = (step.at / length) * intervals;
    return Math.max(0, step.clear - Math.abs(place - Math.round(place)));
  };
  const intervals = candidates.reduce(
    (best, n) => (wanting(best) - wanting(n) > TOLERANCE.ratio ? n : best),
    candidates[0] ?? nearest,
  );
  const pitch = length / intervals;
  return { intervals, pitch, off: pitch / asked - 1 };
}

/**
 * Divides a side into strides of an iron, to the nearest whole number. What is left over is shared by the fewest strides
 * that stay within `PITCH_TOLERANCE` by it, in the middle of the side, so that head and tail match through all layers
 * and every other hole is at whole strides from its corner.
 * @param length L, mm, over 0
 * @param stride p, mm, over 0
 */
export function wholeStrides(length: number, stride: number): EvenPitch {
  const intervals = Math.max(1, Math.round(length / stride));
  const left = length - intervals * stride;
  const even = { intervals, pitch: stride, off: 0 };
  if (Math.abs(left) <= TOLERANCE.length * intervals) return even;
  const fewest = Math.ceil(Math.abs(left) / (PITCH_TOLERANCE * stride) - TOLERANCE.ratio);
  // As odd or even as the whole, to lie in its middle.
  const count = Math.min(intervals, fewest + ((intervals - fewest) % 2 === 0 ? 0 : 1));
  return { ...even, uneven: { first: (intervals - count) / 2, count, pitch: stride + left / count } };
}

/** A side of a job's seam divided: by the strides of its iron, else evenly. */
export const divided = ({ seam }: Pick<Job, 'seam'>, length: number, step: LayerStep | null = null): EvenPitch =>
  seam.iron === null ? evenPitch(length, seam.pitch_mm, step) : wholeStrides(length, seam.pitch_mm);
