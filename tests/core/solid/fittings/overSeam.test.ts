import { describe, expect, test } from 'vitest';
import choirBook from '../../../../public/jobs/choir-book.json' with { type: 'json' };
import tideLedger from '../../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { filmSteps } from '../../../../src/core/film/filmSteps.ts';
import { type CoverDesign, coverDesign, madeDesign } from '../../../../src/core/fold/coverDesign.ts';
import { distance, type Vec2 } from '../../../../src/core/math/vec2.ts';
import { closureOf } from '../../../../src/core/solid/fittings/closurePath.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { FoldedCover, MeshData } from '../../../../src/core/solid/meshData.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { seamCourse } from '../../../../src/core/solid/seam/seamCourse.ts';
import { strandMesh } from '../../../../src/core/solid/seam/strandMesh.ts';
import { validateSolid } from '../../../../src/core/solid/validateSolid.ts';
import { defined } from '../../../defined.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';
import { merged } from '../../pattern/coverOf.ts';

const FLAP = { shape: 'flap', width_mm: 120, reach_mm: 60, end_mm: 20 };
const laced = (style: string) => ({ method: 'lacing', style });

/** As much of the seam is looked at, from the strap's lower edge, mm: several stitches. */
const STRETCH = 15;

/** The strap in section: its outline along one row, down the flesh side and back along the grain side. */
function strapSection({ positions, uvs, faces }: MeshData): { readonly outline: Vec2[]; readonly low: number } {
  const count = defined(faces[0]).count > 0 ? positions.length / 3 : 0;
  const widths = uvs.filter((_, i) => i % 2 === 1);
  const rows = [...new Set(widths)].sort((a, b) => a - b);
  const zs = positions.filter((_, i) => i % 3 === 2);
  // The fine mesh has its grain side first, then its flesh side, in the same order.
  const own = Array.from({ length: count }, (_, i) => i);
  const half = own.findIndex((i) => i > 0 && uvs[2 * i] === uvs[0] && uvs[2 * i + 1] === uvs[1]);
  const low = defined(rows[0]);
  const edge = own
    .slice(0, half)
    .filter((i) => Math.abs(nth(uvs, 2 * i + 1) - low) < 0.4 * (defined(rows.at(-1)) - low));
  const along = [...new Map(edge.map((i) => [nth(uvs, 2 * i), i])).entries()].sort(([a], [b]) => a - b);
  const at = (i: number): Vec2 => [nth(positions, 3 * i), nth(positions, 3 * i + 1)];
  const grain = along.map(([, i]) => at(i));
  const flesh = along.map(([, i]) => at(half + i));
  return { outline: [...flesh, ...grain.reverse()], low: Math.min(...zs) };
}

/** How far a place is inside of an outline, mm; 0 outside. */
function depthIn([x, y]: Vec2, outline: readonly Vec2[]): number {
  let [isInside, nearest] = [false, Number.POSITIVE_INFINITY];
  outline.forEach((a, i) => {
    const b = nth(outline, (i + 1) % outline.length);
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) isInside = !isInside;
    const way: Vec2 = [b[0] - a[0], b[1] - a[1]];
    const share = ((x - a[0]) * way[0] + (y - a[1]) * way[1]) / (way[0] ** 2 + way[1] ** 2 || 1);
    const on = Math.max(0, Math.min(1, share));
    nearest = Math.min(nearest, distance([x, y], [a[0] + on * way[0], a[1] + on * way[1]]));
  });
  return isInside ? nearest : 0;
}

/** How deep thread or lace of the cover's seam lies in the strap, and how near to it from outside, mm. */
function strandsAtStrap(design: CoverDesign, cover: FoldedCover): { readonly deepest: number; readonly count: number } {
  const { outline, low } = strapSection(defined(cover.parts.find(({ part }) => part === 'strap')));
  const { positions, indices } = strandMesh(
    seamCourse(madeDesign(design), 'nominal'),
    cover.seam,
    'fine',
    cover.film.movements.sewn,
  );
  let [deepest, count] = [0, 0];
  for (const k of new Set(indices.map((i) => 3 * i))) {
    const z = nth(positions, k + 2);
    if (z < low || z > low + STRETCH) continue;
    count++;
    deepest = Math.max(deepest, depthIn([nth(positions, k), nth(positions, k + 1)], outline));
  }
  return { deepest, count };
}

const CASES = [
  ['stitched', choirBook, { method: 'stitching' }, {}],
  ['running', tideLedger, laced('running'), {}],
  ['whip, thick lace', choirBook, laced('whip'), {}],
  ['single loop, a flap', tideLedger, laced('single loop'), FLAP],
  ['double loop, a flap', choirBook, laced('double loop'), FLAP],
  ['double loop, a buckle', choirBook, laced('double loop'), { width_mm: 30, fastening: 'buckle' }],
  ['triple loop, a snap', tideLedger, laced('triple loop'), { fastening: 'snap' }],
] as const;

/** How far the fastening of the closed strap is from where the pattern has it, beyond what the pattern rounds up, mm. */
function offReach(design: CoverDesign): number {
  const { strap, reach } = defined(closureOf(madeDesign(design), 'thick') ?? undefined);
  const { total, parts } = strap.sum;
  const bare = parts.reduce((sum, { each, isRest }) => sum + (isRest ? 0 : each), 0);
  return reach - defined(design.job.construction.strap ?? undefined).reach_mm - (total - bare);
}

const designOf = (book: object, seam: object, strap: object): CoverDesign =>
  coverDesign(soundJob(merged(merged(book, { seam }), { construction: { strap } })));

describe.each(CASES)('a strap over a seam along the edge: %s', (_name, book, seam, strap) => {
  const design = designOf(book, seam, strap);

  test('has no thread or lace in it beyond 0.05 mm, closed, open and on the film', () => {
    const steps = filmSteps(design, 'nominal');
    const within = (ids: readonly string[], share: number): Pose => {
      const { from, to } = defined(steps.find(({ id }) => ids.includes(id)));
      return { kind: 'sequence', at: from + (to - from) * share };
    };
    const poses: Pose[] = [
      ...[0, 1.2].map((angle): Pose => ({ kind: 'opening', angle })),
      within(['lace', 'stitch'], 0.005),
      within(['lace', 'stitch'], 0.5),
      within(['secondBoard'], 0.5),
      within(['close'], 0.97),
    ];
    for (const pose of poses) {
      const cover = foldedCover(design, pose);
      const { deepest, count } = strandsAtStrap(design, cover);
      if (cover.film.movements.sewn === 1) expect(count).toBeGreaterThan(100);
      expect({ pose, isClear: deepest <= 0.05, deepest }).toEqual({ pose, isClear: true, deepest });
      expect(validateSolid(defined(cover.parts.find(({ part }) => part === 'strap')))).toEqual([]);
    }
  });

  test('is as long in the pattern as it takes over the strands in 3D, to 1 mm: the plait counts as two laces', () => {
    expect(Math.abs(offReach(design))).toBeLessThan(1);
  });
});
