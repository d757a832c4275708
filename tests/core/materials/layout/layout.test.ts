import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import { type Hide, hideOf } from '../../../../src/core/materials/layout/hide.ts';
import { type Layout, layOut } from '../../../../src/core/materials/layout/layout.ts';
import { layoutFaults } from '../../../../src/core/materials/layout/layoutFaults.ts';
import { leatherAreas, type PieceOutline, pieceOutlines } from '../../../../src/core/materials/pieceOutline.ts';
import type { Vec2 } from '../../../../src/core/math/vec2.ts';
import { patternDrawing } from '../../../../src/core/pattern/patternDrawing.ts';
import { jobDocument, soundJob } from '../../../jobArbitrary.ts';
import { checkLaw, lawCases } from '../../../laws.ts';
import { nth } from '../../../nth.ts';

const box = (x0: number, y0: number, x1: number, y1: number): Vec2[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

const piece = (name: string, polygon: readonly Vec2[], more: Partial<PieceOutline> = {}): PieceOutline => ({
  name,
  leather: 'outside',
  count: 1,
  polygon,
  lies: 'along',
  ...more,
});

const sheet = (width: number, height: number, more: Partial<Hide> = {}): Hide => ({
  outline: box(0, 0, width, height),
  defects: [],
  backbone: Math.PI / 2,
  ...more,
});

const touching = { spacing: 0, edge: 0 };

describe('layOut', () => {
  test('lays a piece that just fills the sheet', () => {
    const outlines = [piece('Outside', box(0, 0, 400.3, 250.7))];
    const layout = layOut(outlines, sheet(400.3, 250.7), touching);
    expect(layout.unplaced).toEqual([]);
    expect(layout.yield).toBeCloseTo(1, 4);
    expect(layoutFaults(layout, outlines, sheet(400.3, 250.7), touching)).toEqual([]);
  });

  test('does not lay one a hundredth of a millimetre too large', () => {
    const outlines = [piece('Outside', box(0, 0, 400.31, 250.7))];
    expect(layOut(outlines, sheet(400.3, 250.7), touching).unplaced).toEqual(['Outside']);
  });

  test('keeps spacing and edge: two pieces need their widths and three clearances', () => {
    const outlines = [piece('Pocket', box(0, 0, 100, 200), { count: 2 })];
    const clearance = { spacing: 4, edge: 6 };
    const enough = sheet(216, 212);
    expect(layOut(outlines, enough, clearance).unplaced).toEqual([]);
    expect(layOut(outlines, sheet(215.9, 212), clearance).unplaced).toEqual(['Pocket']);
  });

  test('turns a piece across the backbone only where it may', () => {
    const strip = box(0, 0, 300, 50);
    expect(layOut([piece('Lining', strip)], sheet(60, 310), touching).unplaced).toEqual(['Lining']);
    const layout = layOut([piece('Lining', strip, { lies: 'either' })], sheet(60, 310), touching);
    expect(nth(layout.placed, 0).quarters % 2).toBe(1);
  });

  test('lays the head along the backbone wherever the backbone points', () => {
    const outlines = [piece('Outside', box(0, 0, 100, 300))];
    // Backbone along x: the height of the piece lies along x.
    const hide = sheet(310, 110, { backbone: 0 });
    const layout = layOut(outlines, hide, touching);
    expect(layoutFaults(layout, outlines, hide, touching)).toEqual([]);
    const xs = nth(layout.placed, 0).polygon.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(300, 9);
    expect(layOut(outlines, sheet(310, 110), touching).unplaced).toEqual(['Outside']);
  });

  test('avoids a defect, and uses the leather on both sides of it', () => {
    const outlines = [piece('Pocket', box(0, 0, 90, 90), { count: 2 })];
    const hide = sheet(200, 100, { defects: [box(98, 40, 102, 60)] });
    expect(layoutFaults(layOut(outlines, hide, touching), outlines, hide, touching)).toEqual([]);
    expect(layOut(outlines, hide, touching).unplaced).toEqual([]);
    expect(layOut(outlines, hide, { spacing: 0, edge: 9 }).unplaced.length).toBeGreaterThan(0);
  });

  test('fits two wedges together, one turned half round', () => {
    const wedge: Vec2[] = [
      [0, 0],
      [100, 0],
      [20, 100],
      [0, 100],
    ];
    const outlines = [piece('Pocket', wedge, { count: 2 })];
    const hide = sheet(121, 101);
    const layout = layOut(outlines, hide, touching);
    expect(layout.unplaced).toEqual([]);
    expect(layoutFaults(layout, outlines, hide, touching)).toEqual([]);
  });

  test('uses the width of a hide where it is wide', () => {
    const hide: Hide = {
      outline: [
        [100, 0],
        [200, 0],
        [300, 150],
        [300, 400],
        [0, 400],
        [0, 150],
      ],
      defects: [],
      backbone: Math.PI / 2,
    };
    const outlines = [piece('Outside', box(0, 0, 290, 200))];
    const layout = layOut(outlines, hide, { spacing: 3, edge: 5 });
    expect(layout.unplaced).toEqual([]);
    expect(layoutFaults(layout, outlines, hide, { spacing: 3, edge: 5 })).toEqual([]);
  });

  test('never overlaps, leaves the leather or loses the direction, for random jobs on sheets and hides', () => {
    let laid = 0;
    let left = 0;
    checkLaw(
      fc.property(
        jobDocument,
        fc.integer({ min: 0, max: 359 }),
        fc.array(
          fc.tuple(fc.double({ min: 0.1, max: 0.9, noNaN: true }), fc.double({ min: 0.1, max: 0.9, noNaN: true })),
          {
            maxLength: 4,
          },
        ),
        fc.double({ min: 0.6, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 0, max: 20 }),
        fc.constantFrom('square' as const, 'rounded' as const, 'clipped' as const),
        (plain, backbone, spots, scale, spacing, edge, bulges, corners) => {
          const isCut = corners !== 'square';
          const document = {
            ...plain,
            seam: { ...plain.seam, cornerRadius_mm: isCut ? 15 : 0 },
            construction: {
              corners,
              mouth: isCut ? ('curved' as const) : ('straight' as const),
              strap: isCut ? {} : null,
            },
          };
          const outlines = pieceOutlines(coverDesign(soundJob(document)));
          const size = scale * Math.sqrt(leatherAreas(outlines, 0.5).reduce((sum, { gross }) => sum + gross, 0));
          // An egg with a wavy edge, or, with no bulges, a sheet.
          const wavy = Array.from({ length: 40 }, (_, i): Vec2 => {
            const angle = (i * Math.PI) / 20;
            const reach = (size / 1.6) * (1 + 0.08 * Math.sin(bulges * angle)) * (1 + 0.2 * Math.cos(angle));
            return [reach * Math.cos(angle), reach * Math.sin(angle)];
          });
          const outline = bulges === 0 ? box(-size / 2, -size / 2, size / 2, size / 2) : wavy;
          const defects = spots.map(([u, v]) => {
            const [x, y] = [(u - 0.5) * size, (v - 0.5) * size];
            return box(x, y, x + size / 30, y + size / 20);
          });
          const hide = { outline, defects, backbone: (backbone * Math.PI) / 180 };
          const layout = layOut(outlines, hide, { spacing, edge });
          laid += layout.placed.length;
          left += layout.unplaced.length;
          expect(layoutFaults(layout, outlines, hide, { spacing, edge })).toEqual([]);
          expect(layout.yield).toBeLessThanOrEqual(1 + 1e-6);
        },
      ),
      { cost: 8 },
    );
    // The random cases must include hides that hold everything and hides that do not.
    expect(laid).toBeGreaterThan(lawCases(8));
    expect(left).toBeGreaterThan(lawCases(8) / 4);
  });
});

describe('layoutFaults', () => {
  const outlines = [piece('Outside', box(0, 0, 100, 50)), piece('Pocket', box(0, 0, 40, 50))];
  const hide = sheet(200, 100, { defects: [box(190, 90, 195, 95)] });
  const clearance = { spacing: 3, edge: 2 };
  const layout = (outside: Vec2[], pocket: Vec2[]): Layout => ({
    placed: [
      { name: 'Outside', quarters: 0, polygon: outside },
      { name: 'Pocket', quarters: 0, polygon: pocket },
    ],
    unplaced: [],
    area: 0,
    used: 0,
    yield: 0,
  });
  const sound = layout(box(2, 2, 102, 52), box(105, 2, 145, 52));

  test('finds none in a sound layout', () => expect(layoutFaults(sound, outlines, hide, clearance)).toEqual([]));

  test.each([
    ['overlaps', layout(box(2, 2, 102, 52), box(50, 2, 90, 52))],
    ['one inside the other', layout(box(2, 2, 102, 52), box(30, 2, 70, 52))],
    ['under the spacing', layout(box(2, 2, 102, 52), box(104.9, 2, 144.9, 52))],
    ['off the leather', layout(box(-5, 2, 95, 52), box(105, 2, 145, 52))],
    ['from the edge', layout(box(1.9, 2, 101.9, 52), box(105, 2, 145, 52))],
    ['from defect 1', layout(box(2, 2, 102, 52), box(152, 46, 192, 96))],
    ['along its direction', layout(box(2, 2, 52, 52), box(105, 2, 145, 52))],
  ])('finds: %s', (fault, broken) => {
    const found = layoutFaults(broken, outlines, hide, clearance).join('; ');
    expect(found).toContain(fault === 'one inside the other' ? 'overlaps' : fault);
  });

  test('finds a missing piece, a foreign one, and one in a forbidden turn', () => {
    const [outside, pocket] = sound.placed;
    expect(layoutFaults({ ...sound, placed: [outside!] }, outlines, hide, clearance).join()).toContain('Pocket: 0');
    const stranger = { ...pocket!, name: 'Strap' };
    expect(
      layoutFaults({ ...sound, placed: [outside!, pocket!, stranger] }, outlines, hide, clearance).join(),
    ).toContain('Strap is not a piece');
    const turnedOutside = { name: 'Outside', quarters: 1 as const, polygon: box(2, 2, 52, 102) };
    expect(layoutFaults({ ...sound, placed: [turnedOutside, pocket!] }, outlines, hide, clearance).join()).toContain(
      'direction',
    );
  });

  test('finds a side that crosses a notch between its corners', () => {
    const notched: Vec2[] = [
      [0, 0],
      [200, 0],
      [200, 100],
      [110, 100],
      [100, 40],
      [90, 100],
      [0, 100],
    ];
    const across = [piece('Outside', box(0, 0, 180, 90))];
    const laid = { ...sound, placed: [{ name: 'Outside', quarters: 0 as const, polygon: box(10, 5, 190, 95) }] };
    expect(layoutFaults(laid, across, { ...hide, outline: notched }, touching).join()).toContain('off the leather');
  });
});

describe('leather owned', () => {
  test('is the rectangle of a sheet, or the outline of a hide', () => {
    const owned = { width_mm: 600, height_mm: 400, outline: null, defects: [], backbone_deg: 90 } as never;
    expect(hideOf(owned).outline).toEqual(box(0, 0, 600, 400));
  });

  test('with an outline that crosses itself is refused in words', () => {
    const bow = { outline: [[0, 0], [100, 100], [100, 0], [0, 100]] }; // biome-ignore format: one outline
    const document = {
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
      leather: { outside: { min_mm: 1.6, max_mm: 2 } },
      hides: { outside: bow },
    };
    expect(() => soundJob(document)).toThrow(/hides\.outside\.outline: .*cross or touch/);
  });

  test('may be turned across the backbone only for a pen loop: all other pieces have a direction mark', () => {
    const design = coverDesign(
      soundJob({
        format: 'coverwright-job',
        version: 1,
        book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
        leather: { outside: { min_mm: 1.6, max_mm: 2 }, lining: { min_mm: 0.6, max_mm: 0.8 } },
        construction: { strap: {}, penLoop: {} },
      }),
    );
    const turning = pieceOutlines(design).map(({ name, lies }) => [name, lies]);
    expect(turning).toEqual([
      ['Outside', 'along'],
      ['Pocket', 'along'],
      ['Centre lining', 'along'],
      ['Closure strap', 'along'],
      ['Pen loop', 'either'],
    ]);
    for (const { name, layers } of patternDrawing(design).pieces)
      expect([name, JSON.stringify(layers).includes('in any direction')]).toEqual([name, name === 'Pen loop']);
  });

  test('is the sum of the pieces by leather, plus the waste', () => {
    const design = coverDesign(
      soundJob({
        format: 'coverwright-job',
        version: 1,
        book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
        leather: { outside: { min_mm: 1.6, max_mm: 2 }, lining: { min_mm: 0.6, max_mm: 0.8 } },
      }),
    );
    const { outside, pocket, lining } = design.pieces;
    const [first, second] = leatherAreas(pieceOutlines(design), 0.2);
    // Pockets of the same leather come from the same hide.
    expect(first!.net).toBeCloseTo(outside.width * outside.height + 2 * pocket.width * pocket.height, 6);
    expect(first!.gross).toBeCloseTo(1.2 * first!.net, 6);
    expect(second).toEqual({ leather: 'lining', net: lining!.width * lining!.height, gross: 1.2 * second!.net });
  });
});
