import fc from 'fast-check';
import { expect, test } from 'vitest';
import { largestHeadTail } from '../../../src/core/allowance/needs.ts';
import { CutChances, chanceOf, loosestOf, spareOf } from '../../../src/core/doubt/spare.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { cutStep } from '../../../src/core/job/workSchema.ts';
import { changeOf } from '../../../src/core/leather/changeOf.ts';
import { doubtedDocument } from '../../doubtJob.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

const tenths = (min: number, max: number) => fc.integer({ min: 10 * min, max: 10 * max }).map((draw) => draw / 10);

/** Jobs that leave ease open at one edge or at more, with gaps allowed that are near to what the doubt asks for. */
const openJob = fc
  .record({
    document: doubtedDocument,
    typed: fc.constantFrom(
      {},
      {},
      {},
      { foreEdge_mm: 1.5 },
      { head_mm: 1, tail_mm: 2 },
      { head_mm: 1.5 },
      { tail_mm: 0 },
    ),
    loosest: fc.option(fc.record({ foreEdge_mm: tenths(2, 5), head_mm: tenths(1, 4), tail_mm: tenths(1, 4) }), {
      nil: {},
      freq: 2,
    }),
    share: fc.constantFrom(0.95, 0.95, 0.6, 0.8, 0.99),
    work: fc.constantFrom({}, {}, { cutStep_mm: 1 }, { cutStep_mm: 0.2 }, { units: 'in' as const }),
  })
  .map(({ document, typed, loosest, share, work }) =>
    soundJob({ ...document, ease: { ...typed, share }, loosest, work }),
  );

const reportedChance = ({ fitDoubt }: CoverDesign): number => fitDoubt.chances.fits();

/** Standard uncertainties of room that are tried to either side of what may be. */
const BEYOND = 4;

/** The best chance of all cuts that leave the typed eases as they are, by trying every size of the cut step and every split of the height. */
function bestOfAll({ job, needs, doubt, pieces }: CoverDesign): number {
  const { share, foreEdge_mm: foreEdge, head_mm: head, tail_mm: tail } = job.ease;
  const { width: across, height: along } = changeOf(job);
  const step = cutStep(job);
  const ends = job.pockets.construction === 'turned' ? (2 * pieces.pocketDepth) / (1 + across) : 0;
  const none = spareOf(doubt, { width: 0, height: 0 });
  const sizes = (from: number, to: number): number[] => {
    const first = Math.ceil(from / step);
    return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, i) => (first + i) * step);
  };
  const widthNeeded = -Math.max(none.closed.mean, none.flat.mean) / (1 + across) + ends;
  const heightNeeded = -none.height.mean / (1 + along);
  const loose = Math.max(...Object.values(job.loosest)) * 2;
  const far = BEYOND * Math.max(none.closed.u, none.flat.u, none.height.u) + 3;
  const widths = foreEdge === null ? sizes(widthNeeded - far, widthNeeded + loose + far) : [pieces.outside.width];
  const bareHeight = needs.thick.book.height + 2 * (largestHeadTail(needs).needed + job.seam.edgeMargin_mm);
  const isHeightOpen = head === null || tail === null;
  const heights = isHeightOpen ? sizes(heightNeeded - far, heightNeeded + loose + far) : [pieces.outside.height];
  /** Halves of what the head has more than the tail. */
  const leansAt = (height: number): number[] => {
    if (head !== null && tail !== null) return [(head - tail) / 2];
    const eased = height * (1 + along) - bareHeight;
    // The open one takes nothing of what the typed one asks for.
    if (head !== null) return eased < head ? [] : [head - eased / 2];
    if (tail !== null) return eased < tail ? [] : [eased / 2 - tail];
    return Array.from({ length: 17 }, (_, i) => ((i - 8) * step) / 2);
  };
  let best = 0;
  for (const height of heights) {
    const { mean, u } = spareOf(doubt, { width: 0, height }).height;
    for (const lean of leansAt(height)) {
      const limits = loosestOf(job, lean);
      // The chance of all conditions is at most that of one.
      if (chanceOf({ mean, u }) < share || chanceOf({ mean: limits.height - mean, u }) < share) continue;
      for (const width of widths) {
        const spare = spareOf(doubt, { width: width - ends, height });
        const { closed } = spare;
        if (chanceOf(closed) < share || chanceOf({ ...closed, mean: limits.wrap - closed.mean }) < share) continue;
        best = Math.max(best, new CutChances(doubt, spare, limits).fits());
      }
    }
  }
  return best;
}

test('a cover sized by the tool reaches the share, as it is cut, where it says so and nowhere else', () => {
  const count = { turned: 0, separate: 0, unreached: 0 };
  checkLaw(
    fc.property(openJob, (job) => {
      const design = coverDesign(job);
      const { reaches } = design.pieces.ease;
      expect(reaches).toBe(reportedChance(design) >= job.ease.share);
      count[reaches ? job.pockets.construction : 'unreached']++;
    }),
    { cost: 0.5 },
  );
  for (const each of Object.values(count)) expect(each).toBeGreaterThan(50);
});

test('no ease of all reaches the share where it is said that none does', () => {
  let unreached = 0;
  checkLaw(
    fc.property(openJob, (job) => {
      const design = coverDesign(job);
      if (design.pieces.ease.reaches) return;
      unreached++;
      expect(bestOfAll(design)).toBeLessThan(job.ease.share);
    }),
  );
  expect(unreached).toBeGreaterThan(30);
});
