import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { mouthInset } from './mouth.ts';
import { holeShape, type PatternSource, type SeamLayer, type SeamStep, turnAxis } from './seam.ts';

/** Least distance from a layer's end to a hole, as a share of the pitch. Assumption; the middle would be 0.5. */
const CLEAR = 0.3;

/** Leather kept between a slit's end and the end of a layer, mm. Assumption. */
export const SLIT_CLEAR = 0.5;

function clearShare(job: Job): number {
  const { size, slant } = holeShape(job);
  // A stitching hole is small beside its pitch.
  if (slant === null && job.seam.iron === null) return CLEAR;
  const reach = (size / 2) * Math.cos(slant ?? 0) + SLIT_CLEAR;
  return Math.min(0.45, Math.max(CLEAR, reach / job.seam.pitch_mm));
}

/** A layer beside the outside, as a stretch along head and tail; infinite where it goes on to the cut edge. */
interface LayerSpan {
  readonly layer: SeamLayer;
  readonly from: number;
  readonly to: number;
}

/** How the layers lie across the seam at head and tail, which are alike; x in the frame of the outside, mm. */
export interface SeamLayering {
  readonly spans: readonly LayerSpan[];
  /** Where the front pocket or turned end ends on the seam line; the back one mirrors it. */
  readonly mouth: number;
  /** Whether the two mouths overlap. */
  readonly meets: boolean;
  /** Least distance from a layer's end to a hole, as a share of the pitch. */
  readonly clear: number;
}

export function seamLayering(source: PatternSource): SeamLayering {
  const { job, pieces } = source;
  const { width } = pieces.outside;
  const isTurned = pieces.pocket.count === 0;
  const mouth = (isTurned ? 2 * turnAxis(source) : pieces.pocket.width) - mouthInset(job, pieces);
  const spans: LayerSpan[] = [
    { layer: isTurned ? 'frontTurnedEnd' : 'frontPocket', from: Number.NEGATIVE_INFINITY, to: mouth },
    { layer: isTurned ? 'backTurnedEnd' : 'backPocket', from: width - mouth, to: Number.POSITIVE_INFINITY },
  ];
  const lining = pieces.lining?.width ?? 0;
  const isFull = !isTurned && lining >= width;
  const half = isFull ? Number.POSITIVE_INFINITY : lining / 2;
  if (lining > 0) spans.push({ layer: 'lining', from: width / 2 - half, to: width / 2 + half });
  return { spans, mouth, meets: mouth > width / 2, clear: clearShare(job) };
}

/** Every end of a layer across the seam. */
export const layerSteps = ({ spans }: SeamLayering): SeamStep[] =>
  spans.flatMap(({ layer, from, to }) => [from, to].filter(Number.isFinite).map((x) => ({ layer, x })));

/** The layers that a hole at x goes through, and those whose end is too near for it, at a pitch in mm. */
export function layersAt({ spans, clear }: SeamLayering, x: number, pitch: number) {
  const depth = ({ from, to }: LayerSpan): number => Math.min(x - from, to - x);
  const isThrough = (span: LayerSpan): boolean => depth(span) >= clear * pitch - TOLERANCE.length;
  const named = (among: readonly LayerSpan[]): SeamLayer[] => among.map(({ layer }) => layer);
  return {
    through: ['outside' as const, ...named(spans.filter(isThrough))],
    tooNear: named(spans.filter((span) => depth(span) > 0 && !isThrough(span))),
  };
}
