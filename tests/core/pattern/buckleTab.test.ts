import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { coverDesign, madeDesign } from '../../../src/core/fold/coverDesign.ts';
import type { PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { strapOf } from '../../../src/core/pattern/strap.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { merged } from './coverOf.ts';

const BUCKLED = {
  leather: { outside: { min_mm: 2, max_mm: 2, neutral: 0.5 } },
  seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4 },
  construction: { strap: { fastening: 'buckle', width_mm: 30, reach_mm: 40, end_mm: 20 } },
};
const design = coverDesign(soundJob(merged(tideLedger, BUCKLED)));
const pieceOf = (of: typeof design, id: PieceDrawing['id']): PieceDrawing | undefined =>
  patternDrawing(of).pieces.find((piece) => piece.id === id);
const tab = defined(defined(strapOf(design) ?? undefined).tab ?? undefined);
const piece = defined(pieceOf(design, 'buckleTab'));

describe('the tab of a buckle', () => {
  test('is as long as it goes round the bar, down from it, under it, and is sewn at both ends, by hand', () => {
    // Bar of 1.1 mm radius, leather of 2 mm with its neutral line in the middle: R = 2.1, down by 2.2 at 0.35 rad.
    const straight = (2.2 - 4.2 * (1 - Math.cos(0.35))) / Math.sin(0.35);
    const across = 4.2 * Math.sin(0.35) + straight * Math.cos(0.35);
    const bare = 2.1 * Math.PI + (4.2 * 0.35 + straight) + across + 2 * 3 * 4;
    expect(piece.width).toBeGreaterThanOrEqual(bare - 1e-9);
    expect(piece.width - bare).toBeLessThan(0.5);
    expect(piece.width).toBe(tab.sum.total);
    expect(piece.height).toBe(30);
  });

  test('has the same holes in both ends and in the outside, and one slot that the prong goes through', () => {
    const without = coverDesign(soundJob(merged(design.job, { construction: { strap: { fastening: 'stud' } } })));
    const inOutside = defined(pieceOf(design, 'outside')).holes - defined(pieceOf(without, 'outside')).holes;
    expect(piece.holes).toBe(2 * inOutside + 1);
    const circles = piece.layers.hole.flatMap((hole) => (hole.kind === 'arc' ? [hole.centre] : []));
    for (const [x, y] of circles)
      expect(circles.some(([u, v]) => Math.abs(u - (piece.width - x)) < 1e-9 && Math.abs(v - y) < 1e-9)).toBe(true);
    const slots = piece.layers.hole.filter(({ kind }) => kind === 'path');
    expect(slots).toHaveLength(1);
    expect(tab.slot.width).toBeGreaterThan(1.6);
    expect(pieceOf(without, 'buckleTab')).toBeUndefined();
  });

  test('lies on the front as its holes lie in the outside: from the bar, 9 mm beyond the strap’s hole, to its end', () => {
    const across = tab.holes.map(({ at }) => at[0]);
    const straight = (2.2 - 4.2 * (1 - Math.cos(0.35))) / Math.sin(0.35);
    const end = 40 + 0.45 * 20 + (4.2 * Math.sin(0.35) + straight * Math.cos(0.35)) + 12;
    expect(Math.max(...across)).toBeCloseTo(end - 4, 9);
    expect(Math.min(...across)).toBeCloseTo(end - 8, 9);
  });

  test.each(['thin', 'thick'] as const)(
    'is drawn in 3D as long as it is cut, its holes on it, at the %s end of the leather',
    (point) => {
      const wide = coverDesign(soundJob(merged(design.job, { leather: { outside: { min_mm: 1.2, max_mm: 3 } } })));
      const { parts, strapSeam } = foldedCover(wide, { kind: 'opening', angle: 1 }, point);
      const { uvs, positions } = defined(parts.find(({ part }) => part === 'buckleTab'));
      const cut = defined(strapOf(madeDesign(wide)) ?? undefined);
      const longest = uvs.reduce((most, u, i) => (i % 2 === 0 ? Math.max(most, u) : most), 0);
      expect(longest).toBeCloseTo(defined(cut.tab ?? undefined).sum.total, 4);
      const own = strapSeam.slice(cut.holes.length);
      expect(own).toHaveLength(defined(cut.tab ?? undefined).holes.length);
      for (const { at, out } of own) {
        // Some vertex of its grain side is in the plane of the hole, within the tab's width.
        const off: number[] = [];
        for (let k = 0; k < positions.length; k += 3) {
          const from = [positions[k]! - at[0], positions[k + 1]! - at[1], positions[k + 2]! - at[2]] as const;
          if (Math.hypot(...from) < 25) off.push(Math.abs(from[0] * out[0] + from[1] * out[1] + from[2] * out[2]));
        }
        expect(Math.min(...off)).toBeLessThan(1e-3);
      }
      expect(nth(own, 0).stack).toBeCloseTo(3 * (point === 'thin' ? 1.2 : 3), 6);
    },
  );
});
