import type { Job } from '../job/jobSchema.ts';
import { type Mm, mm } from '../units/mm.ts';
import { holesIn, runLength, type SeamLine, seamLength } from './seamLine.ts';

/**
 * Thread that a saddle-stitched seam takes up: 2 L (1 + S/p).
 *
 * One thread carries a needle at each end. In every pitch p both halves run p along the seam, one on either face, and
 * both go once through the stack S. Derived; with S 3 and p 4 it is 3.5 times the seam.
 * @param length L, seam, mm
 * @param stack S, thickness sewn through, mm
 * @param pitch p, mm, over 0
 */
export const saddleStitchLength = (length: number, stack: number, pitch: number): Mm =>
  mm(2 * length * (1 + stack / pitch));

/** Thread for a cover, by parts that add up to the total. */
export interface ThreadNeed {
  readonly holes: number;
  readonly seam: Mm;
  /** Taken up by the stitches. */
  readonly stitches: Mm;
  /** Stitches sewn twice at both ends of every thread. */
  readonly backStitches: Mm;
  /** Left on the needles. */
  readonly tails: Mm;
  readonly total: Mm;
  /** Threads to cut, each no longer than can be worked, and the length of the longest. */
  readonly threads: number;
  readonly longest: Mm;
  /** Stitches over seam, to compare with the trade's rule of thumb. */
  readonly multiple: number;
}

/**
 * Thread for all seams, sewn with the thick end of the leather.
 *
 * A seam whose stitches take up A needs the least number n of threads with A <= n (working length - ends); the ends of
 * a thread are two tails and the back stitches at start and finish, 2 (p + S) each.
 * @returns null where the ends alone are longer than a thread in hand: no length of thread can be worked
 */
export function threadNeed(seams: readonly SeamLine[], supplies: Job['supplies']): ThreadNeed | null {
  const { threadTail_mm: tail, threadWorking_mm: working, backStitches: count } = supplies;
  const need = { holes: 0, stitches: 0, backStitches: 0, tails: 0, threads: 0, longest: 0 };
  for (const seam of seams) {
    const stitches = seam.runs.reduce((sum, run) => sum + saddleStitchLength(runLength(run), run.stack, run.pitch), 0);
    const stitch = Math.max(...seam.runs.map(({ pitch, stack }) => 2 * (pitch + stack)));
    const ends = 2 * tail + 2 * count * stitch;
    if (ends >= working) return null;
    const threads = Math.ceil(stitches / (working - ends));
    need.holes += holesIn(seam);
    need.stitches += stitches;
    need.backStitches += threads * 2 * count * stitch;
    need.tails += threads * 2 * tail;
    need.threads += threads;
    need.longest = Math.max(need.longest, stitches / threads + ends);
  }
  const seam = seamLength(seams);
  return {
    holes: need.holes,
    seam,
    stitches: mm(need.stitches),
    backStitches: mm(need.backStitches),
    tails: mm(need.tails),
    total: mm(need.stitches + need.backStitches + need.tails),
    threads: need.threads,
    longest: mm(need.longest),
    multiple: seam === 0 ? 0 : need.stitches / seam,
  };
}
