import { isRiseEstimated, USUAL_RISE_DOUBT } from '../book/rise.ts';
import type { DoubtPath, Origin } from '../job/doubtSchema.ts';
import type { Job } from '../job/jobSchema.ts';
import { usualChange } from '../leather/usualChange.ts';

/** How far an input may be off, and where it comes from. */
export interface Doubt {
  /** Standard uncertainty, in the unit of the input. */
  readonly u: number;
  /** `even`: uniform, within u sqrt 3 of the value. */
  readonly distribution: 'normal' | 'even';
  readonly from: Origin;
  /** The tool; lengths by one tool share the error of its scale. Empty for none. */
  readonly with: string;
}

/** The tool of every length typed, unless the job names another. */
const USUAL_RULER = 'ruler A';

/** Reading error of the ruler to which the defaults below belong, mm: 1 in 22 is further off. */
const USUAL_ERROR = 0.5;

/**
 * Default doubts. Assumptions of this project, no source, but for what is said beside them. Readings by ruler grow with
 * `book.measured.error_mm`, which is two standard uncertainties of one reading.
 */
export const DOUBTS = {
  /** One reading of a ruler or of a strip round the book. */
  reading_mm: 0.25,
  /** Thickness over the boards: the hand presses more or less. */
  thickness_mm: 0.3,
  callipers_mm: 0.1,
  /** Board thickness that is usual for the kind, as a share of it: 0.4 mm of 2.5. */
  usualBoard: 0.16,
  rise_mm: 0.5,
  /** Thickness of a leather or skived fold given as one figure. */
  leather_mm: 0.05,
  skived_mm: 0.1,
  neutral: 0.08,
  bendRatio: 0.1,
  /** Change of size by a test of this leather; untested: `usualChange`. */
  changeKnown: 0.002,
  /** Edge margin as punched, at one edge. */
  margin_mm: 0.2,
  /** One cut dimension. */
  cutting_mm: 0.3,
  /** Joint dip and page give, as a share of the value. */
  guessed: 0.5,
  /** Scale of a ruler or tape: 1 mm in 1 m. */
  scale: 0.001,
} as const;

/** The doubt of one input: what the job says of it, and the default for what it does not say. */
export function doubtOf(job: Job, path: DoubtPath): Doubt {
  const given = job.doubts[path];
  const usual = usualDoubt(job, path, given?.from);
  return {
    u: given?.u ?? usual.u,
    distribution: given?.distribution ?? usual.distribution ?? 'normal',
    from: given?.from ?? usual.from ?? 'assumed',
    with: given?.with ?? usual.with ?? '',
  };
}

/** Share of the usual reading error: 0 where the measures count as exact. */
export const readingShare = ({ book }: Job): number => book.measured.error_mm / USUAL_ERROR;

function usualDoubt(job: Job, path: DoubtPath, from: Origin | undefined): Pick<Doubt, 'u'> & Partial<Doubt> {
  const { book, leather, making } = job;
  const share = readingShare(job);
  const reading = { from: 'measured', with: USUAL_RULER } as const;
  switch (path) {
    case 'book.width_mm':
    case 'book.height_mm':
    case 'book.measured.closedWrap_mm':
    case 'book.measured.rolledHalf_mm':
    case 'book.measured.openFlatWidth_mm':
      return { u: DOUBTS.reading_mm * share, ...reading };
    case 'book.thickness_mm':
    case 'book.foreEdgeThickness_mm':
      return { u: DOUBTS.thickness_mm * share, ...reading };
    case 'book.boardThickness_mm':
      return from === 'usual'
        ? { u: DOUBTS.usualBoard * book.boardThickness_mm }
        : { u: DOUBTS.callipers_mm * Math.min(1, share), from: 'measured' };
    case 'book.spine.rise_mm':
      return isRiseEstimated(book)
        ? { u: USUAL_RISE_DOUBT * book.thickness_mm, from: 'assumed' }
        : { u: DOUBTS.rise_mm * share, from: 'measured' };
    case 'book.cornerRadius_mm':
      return { u: Math.min(DOUBTS.rise_mm * share, DOUBTS.guessed * book.cornerRadius_mm), from: 'measured' };
    case 'book.jointDip_mm':
      return { u: DOUBTS.guessed * book.jointDip_mm };
    case 'book.pageGive':
      return { u: DOUBTS.guessed * book.pageGive };
    case 'leather.outside':
    case 'leather.pocket':
    case 'leather.lining': {
      const piece = leather[path.slice('leather.'.length) as keyof Job['leather']];
      const width = piece === null ? 0 : piece.max_mm - piece.min_mm;
      return width > 0
        ? { u: width / Math.sqrt(12), distribution: 'even', from: 'usual' }
        : { u: DOUBTS.leather_mm, from: 'measured' };
    }
    case 'leather.outside.foldThickness_mm':
    case 'leather.lining.foldThickness_mm':
      return { u: DOUBTS.skived_mm, from: 'measured' };
    case 'leather.outside.neutral':
      return { u: DOUBTS.neutral };
    case 'leather.outside.bendRatio':
    case 'leather.pocket.bendRatio':
      return { u: DOUBTS.bendRatio };
    case 'making.changeAlong':
    case 'making.changeAcross': {
      const isTested = making[path.slice('making.'.length) as 'changeAlong' | 'changeAcross'] !== null;
      return isTested ? { u: DOUBTS.changeKnown, from: 'measured' } : { u: usualChange(making).u };
    }
    case 'seam.edgeMargin_mm':
      return { u: DOUBTS.margin_mm };
    case 'pattern.outsideWidth_mm':
    case 'pattern.outsideHeight_mm':
      return { u: DOUBTS.cutting_mm };
  }
}
