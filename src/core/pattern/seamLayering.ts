import type { Job } from '../job/jobSchema.ts';
import type { LayerStep } from './evenPitch.ts';
import { mouthInset } from './mouth.ts';
import { type PatternSource, type SeamLayer, type SeamStep, slitAngle, turnAxis } from './seam.ts';

/** Least distance from a layer's end to a hole, as a share of the pitch. Assumption; the middle would be 0.5. */
const CLEAR = 0.3;

/** Leather kept between a slit's end and the end of a layer, mm. Assumption. */
export const SLIT_CLEAR = 0.5;

function clearShare(job: Job): number {
  if (job.seam.method === 'stitching') return CLEAR;
  const reach = (job.construction.slitWidth_mm / 2) * Math.cos(slitAngle(job)) + SLIT_CLEAR;
  return Math.min(0.45, Math.max(CLEAR, reach / job.seam.pitch_mm));
}

/** Layers other than the outside, as stretches along head and tail: the far end of each is a step. */
interface Span {
  readonly layer: SeamLayer;
  readonly from: number;
  readonly to: number;
}

function spans({ pieces, ...source }: PatternSource): { spans: Span[]; steps: SeamStep[] } {
  const { width } = pieces.outside;
  const isTurned = pieces.pocket.count === 0;
  const mouth = isTurned ? 2 * turnAxis({ pieces, ...source }) : pieces.pocket.width;
  const reach = mouth - mouthInset(source.job, pieces);
  const layers = isTurned ? (['frontTurnedEnd', 'backTurnedEnd'] as const) : (['frontPocket', 'backPocket'] as const);
  const all: Span[] = [
    { layer: layers[0], from: Number.NEGATIVE_INFINITY, to: reach },
    { layer: layers[1], from: width - reach, to: Number.POSITIVE_INFINITY },
  ];
  const lining = pieces.lining?.width ?? 0;
  const isFull = !isTurned && (source.job.construction.lining === 'full' || lining >= width);
  if (lining > 0)
    all.push({
      layer: 'lining',
      from: isFull ? Number.NEGATIVE_INFINITY : (width - lining) / 2,
      to: isFull ? Number.POSITIVE_INFINITY : (width + lining) / 2,
    });
  const steps = all.flatMap(({ layer, from, to }) => [from, to].filter(Number.isFinite).map((x) => ({ layer, x })));
  return { spans: all, steps };
}

/** Everything about head and tail rows that both kinds of seam share. */
export function seamLayering(source: PatternSource) {
  const { job, pieces } = source;
  const { spans: all, steps } = spans(source);
  const half = pieces.outside.width / 2;
  const pockets = steps.filter(({ layer }) => layer !== 'lining');
  const meets = pockets.some(({ layer, x }) => (layer.startsWith('front') ? x > half : x < half));
  const clear = clearShare(job);
  const left = new Set<string>();
  return {
    steps,
    meets,
    left,
    clear,
    /**
     * Mouths as distances along a side that starts at the front, where x is `origin` at 0. Both halves are alike. A
     * lining is no step: it is cut to end between two holes.
     */
    along: (origin: number): LayerStep[] =>
      meets ? [] : pockets.filter(({ x }) => x < half && x > origin).map(({ x }) => ({ at: x - origin, clear })),
    layersAt: (x: number, pitch: number): SeamLayer[] => [
      'outside',
      ...all
        .filter(({ layer, from, to }) => {
          const depth = Math.min(x - from, to - x);
          const isIn = depth >= clear * pitch - 1e-9;
          if (!isIn && depth > 0) left.add(layer);
          return isIn;
        })
        .map(({ layer }) => layer),
    ],
  };
}
