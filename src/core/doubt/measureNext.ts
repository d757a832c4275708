import type { NeedsOverRange } from '../allowance/needs.ts';
import { isRiseEstimated } from '../book/rise.ts';
import type { DoubtPath } from '../job/doubtSchema.ts';
import type { Job } from '../job/jobSchema.ts';
import { normalQuantile } from '../math/normal.ts';
import { type CoverDoubt, withStripReading } from './coverDoubt.ts';
import { DOUBTS, readingShare } from './doubtOf.ts';
import { sizedEase } from './sizedEase.ts';
import { type CutSize, type Doubted, spareOf, uncertainty } from './spare.ts';

/** A measurement that would make the fit surer. */
export interface NextMeasure {
  /** Where its result is typed. */
  readonly path: DoubtPath;
  readonly words: string;
  /** Cut size that it would save at the wished share, mm. */
  readonly saves: number;
  readonly of: 'width' | 'height';
  /** The doubt with it. */
  readonly doubt: CoverDoubt;
}

/** Standard uncertainty of K or of the bend ratio from a test fold of the leather. Assumption: 0.1 mm read over 3 mm. */
const BY_TEST_FOLD = 0.03;

/** Savings below this, mm, are not worth a measurement. */
const LEAST_SAVING = 0.05;

/** What a measurement leaves of an input's doubt. */
interface Candidate {
  readonly path: DoubtPath;
  /** The input that it bears on, where that is another. */
  readonly input?: DoubtPath;
  readonly u: number;
  readonly words: string;
}

/** Measurements that a maker can take; one that would not make its input surer is left out by what it saves. */
function candidates(job: Job, doubt: CoverDoubt): Candidate[] {
  const now = (path: DoubtPath): number => {
    const i = doubt.inputs.findIndex((each) => each.path === path);
    return i < 0 ? 0 : Math.sqrt(doubt.covariance[i]![i]!);
  };
  const again = (path: DoubtPath, words: string): Candidate => ({ path, u: now(path) / Math.SQRT2, words });
  const reading = DOUBTS.reading_mm * readingShare(job);
  return [
    { path: 'leather.outside.bendRatio', u: BY_TEST_FOLD, words: 'a hard fold of this leather, for its bend ratio' },
    { path: 'leather.pocket.bendRatio', u: BY_TEST_FOLD, words: 'a hard fold of the pocket leather' },
    { path: 'leather.outside.neutral', u: BY_TEST_FOLD, words: 'a test bend of this leather, for K' },
    { path: 'making.changeAcross', u: DOUBTS.changeKnown, words: 'a shrink test across' },
    { path: 'making.changeAlong', u: DOUBTS.changeKnown, words: 'a shrink test along' },
    { path: 'leather.outside', u: DOUBTS.leather_mm, words: 'callipers on this leather' },
    { path: 'leather.pocket', u: DOUBTS.leather_mm, words: 'callipers on the pocket leather' },
    { path: 'leather.lining', u: DOUBTS.leather_mm, words: 'callipers on the lining' },
    { path: 'book.boardThickness_mm', u: DOUBTS.callipers_mm, words: 'callipers on a board' },
    { path: 'book.thickness_mm', u: DOUBTS.callipers_mm, words: 'callipers over both boards' },
    {
      path: 'book.spine.rise_mm',
      u: isRiseEstimated(job.book) ? DOUBTS.rise_mm : now('book.spine.rise_mm') / Math.SQRT2,
      words: isRiseEstimated(job.book) ? 'the rise of the spine, measured' : 'the rise of the spine, measured again',
    },
    {
      path: 'book.measured.openFlatWidth_mm',
      input: 'book.jointDip_mm',
      u: reading / 2,
      words: 'the width of the book lying open',
    },
    again('book.width_mm', 'the width, measured again'),
    again('book.height_mm', 'the height, measured again'),
  ];
}

/** The doubt with one input known to u. */
function narrowed(doubt: CoverDoubt, path: DoubtPath, u: number): CoverDoubt | null {
  const at = doubt.inputs.findIndex((each) => each.path === path);
  const before = at < 0 ? 0 : Math.sqrt(doubt.covariance[at]![at]!);
  if (before <= u) return null;
  const factor = (i: number): number => (i === at ? u / before : 1);
  return { ...doubt, covariance: doubt.covariance.map((row, i) => row.map((c, k) => c * factor(i) * factor(k))) };
}

/**
 * Measurements that would save most, by what each leaves of the spread: saving = z (u - u') where one condition
 * decides, z the standard deviations of room at the wished share; of the width or of the height, whichever is more.
 */
export function measureNext(job: Job, doubt: CoverDoubt, cut: CutSize): readonly NextMeasure[] {
  const deviations = normalQuantile(job.ease.share);
  // A measurement changes neither means nor slopes.
  const { closed, flat, height } = spareOf(doubt, cut);
  /** Size that the wished share asks for beyond this cut, of each dimension by itself, mm. */
  const wanting = ({ covariance }: CoverDoubt): { width: number; height: number } => {
    const room = ({ mean, slopes }: Doubted): number => deviations * uncertainty(slopes, covariance) - mean;
    return { width: Math.max(room(closed), room(flat)), height: room(height) };
  };
  const now = wanting(doubt);
  const measured = (path: DoubtPath, words: string, then: CoverDoubt | null): NextMeasure[] => {
    if (then === null) return [];
    const left = wanting(then);
    const [width, height] = [now.width - left.width, now.height - left.height];
    const saves = Math.max(width, height);
    return saves < LEAST_SAVING ? [] : [{ path, words, saves, of: width >= height ? 'width' : 'height', doubt: then }];
  };
  const hasStrip = job.book.measured.closedWrap_mm !== null;
  return [
    ...candidates(job, doubt).flatMap(({ path, input = path, u, words }) =>
      measured(path, words, narrowed(doubt, input, u)),
    ),
    ...(hasStrip
      ? []
      : measured('book.measured.closedWrap_mm', 'a paper strip round the closed book', withStripReading(job, doubt))),
  ].sort((a, b) => b.saves - a.saves);
}

/**
 * Whether some size reaches the wished share once a measurement is taken.
 * @param pocketDepth of the cover as it is, mm
 */
export function wouldReach(job: Job, needs: NeedsOverRange, pocketDepth: number, { doubt }: NextMeasure): boolean {
  return sizedEase(job, needs, doubt, pocketDepth).reaches;
}
