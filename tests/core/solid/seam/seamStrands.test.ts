import { describe, expect, test } from 'vitest';
import { coverDesign, madeDesign } from '../../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { LACE_STYLES } from '../../../../src/core/job/suppliesSchema.ts';
import { coverSupplies } from '../../../../src/core/materials/coverSupplies.ts';
import { laceNeed } from '../../../../src/core/materials/lace.ts';
import { seamLines } from '../../../../src/core/materials/seamLine.ts';
import { threadNeed } from '../../../../src/core/materials/thread.ts';
import { patternDrawing } from '../../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../../src/core/pattern/seamHoles.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import { freeEnds } from '../../../../src/core/solid/seam/freeEnds.ts';
import { seamCourse, strapCourse } from '../../../../src/core/solid/seam/seamCourse.ts';
import { seamStrands } from '../../../../src/core/solid/seam/seamStrands.ts';
import { strandMesh } from '../../../../src/core/solid/seam/strandMesh.ts';
import { printer } from '../../../../src/core/units/printer.ts';
import { stepDetail } from '../../../../src/output/benchSheet/stepDetail.ts';
import { defined } from '../../../defined.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { LAW_SEED } from '../../../laws.ts';
import { nth } from '../../../nth.ts';
import { SEAM_CASES, SEAM_POSES } from './seamCases.ts';
import { onGrain, passages, strandLength, timesThrough } from './seamReading.ts';

const choir = nth(EXAMPLE_JOBS, 1).document as Record<string, object>;
const laced = (style: string) => coverDesign(soundJob({ ...choir, seam: { method: 'lacing', style } }));

describe('every strand passes its holes on their axis to 0.1 mm, as often as the order of work says', () => {
  test.each(SEAM_CASES)('$name', ({ design: make }) => {
    const design = make();
    const { rows, starts, isClosed } = seamHoles(madeDesign(design));
    const holes = rows.flatMap((row) => row.holes);
    const ends = rows.flatMap((row) => [row.holes[0], row.holes.at(-1)]);
    const { seam, supplies } = design.job;
    const isLaced = seam.method === 'lacing';
    // Holes from 0 on count from the start; those are sewn twice at both ends of a thread.
    const from = holes.indexOf(nth(starts, 0));
    const say = printer(design.job.work.units);
    const source = { design, drawing: patternDrawing(design), supplies: coverSupplies(design) };
    const words = isLaced ? stepDetail('lace', source, say).words.join(' ') : '';
    const atCorners = /go twice more through each corner/.test(words) ? 3 : 1;
    expect(atCorners).toBe(isLaced && isClosed ? 3 : 1);
    for (const [i, pose] of SEAM_POSES.entries()) {
      if ((i + LAW_SEED) % 4 !== 0) continue;
      const cover = foldedCover(design, pose, 'nominal');
      const outside = defined(cover.parts.find(({ part }) => part === 'outside'));
      const strands = seamStrands(design, 'nominal', cover.seam);
      holes.forEach((hole, k) => {
        if (!hole.isCorner && (k + i) % 17 !== 0) return;
        const { at } = onGrain(outside, ...hole.at);
        const { out, stack } = nth(cover.seam, k);
        // Round a sharp fold the neighbouring stitch runs along this hole too, a pitch away.
        const through = passages(strands, at, out, stack).filter(({ off }) => off < 0.1);
        const after = (k - from + holes.length) % holes.length;
        const isSewnTwice = after <= supplies.backStitches || after >= holes.length - supplies.backStitches;
        // The two ends of an open row are half way through.
        if (!isClosed && ends.includes(hole)) return;
        if (isLaced) expect(timesThrough(through)).toBe(hole.isCorner ? atCorners : 1);
        else if (isClosed && !isSewnTwice) expect(timesThrough(through)).toBe(2);
      });
    }
  });
});

describe('a strand is as long as what is reckoned', () => {
  const lengthOf = (document: object): { laid: number; reckoned: number } => {
    const design = coverDesign(soundJob(document));
    const { seam } = foldedCover(design, { kind: 'sequence', at: 0.3 }, 'thick');
    const laid = strandLength(seamStrands(design, 'thick', seam));
    const { job } = design;
    const lines = seamLines(design);
    if (job.seam.method === 'lacing') {
      const { turns, corners } = defined(laceNeed(lines, job.seam.style as 'whip', job));
      return { laid, reckoned: turns + corners };
    }
    // One thread is drawn; each further one of the order brings back stitches of its own.
    const { stitches, backStitches, threads } = defined(threadNeed(lines, job.supplies));
    return { laid, reckoned: stitches + backStitches / threads };
  };

  // Thread stands 0.22 of its thickness over the leather: within 5 %.
  test('within 5 percent for stitching', () => {
    for (const { document } of EXAMPLE_JOBS) {
      const { laid, reckoned } = lengthOf({ ...document, seam: { method: 'stitching' } });
      expect(Math.abs(laid / reckoned - 1)).toBeLessThan(0.05);
    }
  });

  // Who buys by the reckoned length must not run out: it is on the long side, and by 7 % at most.
  const layouts = [
    {},
    { edgeMargin_mm: 3, pitch_mm: 3 },
    { edgeMargin_mm: 8, pitch_mm: 8 },
    { cornerRadius_mm: 20 },
  ] as const;
  test.each(LACE_STYLES)('and never longer for %s, by no more than 7 percent', (style) => {
    EXAMPLE_JOBS.forEach(({ document }, i) => {
      for (const layout of layouts.filter((_, k) => i === 0 || k === i)) {
        const { laid, reckoned } = lengthOf({ ...document, seam: { method: 'lacing', style, ...layout } });
        expect(laid / reckoned).toBeLessThanOrEqual(1);
        expect(laid / reckoned).toBeGreaterThan(0.93);
      }
    });
  });
});

describe('a seam in work', () => {
  test('grows with the share, from nothing to the whole', () => {
    const design = laced('double loop');
    const { seam } = foldedCover(design, { kind: 'sequence', at: 0.3 });
    const lengths = [0, 0.25, 0.5, 0.75, 1].map((share) => strandLength(seamStrands(design, 'nominal', seam, share)));
    expect(lengths[0]).toBeLessThan(5);
    for (const i of [1, 2, 3, 4]) expect(nth(lengths, i) / nth(lengths, 4)).toBeCloseTo(i / 4, 1);
    const course = seamCourse(design, 'nominal');
    const triangles = [0, 0.5, 1].map((share) => strandMesh(course, seam, 'fine', share).indices.length);
    expect(nth(triangles, 1) / nth(triangles, 2)).toBeCloseTo(0.5, 1);
  });

  test('has free ends with a needle each only while it is worked', () => {
    for (const [style, needles] of [
      ['whip', 1],
      [null, 2],
    ] as const) {
      const design = style ? laced(style) : coverDesign(soundJob(choir));
      const { seam } = foldedCover(design, { kind: 'sequence', at: 0.3 });
      const course = seamCourse(design, 'nominal');
      expect(freeEnds(course, seam, 0)).toBeNull();
      expect(freeEnds(course, seam, 1)).toBeNull();
      // Two rings of eight make a needle.
      expect(defined(freeEnds(course, seam, 0.4)).needles.positions.length).toBe(needles * 2 * 8 * 3);
    }
  });
});

describe('the triangles of a seam', () => {
  test.each(['saddle', 'running', 'whip', 'single loop', 'double loop', 'triple loop'])(
    'keep to 60,000 in the full look and 15,000 in the plain one: %s',
    (style) => {
      const method = style === 'saddle' ? 'stitching' : 'lacing';
      for (const { document } of EXAMPLE_JOBS) {
        const design = coverDesign(soundJob({ ...document, seam: { method, style } }));
        const { seam } = foldedCover(design, { kind: 'opening', angle: 0 });
        const course = seamCourse(design, 'nominal');
        expect(strandMesh(course, seam, 'fine').indices.length / 3).toBeLessThanOrEqual(60_000);
        const { positions, indices } = strandMesh(course, seam, 'coarse');
        expect(indices.length / 3).toBeLessThanOrEqual(15_000);
        expect(positions.every(Number.isFinite)).toBe(true);
      }
    },
  );
});

test.each(['stud', 'buckle'] as const)(
  'the course of a strap with a %s goes through each hole that it has in the outside',
  (fastening) => {
    const design = coverDesign(soundJob({ ...choir, construction: { strap: { width_mm: 25, fastening } } }));
    const course = defined(strapCourse(design, 'nominal'));
    const passed = new Set(
      course.strands.flatMap(({ row, knots }) =>
        knots.flatMap(({ pass }) => (pass === null ? [] : [nth(row.stations, pass).hole])),
      ),
    );
    const holesOf = (cover: typeof design): number =>
      defined(patternDrawing(cover).pieces.find(({ id }) => id === 'outside')).holes;
    expect(passed.size).toBe(holesOf(design) - holesOf(coverDesign(soundJob(choir))));
    expect(strapCourse(coverDesign(soundJob(choir)), 'nominal')).toBeNull();
  },
);
