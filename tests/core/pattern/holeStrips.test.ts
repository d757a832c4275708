import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import type { Segment } from '../../../src/core/math/contour.ts';
import { distance, type Vec2 } from '../../../src/core/math/vec2.ts';
import { holeStrips } from '../../../src/core/pattern/holeStrips.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { textBox } from '../../../src/core/pattern/textBox.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { coverOf } from './coverOf.ts';

const designs = [
  ...EXAMPLE_JOBS.map(({ document }) => coverDesign(soundJob(document))),
  coverOf({ seam: { method: 'lacing', style: 'whip', cornerRadius_mm: 14 } }),
  coverOf({
    seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 },
    construction: { strap: {} },
  }),
  coverOf({ pockets: { construction: 'turned' } }),
];

/** Both ends of a slit, or the middle of a hole twice. */
const ends = (mark: Segment): [Vec2, Vec2] =>
  mark.kind === 'line' ? [mark.from, mark.to] : [mark.centre, mark.centre];
const middle = (mark: Segment): Vec2 => {
  const [a, b] = ends(mark);
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
};

/** How a strip is laid on a side of the piece, by hand: its lower edge on the cut edge, its top toward the middle. */
const laidOn: Record<string, (at: Vec2, size: Vec2) => Vec2> = {
  tail: ([u, v]) => [u, v],
  head: ([u, v], [width, height]) => [width - u, height - v],
  'front fore-edge': ([u, v], [width]) => [width - v, u],
  'back fore-edge': ([u, v], [, height]) => [v, height - u],
};

describe.each(designs.map((design) => [design.job.name, design] as const))('the hole strips of %s', (_, design) => {
  const strips = holeStrips(design);
  const outside = nth(patternDrawing(design).pieces, 0);
  const margin = design.job.seam.edgeMargin_mm;
  const size: Vec2 = [outside.width, outside.height];
  const drawn = outside.layers.hole as readonly Segment[];

  test('laid on each side that they are named for, have holes and slits where the pattern has them', () => {
    expect(strips.length).toBeGreaterThan(0);
    const covered = new Set<Segment>();
    const sides = strips.flatMap(({ name, layers }) =>
      name
        .replace('Hole strip, ', '')
        .split(' and ')
        .map((side) => ({ side, holes: layers.hole as readonly Segment[] })),
    );
    expect(new Set(sides.map(({ side }) => side)).size).toBe(sides.length);
    for (const { side, holes } of sides)
      for (const hole of holes) {
        const [a, b] = ends(hole).map((end) => laidOn[side]!(end, size)) as [Vec2, Vec2];
        const found = drawn.filter((mark) => {
          const [c, d] = ends(mark);
          return Math.min(distance(a, c) + distance(b, d), distance(a, d) + distance(b, c)) < 1e-6;
        });
        expect([side, found.length]).toEqual([side, 1]);
        covered.add(nth(found, 0));
      }
    // Every hole of the seam that lies the margin from an edge, off the arc of a corner, is on a strip.
    const seam = seamHoles(design).rows.flatMap(({ holes }) => holes);
    const missed = seam.filter(({ at: [x, y] }) => {
      const at: Vec2 = [outside.width - x, y];
      const isStraight = [at[0], at[1], outside.width - at[0], outside.height - at[1]].some(
        (off) => Math.abs(off - margin) < 1e-6,
      );
      return isStraight && ![...covered].some((mark) => distance(middle(mark), at) < 1e-6);
    });
    expect(missed).toEqual([]);
  });

  test('are as long as their side, and have every hole the margin from the edge that is laid on the leather', () => {
    for (const { name, width, layers, height } of strips) {
      expect(width).toBe(name.includes('fore-edge') ? outside.height : outside.width);
      expect(height).toBeLessThan(margin + 20);
      for (const hole of layers.hole as readonly Segment[]) expect(middle(hole)[1]).toBeCloseTo(margin, 9);
    }
  });

  test('say how many holes they have, and mark the first and the last', () => {
    for (const { layers, holes, width, height } of strips) {
      const texts = layers.text.flatMap((entity) => (entity.kind === 'text' ? [entity] : []));
      const said = texts.map(({ text }) => text).join(' ');
      expect(said).toMatch(new RegExp(`\\b${holes} (holes|slits), pitch `));
      const xs = (layers.hole as readonly Segment[]).map((hole) => middle(hole)[0]).sort((a, b) => a - b);
      const marks = layers.mark.map((mark) => middle(mark as Segment)[0]);
      expect(marks).toEqual([nth(xs, 0), nth(xs, -1)]);
      const boxes = texts.map(textBox);
      for (const [i, a] of boxes.entries()) {
        expect(a.x).toBeGreaterThanOrEqual(0);
        expect(a.x + a.width).toBeLessThanOrEqual(width);
        expect(a.y + a.height).toBeLessThanOrEqual(height);
        for (const b of boxes.slice(i + 1))
          expect(a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y).toBe(
            true,
          );
      }
    }
  });
});

test('sides that are alike are one strip', () => {
  const design = coverOf({ seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 } });
  expect(holeStrips(design).map(({ name }) => name)).toEqual([
    'Hole strip, tail and head',
    'Hole strip, back fore-edge and front fore-edge',
  ]);
});

test('uneven strides of an iron are named, and whole ones need no words', () => {
  const iron = { kind: 'pricking iron', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 };
  const seam = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, iron };
  const said = (pattern: object): string[] =>
    holeStrips(coverOf({ seam, pattern })).flatMap(({ layers }) =>
      layers.text.flatMap((entity) => (entity.kind === 'text' ? (/\d+ × [\d.]+ mm/.exec(entity.text) ?? []) : [])),
    );
  // 1 mm more than 125 and 82 strides of 3 mm and two margins; then just these.
  expect(said({ outsideWidth_mm: 384, outsideHeight_mm: 255 })).toEqual(['7 × 3.14 mm', '8 × 3.13 mm']);
  expect(said({ outsideWidth_mm: 383, outsideHeight_mm: 254 })).toEqual([]);
});

test('a cover whose turned ends leave no room for a seam has none', () => {
  const none = coverOf({ pockets: { construction: 'turned' }, pattern: { outsideWidth_mm: 180 } });
  expect(seamHoles(none).rows).toEqual([]);
  expect(holeStrips(none)).toEqual([]);
});
