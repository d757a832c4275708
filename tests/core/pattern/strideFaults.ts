import fc from 'fast-check';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Iron } from '../../../src/core/job/ironSchema.ts';
import { distance } from '../../../src/core/math/vec2.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { strokesAlong } from '../../../src/core/pattern/strokes.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';

type Tool = Pick<Iron, 'kind'> & { readonly [Key in 'pitch_mm' | 'tooth_mm' | 'angle_deg']: number } & {
  readonly teeth: number[];
};

/** Millimetres and stitches per inch, stitching and lacing, slanted, flat and round. Sizes as sold are common practice, no source. */
export const SIX_IRONS: readonly Tool[] = [
  { kind: 'pricking iron', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 },
  { kind: 'pricking iron', pitch_mm: 3.85, teeth: [6, 2, 1], tooth_mm: 2.4, angle_deg: 40 },
  { kind: 'pricking iron', pitch_mm: 25.4 / 7, teeth: [8, 2], tooth_mm: 2.2, angle_deg: 45 },
  { kind: 'drive punch', pitch_mm: 5, teeth: [1], tooth_mm: 1.5, angle_deg: 0 },
  { kind: 'lacing chisel', pitch_mm: 25.4 / 5, teeth: [4, 1], tooth_mm: 2.4, angle_deg: 0 },
  { kind: 'lacing chisel', pitch_mm: 6, teeth: [3], tooth_mm: 3, angle_deg: 45 },
];

/** A job of any book with corners, sizes and ease as makers set them. */
export const ironJob = fc.record({
  document: jobDocument,
  corner: fc.constantFrom(0, 0, 6, 12),
  corners: fc.constantFrom('rounded' as const, 'clipped' as const),
  isEaseOpen: fc.boolean(),
  own: fc.option(fc.double({ min: 0, max: 3, noNaN: true }), { nil: null }),
});

type Drawn = typeof ironJob extends fc.Arbitrary<infer Value> ? Value : never;

/** The job with an iron, as the iron asks for stitching or lacing. */
export function jobWith({ document, corner, corners, isEaseOpen, own }: Drawn, iron: Tool) {
  const method = iron.kind === 'lacing chisel' ? 'lacing' : 'stitching';
  const written = {
    ...document,
    seam: { method, cornerRadius_mm: corner, iron },
    construction: { corners: corner === 0 ? null : corners },
    ease: isEaseOpen ? {} : document.ease,
  };
  if (own === null) return soundJob(written);
  const { outside } = coverDesign(soundJob(written)).pieces;
  return soundJob({ ...written, pattern: { outsideWidth_mm: outside.width + own } });
}

/** What is wrong with the holes of a job with an iron, from their places alone; and how many sides are on whole strides. */
export function strideFaults(job: ReturnType<typeof soundJob>) {
  const design = coverDesign(job);
  const seam = seamHoles(design);
  const { notes, pieces } = patternDrawing(design);
  const { width, height } = design.pieces.outside;
  const margin = job.seam.edgeMargin_mm;
  const stride = job.seam.pitch_mm;
  const faults: string[] = [];
  const loop = seam.rows.flatMap(({ holes }) => holes);
  const corners = loop.filter(({ isCorner }) => isCorner);
  const isSquare = job.construction.corners === null;
  if (seam.isClosed) {
    if (corners.length !== 4) faults.push(`${corners.length} corners have a hole`);
    for (const [x, y] of [
      [margin, margin],
      [width - margin, margin],
      [width - margin, height - margin],
      [margin, height - margin],
    ])
      if (isSquare && !loop.some(({ at }) => Math.hypot(at[0] - x!, at[1] - y!) < 1e-6))
        faults.push(`no hole in the corner ${x}, ${y}`);
  }
  let whole = 0;
  for (const [i, { side, holes }] of seam.rows.entries()) {
    const next = seam.isClosed ? seam.rows[(i + 1) % 4]!.holes[0]! : null;
    const all = next === null ? holes : [...holes, next];
    const along = side === 'tail' || side === 'head' ? 1 : 0;
    const lines = along === 1 ? [margin, height - margin] : [margin, width - margin];
    const isStraight = (k: number): boolean => lines.some((line) => Math.abs(all[k]!.at[along] - line) < 1e-9);
    const off = all.slice(1).flatMap((hole, k) => {
      const long = distance(hole.at, all[k]!.at);
      // Round a corner the seam line is longer than the chord.
      if (!isStraight(k) || !isStraight(k + 1)) return long > stride * 1.05 + 1e-6 ? [k] : [];
      return Math.abs(long - stride) > 1e-6 ? [k] : [];
    });
    if (off.length === 0) whole += 1;
    else {
      const title = { tail: 'Tail', backForeEdge: 'Back fore-edge', head: 'Head', frontForeEdge: 'Front fore-edge' }[
        side
      ];
      const named = notes.find((note) =>
        new RegExp(`${title}.*: the middle \\d+ of ${all.length - 1} strides`, 'i').test(note),
      );
      const count = Number(named?.match(/middle (\d+)/)?.[1] ?? 0);
      const first = (all.length - 1 - count) / 2;
      if (off.some((k) => k < first || k >= first + count))
        faults.push(`${side}: strides ${off.join(' ')} are not named`);
    }
  }
  // As near to the end of a layer as without an iron, or said.
  for (const { layer, x } of seam.steps) {
    const near = Math.min(...loop.map(({ at }) => Math.abs(at[0] - x)));
    if (near < 0.3 * stride - 1e-6 && !notes.some((note) => /comes too near|pockets meet/.test(note)))
      faults.push(`a hole ${near} mm from the end of the ${layer}`);
  }
  for (const row of seam.rows) {
    // Struck again tooth by tooth: no hole is left out, and none is where the iron's teeth are not a stride apart.
    const struck = new Set<number>();
    for (const { from, to, teeth, times, again } of strokesAlong(design, seam, row)) {
      const starts = Array.from(
        { length: times },
        (_, i) => from + i * Math.max(1, teeth - 1) - (i === times - 1 ? again : 0),
      );
      for (const start of starts)
        for (let tooth = 0; tooth < teeth; tooth++) {
          struck.add(start + tooth);
          if (start + tooth > to || start < from) faults.push(`a stroke goes past hole ${to}`);
          const uneven = row.uneven ?? { first: 0, count: 0 };
          if (tooth > 0 && start + tooth > uneven.first && start + tooth <= uneven.first + uneven.count)
            faults.push(`a stroke goes over an uneven stride at hole ${start + tooth}`);
        }
    }
    if (struck.size !== row.intervals + 1)
      faults.push(`${row.side}: ${struck.size} holes struck of ${row.intervals + 1}`);
  }
  const sums = pieces[0]!.sums.map(
    ({ total, parts }) => total - parts.reduce((sum, { each, times }) => sum + each * times, 0),
  );
  if (sums.some((left) => Math.abs(left) > 1e-6)) faults.push('a sum is not its parts');
  return { faults, whole, sides: seam.rows.length };
}
