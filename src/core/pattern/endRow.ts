import { type EvenPitch, evenPitch } from './evenPitch.ts';
import { pieceCorner, seamCorner } from './pieceCorner.ts';
import { type PatternSource, turnAxis } from './seam.ts';
import { seamLayering } from './seamLayering.ts';

/** Where a row along head or tail, which are alike, runs: x in the frame of the outside, mm. */
export interface EndRowSpan {
  /** Its first hole; round a corner, where the seam line laid straight would start. */
  readonly origin: number;
  /** 0 or less where there is no room for it. */
  readonly length: number;
  /** Where the seam line has left the corner; before it, x is no measure along the seam. */
  readonly straight: number;
}

/** The row with the way it is divided. */
export interface EndRow extends EndRowSpan, EvenPitch {}

/** Length along the seam line round a corner of it: a quarter circle, or the cut. */
export const cornerBend = ({ job, pieces }: Pick<PatternSource, 'job' | 'pieces'>): number => {
  const { style, size } = seamCorner(pieceCorner(job, pieces).corner, job.seam.edgeMargin_mm);
  return (style === 'rounded' ? Math.PI / 2 : Math.SQRT2) * size;
};

export function endRowSpan(source: PatternSource): EndRowSpan {
  const { job, pieces, needs } = source;
  const { width } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  if (pieces.pocket.count === 0) {
    const origin = turnAxis(source) + Math.max(margin, needs.thick.foreEdge.turn / 2);
    return { origin, length: width - 2 * origin, straight: Number.NEGATIVE_INFINITY };
  }
  const { size } = seamCorner(pieceCorner(job, pieces).corner, margin);
  const origin = margin + size - cornerBend(source) / 2;
  return { origin, length: width - 2 * origin, straight: margin + size };
}

/** The row at head and at tail, its pitch chosen clear of the pocket mouths; null where there is no room for one pitch. */
export function endRow(source: PatternSource): EndRow | null {
  const span = endRowSpan(source);
  const { origin, length } = span;
  const { pitch_mm: asked } = source.job.seam;
  if (!(length > 0) || (source.pieces.pocket.count === 0 && length < asked)) return null;
  return { ...span, ...evenPitch(length, asked, seamLayering(source).along(origin)) };
}
