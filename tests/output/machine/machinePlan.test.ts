import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadFace } from '../../../src/artwork/faces/loadFace.ts';
import { flattened } from '../../../src/core/math/contour.ts';
import { isInside } from '../../../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { type MachineOptions, type MachinePlan, machinePlan } from '../../../src/output/machine/machinePlan.ts';
import { isCircle, type Stroke, strokeEnd, strokeStart } from '../../../src/output/machine/stroke.ts';
import { strokeOrder, travelOf } from '../../../src/output/machine/strokeOrder.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { cuttingJobs } from '../cuttingJobs.ts';
import { toChain } from '../outlineDistance.ts';
import { soundMachine } from './machines.ts';

const jobs = cuttingJobs();
const drawing = nth(jobs, 0).drawing;
const face = await loadFace('singleLine');
const plan = (change: object = {}, options: MachineOptions = {}): MachinePlan =>
  machinePlan(drawing, soundMachine(change), { face, ...options });
const strokesOf = (made: MachinePlan): Stroke[] =>
  made.beds.flatMap(({ passes }) => passes.flatMap((pass) => [...pass.strokes]));
const on = (made: MachinePlan, layer: string): Stroke[] => strokesOf(made).filter((stroke) => stroke.layer === layer);

/** A stroke without its start and way round: its points in order of place. */
const shape = ({ path }: Stroke): string =>
  flattened(path, 0.05)
    .map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`)
    .sort()
    .join();

describe('the order of strokes', () => {
  const stroke = fc
    .tuple(
      fc.constantFrom(0, 1, 2, 3) as fc.Arbitrary<0 | 1 | 2 | 3>,
      fc.double({ min: 0, max: 300, noNaN: true }),
      fc.double({ min: 0, max: 300, noNaN: true }),
      fc.boolean(),
    )
    .map(
      ([depth, x, y, isRound]): Stroke =>
        isRound
          ? {
              layer: 'HOLE',
              depth,
              isClosed: true,
              path: [{ kind: 'arc', centre: [x, y], radius: 1, start: 0, sweep: 2 * Math.PI }],
            }
          : { layer: 'SLIT', depth, isClosed: false, path: [{ kind: 'line', from: [x, y], to: [x + 3, y + 1] }] },
    );

  test('keeps every stroke, once, inside out, and never makes the way longer', () => {
    checkLaw(
      fc.property(fc.array(stroke, { minLength: 1, maxLength: 40 }), (strokes) => {
        const order = strokeOrder(strokes, [0, 0]);
        const middle = ({ path: [first] }: Stroke) =>
          first?.kind === 'arc' ? first.centre.join() : [first?.from, first?.to].sort().join();
        expect(order.map(middle).sort()).toEqual(strokes.map(middle).sort());
        const depths = order.map(({ depth }) => depth);
        expect(depths).toEqual([...depths].sort((a, b) => a - b));
        const insideOut = [...strokes].sort((a, b) => a.depth - b.depth);
        expect(travelOf(order, [0, 0])).toBeLessThanOrEqual(travelOf(insideOut, [0, 0]) + 1e-9);
      }),
      { cost: 4 },
    );
  });

  test('of a row of holes given in any order is the row, and of a grid at most a tenth over going up and down its rows', () => {
    const hole = (x: number, y: number): Stroke => ({
      layer: 'HOLE',
      depth: 1,
      isClosed: false,
      path: [{ kind: 'line', from: [x, y], to: [x, y] }],
    });
    const row = Array.from({ length: 40 }, (_, i) => hole((i * 17) % 40, 0));
    expect(travelOf(strokeOrder(row, [0, 0]), [0, 0])).toBeCloseTo(39, 9);
    const grid = Array.from({ length: 144 }, (_, i) => hole(((i * 31) % 144) % 12, Math.floor(((i * 31) % 144) / 12)));
    expect(travelOf(strokeOrder(grid, [0, 0]), [0, 0])).toBeLessThan(143 * 1.1);
  });
});

describe('a machine plan', () => {
  test('takes every hole of every piece once, and every cut edge once and last', () => {
    const made = plan({}, { kerf_mm: 0.2 });
    const count = (what: (piece: (typeof drawing.pieces)[number]) => number) =>
      drawing.pieces.reduce((sum, piece) => sum + piece.count * what(piece), 0);
    const burnt = [...on(made, 'HOLE'), ...on(made, 'SLIT')];
    expect(burnt.length).toBe(count(({ holes }) => holes));
    expect(new Set(burnt.map(shape)).size).toBe(burnt.length);
    expect(on(made, 'CUT').length).toBe(count(() => 1));
    for (const { passes } of made.beds) {
      const depths = passes.flatMap(({ strokes }) => strokes.map(({ depth }) => depth));
      expect(depths).toEqual([...depths].sort((a, b) => a - b));
    }
  });

  test('goes inside out also where one pass takes holes and the edge', () => {
    const made = plan({ words: 'none', passes: [{ name: 'All', layers: ['CUT', 'SLIT', 'HOLE'] }] });
    const depths = strokesOf(made).map(({ depth }) => depth);
    expect(depths).toContain(1);
    expect(depths.slice(depths.indexOf(3)).every((depth) => depth === 3)).toBe(true);
  });

  test('has a shorter way between strokes than the order of the pattern', () => {
    for (const { passes } of plan({ words: 'none', passes: [{ name: 'a', layers: ['SLIT'] }] }).beds)
      for (const { travel, travelBefore } of passes) expect(travel).toBeLessThanOrEqual(travelBefore);
    const made = plan();
    const [before, after] = (['travelBefore', 'travel'] as const).map((key) =>
      made.beds.reduce((sum, { passes }) => sum + passes.reduce((all, pass) => all + pass[key], 0), 0),
    );
    expect(after).toBeLessThan(0.8 * before!);
  });

  test('lays pieces on the bed within its margin and apart by the gap', () => {
    for (const { name, drawing } of jobs.filter((_, i) => i % 4 === 1)) {
      const profile = soundMachine({ bed: { width_mm: 1400, height_mm: 1000 }, margin_mm: 12, gap_mm: 7 });
      for (const bed of machinePlan(drawing, profile, { kerf_mm: 0.3, face }).beds) {
        const edges = bed.passes
          .flatMap(({ strokes }) => strokes.filter(({ depth }) => depth === 3))
          .map(({ path }) => flattened(path, 0.05));
        for (const [x, y] of edges.flat()) {
          expect(Math.min(x, 1400 - x), name).toBeGreaterThan(12 - 0.01);
          expect(Math.min(y, 1000 - y), name).toBeGreaterThan(12 - 0.01);
        }
        edges.forEach((edge, i) => {
          for (const other of edges.slice(i + 1))
            expect(
              Math.min(...edge.map((point) => toChain(point, other)), ...other.map((point) => toChain(point, edge))),
              name,
            ).toBeGreaterThan(7 - 0.05);
        });
      }
    }
  });

  test('takes as many beds as it needs, numbered, and every piece on one of them', () => {
    const { width, height } = nth(drawing.pieces, 0);
    const made = plan({ bed: { width_mm: Math.ceil(width) + 20, height_mm: Math.ceil(height) + 20 } });
    expect(made.beds.length).toBeGreaterThan(1);
    expect(made.beds.map(({ number }) => number)).toEqual(made.beds.map((_, i) => i + 1));
    expect(on(made, 'CUT').length).toBe(drawing.pieces.reduce((sum, { count }) => sum + count, 0));
  });

  test('says which piece no bed holds, the room there is, and what to do', () => {
    expect(() => plan({ bed: { width_mm: 300, height_mm: 200 } })).toThrow(
      /Outside is [\d.]+ × [\d.]+ mm; the bed has room for 288 × 188 mm within its margins\. Take a smaller margin or a larger bed/,
    );
  });

  test('says that a machine has no pass yet', () => {
    expect(() => plan({ passes: [], words: 'none' })).toThrow(/has no pass yet\. Add one/);
  });

  test('names the layers that no pass takes, and leaves words out with them', () => {
    const made = plan({ words: 'none', passes: [{ name: 'Edge', layers: ['CUT'] }] });
    expect(made.leftOut.map(({ layer }) => layer)).toEqual(expect.arrayContaining(['SLIT', 'TEXT', 'FOLD']));
    expect(made.leftOut.find(({ layer }) => layer === 'SLIT')?.count).toBe(
      drawing.pieces.reduce((sum, { holes, count }) => sum + holes * count, 0),
    );
    expect(strokesOf(made).every(({ layer }) => layer === 'CUT')).toBe(true);
  });

  test('draws words as open strokes on their own pass, inside their pieces', () => {
    const made = plan();
    const [words] = made.beds[0]!.passes;
    expect(words!.pass.layers).toEqual(['TEXT']);
    expect(words!.strokes.length).toBeGreaterThan(50);
    const edges = on(made, 'CUT').map(({ path }) => flattened(path, 0.05).slice(0, -1));
    for (const { path } of words!.strokes)
      for (const point of flattened(path, 0.05)) expect(edges.some((edge) => isInside(point, edge))).toBe(true);
    for (const { passes } of made.beds)
      for (const { pass, strokes } of passes)
        if (pass.layers.includes('CUT')) expect(strokes.every(({ layer }) => layer !== 'TEXT')).toBe(true);
  });

  test('names letters that single strokes lack', () => {
    const lettered = {
      ...drawing,
      pieces: drawing.pieces.map((piece) => ({
        ...piece,
        layers: {
          ...piece.layers,
          text: piece.layers.text.map((each) => (each.kind === 'text' ? { ...each, text: 'Ω書' } : each)),
        },
      })),
    };
    expect(machinePlan(lettered, soundMachine({}), { face }).lacking).toEqual(['書']);
  });

  test('keeps arcs as arcs, or as points that stray by no more than the tolerance', () => {
    const round = nth(jobs, 5).drawing;
    const edges = { words: 'none', passes: [{ name: 'Edge', layers: ['CUT', 'HOLE'] }] };
    const bent = (made: MachinePlan) =>
      made.beds
        .flatMap(({ passes }) => passes.flatMap(({ strokes }) => strokes.flatMap(({ path }) => path)))
        .filter(({ kind }) => kind === 'arc');
    expect(bent(machinePlan(round, soundMachine(edges), { kerf_mm: 0.3 })).length).toBeGreaterThan(4);
    const inPoints = (tolerance_mm: number) =>
      machinePlan(round, soundMachine({ ...edges, curves: { as: 'points', tolerance_mm } }), { kerf_mm: 0.3 });
    expect(bent(inPoints(0.02))).toEqual([]);
    expect(strokesOf(inPoints(0.005)).flatMap(({ path }) => path).length).toBeGreaterThan(
      strokesOf(inPoints(0.05)).flatMap(({ path }) => path).length,
    );
  });

  test('of the turned-over bed is the same bed mirrored in its upright middle, crosses and all', () => {
    const change = {
      crosses: true,
      words: 'none',
      passes: [
        { name: 'a', layers: ['MARK'] },
        { name: 'b', layers: ['HOLE', 'SLIT'] },
        { name: 'c', layers: ['CUT'] },
      ],
    };
    const [plain, turned] = [plan(change, { kerf_mm: 0.2 }), plan(change, { kerf_mm: 0.2, mirrored: true })];
    const { width } = plain.bed;
    expect(plain.beds.length).toBe(turned.beds.length);
    plain.beds.forEach((bed, i) => {
      const other = nth(turned.beds, i);
      const flip = ([x, y]: Vec2): Vec2 => [width - x, y];
      const sorted = (points: readonly Vec2[]) => points.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`).sort();
      expect(bed.crosses).toHaveLength(3);
      for (const [x, y] of bed.passes.flatMap(({ strokes }) => strokes.flatMap(({ path }) => flattened(path, 0.05)))) {
        expect(Math.min(x, width - x)).toBeGreaterThan(6 - 0.01);
        expect(Math.min(y, plain.bed.height - y)).toBeGreaterThan(6 - 0.01);
      }
      expect(sorted(other.crosses)).toEqual(sorted(bed.crosses.map(flip)));
      const slits = (each: typeof bed) =>
        each.passes
          .flatMap(({ strokes }) => strokes.filter(({ depth }) => depth === 1))
          .map((stroke) => {
            const [a, b] = [strokeStart(stroke), strokeEnd(stroke)];
            return isCircle(stroke)
              ? (stroke.path[0] as { centre: Vec2 }).centre
              : ([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const);
          });
      expect(sorted(slits(other))).toEqual(sorted(slits(bed).map(flip)));
      // Upside down they would not match: the third stands alone.
      const upsideDown = bed.crosses.map(
        ([x, y]): Vec2 => [bed.crosses[0]![0] + bed.crosses[1]![0] - x, bed.crosses[0]![1] + bed.crosses[2]![1] - y],
      );
      expect(sorted(upsideDown)).not.toEqual(sorted(bed.crosses));
    });
  });

  test('says that crosses need a pass that takes marks', () => {
    expect(plan({ crosses: true, words: 'none', passes: [{ name: 'c', layers: ['CUT'] }] }).notes.join(' ')).toMatch(
      /No pass takes the layer MARK/,
    );
  });
});
