import type { Job } from '../job/jobSchema.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { divided, type EvenPitch, placeOfHole } from './evenPitch.ts';
import { pieceCorner, seamCorner } from './pieceCorner.ts';
import type { Pieces } from './pieces.ts';
import { type PatternSource, turnAxis } from './seam.ts';
import type { SeamLayering } from './seamLayering.ts';

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

/** What a side of the outside is longer than its row along the seam line, mm: both margins, less what the corners round off. */
export function seamCornerWaste(job: Job, pieces: Pieces): number {
  const margin = job.seam.edgeMargin_mm;
  const { size } = seamCorner(pieceCorner(job, pieces).corner, margin);
  return 2 * (margin + size - cornerBend({ job, pieces }) / 2);
}

export function endRowSpan(source: PatternSource): EndRowSpan {
  const { job, pieces, needs } = source;
  const { width } = pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  if (pieces.pocket.count === 0) {
    const least = turnAxis(source) + Math.max(margin, needs.thick.foreEdge.turn / 2);
    const { pitch_mm: stride, iron } = job.seam;
    const room = width - 2 * least;
    // A row that ends at no corner holds whole strides, wherever they start.
    const length = iron === null || room < stride ? room : Math.floor(room / stride + TOLERANCE.ratio) * stride;
    return { origin: least + (room - length) / 2, length, straight: Number.NEGATIVE_INFINITY };
  }
  const { size } = seamCorner(pieceCorner(job, pieces).corner, margin);
  const origin = seamCornerWaste(job, pieces) / 2;
  return { origin, length: width - 2 * origin, straight: margin + size };
}

/**
 * The row at head and at tail, its pitch chosen clear of the pocket mouths unless these meet.
 * @returns null where turned ends leave no room for one pitch
 */
export function endRow(source: PatternSource, { meets, mouth, clear }: SeamLayering): EndRow | null {
  const { job, pieces } = source;
  const span = endRowSpan(source);
  const asked = job.seam.pitch_mm;
  if (pieces.pocket.count === 0 && span.length < asked) return null;
  const isOnRow = !meets && mouth > span.origin;
  // Both halves are alike. A lining does not count: it is cut to end between two holes.
  return { ...span, ...divided(job, span.length, isOnRow ? { at: mouth - span.origin, clear } : null) };
}

/** Whether a layer may end at x, front half: where the seam is straight, and `clear` pitches or more from every hole. */
export function isClearOf(row: EndRow, x: number, clear: number): boolean {
  const { origin, straight, pitch, intervals } = row;
  const about = Math.round((x - origin) / pitch);
  const nearest = Math.min(
    ...[about - 1, about, about + 1].map((k) => {
      const hole = placeOfHole(row, Math.min(intervals, Math.max(0, k)));
      return Math.abs(x - origin - hole);
    }),
  );
  return x >= straight && nearest / pitch >= clear - TOLERANCE.ratio;
}

/** The middle between two holes on the straight that is nearest to x. */
export function middleBetweenHoles(row: EndRow, x: number): number {
  const { origin, straight, pitch } = row;
  const first = Math.max(0, Math.ceil((straight - origin) / pitch - 0.5));
  return origin + placeOfHole(row, Math.max(first, Math.round((x - origin) / pitch - 0.5)) + 0.5);
}
