import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { cementArea } from '../../../src/core/materials/cement.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { type LaceStyle, laceNeed, lacePerPitch } from '../../../src/core/materials/lace.ts';
import { closureLines, holesIn, type SeamLine, seamLength, seamLines } from '../../../src/core/materials/seamLine.ts';
import { saddleStitchLength, threadNeed } from '../../../src/core/materials/thread.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';

const example = (id: string) => soundJob(defined(EXAMPLE_JOBS.find((entry) => entry.id === id)).document);
const tide = example('tide-ledger');

const PEN_LOOP = { pen_mm: mm(10), ease_mm: mm(1), width_mm: mm(35) };
const STRAP = {
  shape: 'strap',
  fastening: 'stud',
  width_mm: mm(30),
  anchor_mm: mm(40),
  reach_mm: mm(35),
  end_mm: mm(15),
} as const;

/** One open seam of one stack. */
const straight = (length: number, stack: number, pitch: number): SeamLine => ({
  closed: false,
  runs: [{ pitches: length / pitch, pitch: mm(pitch), layers: 2, stack: mm(stack) }],
});

describe('the seam line', () => {
  test('of separate pockets runs all round, one margin inside the cut edge', () => {
    const design = coverDesign(tide);
    const { outside } = design.pieces;
    const [seam, ...others] = seamLines(design);
    expect(others).toEqual([]);
    expect(seam!.closed).toBe(true);
    expect(seamLength([seam!])).toBeCloseTo(2 * (outside.width + outside.height - 4 * 6.35), 6);
    // Along head and tail the seam leaves one pocket, crosses the outside alone, and enters the other.
    const single = seam!.runs.filter(({ layers }) => layers === 1);
    expect(single.length).toBe(2);
    expect(single.every(({ stack }) => stack === 1.984375)).toBe(true);
    expect(seam!.runs.every(({ layers, stack }) => Math.abs(stack - layers * 1.984375) < 1e-9)).toBe(true);
  });

  test('goes through three layers where a lining is tucked under a pocket', () => {
    const layers = nth(seamLines(coverDesign(example('choir-book'))), 0).runs.map((run) => run.layers);
    expect(Math.max(...layers)).toBe(3);
  });

  test('of turned ends is a row at head and a row at tail', () => {
    const job = { ...tide, pockets: { ...tide.pockets, construction: 'turned' as const } };
    const seams = seamLines(coverDesign(job));
    expect(seams.map(({ closed }) => closed)).toEqual([false, false]);
    expect(seamLength(seams.slice(0, 1))).toBeCloseTo(seamLength(seams.slice(1)), 9);
  });

  test('goes through both ends of a pen loop at the holes that catch it', () => {
    const plain = coverDesign(tide);
    const looped = coverDesign({ ...tide, construction: { ...tide.construction, penLoop: PEN_LOOP } });
    const caught = defined(patternDrawing(looped).pieces.find(({ id }) => id === 'penLoop')).holes / 2;
    const thick = (design: typeof plain): number =>
      nth(seamLines(design), 0).runs.reduce((sum, { pitches, layers }) => sum + (layers === 4 ? pitches : 0), 0);
    expect(thick(plain)).toBe(0);
    expect(caught).toBeGreaterThan(2);
    expect(thick(looped)).toBe(caught);
  });

  test('of a closure strap goes from hole to hole', () => {
    const design = coverDesign({ ...tide, construction: { ...tide.construction, strap: STRAP } });
    const strap = defined(patternDrawing(design).pieces.find(({ id }) => id === 'strap'));
    const lines = closureLines(design);
    const line = nth(lines, 0);
    expect(lines).toHaveLength(1);
    expect(holesIn(line)).toBe(strap.holes);
    expect(line.runs.every(({ layers, stack }) => layers === 2 && stack === 2 * 1.984375)).toBe(true);
    // Both rows, margin to margin across the strap, and the way from row to row along it, by hand.
    expect(seamLength([line])).toBeCloseTo(2 * (30 - 2 * 6.35) + 40 - 3 * 6.35, 9);
    expect(closureLines(coverDesign(tide))).toEqual([]);
  });

  test('of the tab of a buckle goes through both its ends and the outside', () => {
    const strap = { ...STRAP, fastening: 'buckle' } as const;
    const design = coverDesign({ ...tide, construction: { ...tide.construction, strap } });
    const tab = defined(patternDrawing(design).pieces.find(({ id }) => id === 'buckleTab'));
    const line = nth(closureLines(design), 1);
    // The piece has one hole more, the slot.
    expect(2 * holesIn(line)).toBe(tab.holes - 1);
    expect(line.runs.every(({ layers, stack }) => layers === 3 && stack === 3 * 1.984375)).toBe(true);
    // Two rows, margin to margin across the tab, a margin apart, by hand.
    expect(seamLength([line])).toBeCloseTo(2 * (30 - 2 * 6.35) + 6.35, 9);
    const sewn = (fastening: 'buckle' | 'stud'): number =>
      coverSupplies(coverDesign({ ...tide, construction: { ...tide.construction, strap: { ...STRAP, fastening } } }))
        .strap;
    expect(sewn('buckle')).toBeGreaterThan(sewn('stud') + 2 * seamLength([line]));
  });

  test('has the holes of the pattern and layers of some thickness', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const design = coverDesign(soundJob(document));
        const seams = seamLines(design);
        expect(seams.reduce((sum, seam) => sum + holesIn(seam), 0)).toBe(patternDrawing(design).holes);
        expect(seams.every(({ runs }) => runs.every((run) => run.layers >= 1 && run.stack > 0))).toBe(true);
      }),
    );
  });
});

describe('saddle-stitch thread', () => {
  test('is 3.5 times the seam through a stack of 3 at a pitch of 4', () => {
    // Derived row: seam * 2 (1 + S/p).
    expect(saddleStitchLength(1, 3, 4)).toBe(3.5);
  });

  test('agrees with a walk of both needles, hole by hole', () => {
    const [pitch, stack, holes] = [3.38, 2.6, 41];
    let walked = 0;
    for (let hole = 1; hole < holes; hole++) for (const _needle of ['left', 'right']) walked += pitch + stack;
    expect(saddleStitchLength(pitch * (holes - 1), stack, pitch)).toBeCloseTo(walked, 9);
  });

  test('is cut in threads that can be worked, and its parts add up', () => {
    const need = defined(threadNeed([straight(760, 3, 4)], tide.supplies));
    expect(need.holes).toBe(191);
    expect(need.stitches).toBeCloseTo(3.5 * 760, 9);
    // Ends of a thread: 2 x 200 mm, and two stitches at each end at 2 (4 + 3) mm.
    expect(need.threads).toBe(Math.ceil(2660 / (1800 - 400 - 56)));
    expect(need.total).toBeCloseTo(2660 + need.threads * 456, 9);
    expect(need.longest).toBeLessThanOrEqual(1800);
    expect(need.multiple).toBeCloseTo(3.5, 9);
  });

  test('cannot be worked where the ends use up the thread in hand', () => {
    expect(threadNeed([straight(760, 3, 4)], { ...tide.supplies, threadWorking_mm: mm(400) })).toBeNull();
  });
});

describe('lace', () => {
  const section = { stack: 4, margin: 6, pitch: 5, lace: 1 };
  const styles: readonly LaceStyle[] = ['running', 'whip', 'single loop', 'double loop', 'triple loop'];

  test('follows the course of each turn', () => {
    // S' = 5, m' = 6.5, by hand.
    expect(lacePerPitch('running', section)).toBeCloseTo(10, 12);
    expect(lacePerPitch('whip', section)).toBeCloseTo(5 + Math.hypot(18, 5), 12);
    // Back 0.6 x 5 over 0.77 x 5 of the edge, forward 1.6 x 5 over the rest.
    expect(lacePerPitch('single loop', section)).toBeCloseTo(18 + Math.hypot(3, 3.85) + Math.hypot(8, 1.15), 12);
    // Three ways across the edge: two over other laces, 7 across, one under them, 5.
    expect(lacePerPitch('double loop', section)).toBeCloseTo(18 + Math.hypot(5, 7) + 5 + Math.hypot(10, 7), 12);
    expect(lacePerPitch('triple loop', section)).toBeCloseTo(18 + Math.hypot(10, 7) + 5 + Math.hypot(15, 7), 12);
  });

  test('whip agrees with a helix walked in small steps round the edge', () => {
    const { stack, margin, pitch, lace } = section;
    const [through, shown] = [stack + lace, 2 * (margin + lace / 2) + stack + lace];
    const steps = 1000;
    let walked = through;
    for (let i = 0; i < steps; i++) walked += Math.hypot(shown / steps, pitch / steps);
    expect(lacePerPitch('whip', section)).toBeCloseTo(walked, 9);
  });

  test('grows with stack, margin and lace, and with the order of the loop', () => {
    for (const style of styles) {
      const base = lacePerPitch(style, section);
      expect(lacePerPitch(style, { ...section, stack: 5 })).toBeGreaterThan(base);
      expect(lacePerPitch(style, { ...section, lace: 1.2 })).toBeGreaterThan(base);
      if (style !== 'running') expect(lacePerPitch(style, { ...section, margin: 7 })).toBeGreaterThan(base);
    }
    const lengths = styles.map((style) => lacePerPitch(style, section));
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b));
  });

  // Usual inputs: two layers of 4-5 oz, lace 0.8 mm thick. The ranges are common practice, no source; their upper ends for
  // running 1.5, whip 3.5, single 6.5 and double loop 8.5 also at leathercircle.com/lace-leather, triple loop "approximately
  // nine times", which "depends on the distance between the holes, and the edge of the article and the holes", at
  // kingsmerecrafts.info/page97.html.
  const usual = { stack: 2 * 1.786, margin: 6.35, pitch: 4.7625, lace: 0.8 };
  // A line scribed 1/8 in from the edge, a chisel of 1/8 in, its slits 1/8 in apart, so 1/4 in from middle to middle.
  // Source: kingsmerecrafts.info/page99.html.
  const narrow = { ...usual, margin: 3.175, pitch: 6.35 };
  test.each([
    ['running', usual, 1.5, 2],
    ['single loop', usual, 5, 6.5],
    ['whip', narrow, 2.5, 3.5],
  ] as const)('%s falls in the range of the trade for usual inputs', (style, at, low, high) => {
    const multiple = lacePerPitch(style, at) / at.pitch;
    expect(multiple).toBeGreaterThanOrEqual(low);
    expect(multiple).toBeLessThanOrEqual(high);
  });

  // The multiples of double and triple loop do not say for which layout they are: it lies between these two.
  test.each([
    ['double loop', 7, 8.5],
    ['triple loop', 9, 10],
  ] as const)('%s takes the whole range of the trade from a narrow layout to a wide one', (style, low, high) => {
    expect(lacePerPitch(style, narrow) / narrow.pitch).toBeLessThan(low);
    expect(lacePerPitch(style, usual) / usual.pitch).toBeGreaterThan(high);
    // No more than 3 % over it, so that the wide layout is still one of the trade's.
    expect(lacePerPitch(style, usual) / usual.pitch).toBeLessThan(1.03 * high);
  });

  test('the trade cannot mean whip at the margin of loop lacing: even a lace of no thickness is longer', () => {
    // Once through the stack, and the straight way over the edge to the next slit: nothing shorter goes through every
    // slit and round the edge. So 4.8 times the seam at 1/4 in and 3/16 in is not an error of the model.
    const { stack, margin, pitch } = usual;
    const shortest = (stack + Math.hypot(2 * margin + stack, pitch)) / pitch;
    expect(shortest).toBeGreaterThan(3.5);
    expect(lacePerPitch('whip', { ...usual, lace: 0 }) / pitch).toBeCloseTo(shortest, 12);
    expect(lacePerPitch('whip', usual) / pitch / shortest).toBeLessThan(1.15);
  });

  test('says where the geometry leaves the range of the trade: whip at the margin of loop lacing', () => {
    const whip = defined(laceNeed(seamLines(coverDesign(tide)), 'whip', tide));
    expect(whip.trade).toEqual({ low: 2.5, high: 3.5 });
    expect(whip.withinTrade).toBe(false);
    const wide = { ...tide, supplies: { ...tide.supplies, laceMultiples: { ...tide.supplies.laceMultiples } } };
    wide.supplies.laceMultiples.whip = { low: 2.5, high: 6 };
    expect(defined(laceNeed(seamLines(coverDesign(wide)), 'whip', wide)).withinTrade).toBe(true);
  });

  test('is cut in laces that can be worked, and its parts add up', () => {
    checkLaw(
      fc.property(jobDocument, fc.constantFrom(...styles), (document, style) => {
        const job = soundJob(document);
        const seams = seamLines(coverDesign(job));
        const need = defined(laceNeed(seams, style, job));
        expect(need.turns + need.corners + need.tails + need.splices).toBeCloseTo(need.total, 6);
        expect(need.each).toBeLessThanOrEqual(job.supplies.laceWorking_mm + 1e-6);
        expect(need.slits).toBe(seams.reduce((sum, seam) => sum + holesIn(seam), 0));
        const bare = need.total - (need.laces - 1) * job.supplies.spliceOverlap_mm;
        if (need.laces > 1) {
          const fewer = need.laces - 1;
          expect(bare + (fewer - 1) * job.supplies.spliceOverlap_mm).toBeGreaterThan(
            fewer * job.supplies.laceWorking_mm,
          );
        }
      }),
    );
  });
});

test('contact cement coats both faces of every joint in a band', () => {
  expect(cementArea([straight(100, 3, 4)], 3)).toBe(600);
  const runs = [{ pitches: 25, pitch: mm(4), layers: 1, stack: mm(2) }];
  expect(cementArea([{ closed: false, runs }], 3)).toBe(0);
});
