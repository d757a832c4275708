import { type NeedsOverRange, needsOverRange } from '../allowance/needs.ts';
import { lyingBook } from '../book/lyingBook.ts';
import { type CoverDoubt, coverDoubt } from '../doubt/coverDoubt.ts';
import type { Job } from '../job/jobSchema.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { madePieces, type Pieces } from '../pattern/pieces.ts';
import { sizedPieces } from '../pattern/sizedPieces.ts';
import { coverFit, type Fit } from './coverFit.ts';
import { type FitDoubt, fitDoubt } from './fitDoubt.ts';

/** A job worked out: the pieces to cut, and what they meet at each point of the weight range. */
export interface CoverDesign {
  readonly job: Job;
  /** As they are cut. */
  readonly pieces: Pieces;
  /** Once the cover is made: the same, but where the leather changes its size. */
  readonly made: Pieces;
  readonly needs: NeedsOverRange;
  readonly doubt: CoverDoubt;
  readonly fits: Readonly<Record<RangePoint, Fit>>;
  /** Of the pieces as they are cut. */
  readonly fitDoubt: FitDoubt;
  /** The pieces that the tool would choose, were no ease and no size given; found when they are first asked for. */
  readonly bestPieces: () => Pieces;
}

/** Works a job out: needs at every range point, pieces sized for the thick end, fit of those pieces at each point. */
export function coverDesign(job: Job): CoverDesign {
  const needs = needsOverRange(job);
  const doubt = coverDoubt(job);
  const cut = sizedPieces(job, needs, doubt);
  const made = madePieces(job, cut);
  let best: Pieces | undefined;
  return {
    job,
    pieces: cut,
    made,
    needs,
    doubt,
    fits: {
      thin: coverFit(job, made, needs.thin),
      nominal: coverFit(job, made, needs.nominal),
      thick: coverFit(job, made, needs.thick),
    },
    fitDoubt: fitDoubt(job, needs.nominal, cut, doubt),
    bestPieces: () => (best ??= sizedPieces(withoutSizes(job), needs, doubt)),
  };
}

/** The job with every ease and size of the outside left to the tool. */
const withoutSizes = (job: Job): Job => ({
  ...job,
  ease: { ...job.ease, foreEdge_mm: null, head_mm: null, tail_mm: null },
  pattern: { ...job.pattern, outsideWidth_mm: null, outsideHeight_mm: null },
});

/** The design with its pieces as they are once the cover is made, for what folds or shows the cover. */
export function madeDesign(design: CoverDesign): CoverDesign {
  if (design.made === design.pieces) return design;
  const made = madeDesigns.get(design) ?? { ...design, pieces: design.made };
  madeDesigns.set(design, made);
  return made;
}

/** One for each design, so that what is remembered of it is found again. */
const madeDesigns = new WeakMap<CoverDesign, CoverDesign>();

/** The design with its book as it lies on a bench at an opening, radians, for what shows the cover lying there. */
export function lyingDesign(design: CoverDesign, point: RangePoint, opening: number): CoverDesign {
  const needs = design.needs[point];
  const book = lyingBook(needs.book, opening);
  return book === needs.book ? design : { ...design, needs: { ...design.needs, [point]: { ...needs, book } } };
}
