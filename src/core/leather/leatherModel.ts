import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';

type LeatherPiece = Job['leather']['outside'];

/** Which end of the weight range is on the bench. */
export type RangePoint = 'thin' | 'nominal' | 'thick';

export const RANGE_POINTS: readonly RangePoint[] = ['thin', 'nominal', 'thick'];

/** How far skiving at a spine fold runs out beyond the fold on either side, mm. Common practice, no source. */
export const SKIVE_RUNOUT = 3;

/** One leather at one thickness of its range. */
export interface LeatherModel {
  /** t */
  readonly thickness: Mm;
  /** Thickness at the spine folds: t, or less where skived. */
  readonly foldThickness: Mm;
  /** K */
  readonly neutral: number;
  /** Depth of the neutral line at the folds, K t. */
  readonly neutralDepth: Mm;
  /** Mid-surface radius of the reverse curve at a seam: R = r + t/2 with r = bendRatio t. */
  readonly seatRadius: Mm;
  readonly bendRatio: number;
}

/** The leather at one point of its range: the thin end, the middle (mean of both ends), or the thick end. */
export function leatherModel(piece: LeatherPiece, point: RangePoint): LeatherModel {
  const { min_mm: min, max_mm: max } = piece;
  const thickness = point === 'nominal' ? (min + max) / 2 : point === 'thin' ? min : max;
  const foldThickness = Math.min(thickness, piece.foldThickness_mm ?? thickness);
  return {
    thickness: mm(thickness),
    foldThickness: mm(foldThickness),
    neutral: piece.neutral,
    neutralDepth: mm(piece.neutral * foldThickness),
    seatRadius: mm((piece.bendRatio + 0.5) * thickness),
    bendRatio: piece.bendRatio,
  };
}

/** All leathers of a cover at one point of their ranges. */
export interface CoverLeathers {
  readonly outside: LeatherModel;
  readonly pocket: LeatherModel;
  readonly lining: LeatherModel | null;
}

/** In a cover with turned ends the pockets are the outside, folded in; the pocket leather of the job is not used. */
export function coverLeathers(
  { leather, pockets }: Pick<Job, 'leather' | 'pockets'>,
  point: RangePoint,
): CoverLeathers {
  const { outside, pocket, lining } = leather;
  return {
    outside: leatherModel(outside, point),
    pocket: leatherModel(pockets.construction === 'turned' ? outside : pocket, point),
    lining: lining === null ? null : leatherModel(lining, point),
  };
}
