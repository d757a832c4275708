import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { distance, subtract, type Vec2 } from '../../../src/core/math/vec2.ts';
import { type BookStand, bookMeshes } from '../../../src/core/solid/bookMeshes.ts';
import { type Gathering, halfBlock } from '../../../src/core/solid/halfBlock.ts';
import { validateClearance } from '../../../src/core/solid/validateClearance.ts';
import { validateSolid } from '../../../src/core/solid/validateSolid.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { LAW_SEED } from '../../laws.ts';
import { nth } from '../../nth.ts';

const tide = EXAMPLE_JOBS[0].document as { readonly book: object };
const bookOf = (book: object): CoverDesign => coverDesign(soundJob({ ...tide, book: { ...tide.book, ...book } }));
const BOOKS: readonly (readonly [string, CoverDesign])[] = [
  ...EXAMPLE_JOBS.map(({ id, document }) => [id, coverDesign(soundJob(document))] as const),
  ['limp', bookOf({ kind: 'limp', boardThickness_mm: 1 })],
  ['8 mm thick', bookOf({ thickness_mm: 8, boardThickness_mm: 2 })],
  [
    '120 mm thick and round',
    bookOf({ thickness_mm: 120, boardThickness_mm: 4, spine: { shape: 'rounded', rise_mm: 25 } }),
  ],
  ['120 mm thick and flat', bookOf({ thickness_mm: 120, boardThickness_mm: 4 })],
  ['thicker at the fore-edge', bookOf({ foreEdgeThickness_mm: 34 })],
  ['with rounded edges of the back', bookOf({ cornerRadius_mm: 5 })],
];

/** Swings of front and back board: alike from closed to bent back on each other, and one flat with the other anywhere. */
const SWINGS: readonly Vec2[] = [
  ...Array.from({ length: 13 }, (_, k): Vec2 => [(Math.PI * k) / 12, (Math.PI * k) / 12]),
  ...Array.from({ length: 7 }, (_, k): Vec2 => [Math.PI / 2, 0.4 * k]),
];

/** Some of a list, others for every book and every seed; all of it with `LAWS=full`. */
const sampled = <T>(all: readonly T[], variant: number, every: number): T[] =>
  all.filter((_, i) => process.env.LAWS === 'full' || (i + variant + LAW_SEED) % every === 0);

const stand = ([front, back]: Vec2, leaves: Vec2 = [front, back]): BookStand => ({
  opening: { front, back },
  leaves: { front: leaves[0], back: leaves[1] },
  forced: 0,
  mouths: { front: 60, back: null },
});

describe.each(BOOKS.map(([name, design], variant) => ({ name, design, variant })))('the book $name', (given) => {
  const { design, variant } = given;

  test('has no part through another, and each is a closed solid, however its boards stand', () => {
    for (const swings of sampled(SWINGS, variant, 10)) {
      const parts = bookMeshes(design, 'thick', stand(swings));
      expect({ swings, faults: parts.flatMap(validateSolid) }).toEqual({ swings, faults: [] });
      expect({ swings, faults: validateClearance(parts) }).toEqual({ swings, faults: [] });
    }
  });

  test('shows no crack between spine piece and boards, however they stand', () => {
    if (design.job.book.kind !== 'hardback') return;
    for (const swings of SWINGS) {
      const sectionOf = (name: string): Vec2[] => {
        const { positions } = defined(bookMeshes(design, 'thick', stand(swings)).find(({ part }) => part === name));
        return Array.from(
          { length: positions.length / 3 },
          (_, i): Vec2 => [nth(positions, 3 * i), nth(positions, 3 * i + 1)],
        );
      };
      const [cloth, spine, board] = ['backJoint', 'spine', 'backBoard'].map(sectionOf);
      const apart = (a: readonly Vec2[], b: readonly Vec2[]): number =>
        Math.min(...a.flatMap((p) => b.map((q) => distance(p, q))));
      const toSpine = apart(defined(cloth), defined(spine));
      expect(apart(defined(cloth), defined(board))).toBeLessThan(0.1);
      // A rounded edge unbends as its board opens; the spine piece, which is stiff, by a part of that.
      expect(toSpine).toBeLessThan(design.job.book.cornerRadius_mm > 0 ? 2.5 : 0.2);
    }
  });

  test('keeps its block closed while its boards alone are bent back', () => {
    const [closed, bent] = [stand([0, 0]), stand([2, 1], [0, 0])].map((each) => bookMeshes(design, 'thin', each));
    for (const name of ['frontPages', 'backPages', 'leaves']) {
      const [a, b] = [closed, bent].map((parts) => defined(defined(parts).find(({ part }) => part === name)));
      // The places at which a leaf is drawn move along it, and so cut its bend over the pocket's mouth a little elsewhere.
      const closedAt = extents(defined(a).positions);
      extents(defined(b).positions).forEach((at, i) => {
        expect(Math.abs(at - nth(closedAt, i))).toBeLessThan(0.005);
      });
    }
  });

  test('has as many vertices in every stand, the same triangles, and fewer than 12,000 of them', () => {
    const shape = (swings: Vec2): unknown =>
      bookMeshes(design, 'thin', stand(swings)).map(({ part, positions, indices, faces }) => ({
        part,
        vertices: positions.length,
        indices,
        faces,
      }));
    const parts = bookMeshes(design, 'thin', stand([0, 0]));
    expect(parts.reduce((sum, { indices }) => sum + indices.length / 3, 0)).toBeLessThan(12_000);
    for (const swings of [nth(SWINGS, 4), nth(SWINGS, 12), nth(SWINGS, 17)])
      expect(shape(swings)).toEqual(shape([0, 0]));
  });

  /** The half block at the back of the closed book, and at some swings. */
  const halfAt = (swing: number, mouth = 60) =>
    halfBlock(design.needs.thick.book, {
      tilt: design.needs.thick.book.wedge,
      board: swing,
      leaf: swing,
      fromClosed: swing,
      pocket: 1,
      mouth,
      rest: design.needs.thick.book,
    });
  const gatherings = (swing: number): readonly Gathering[] => [halfAt(swing).slab, ...halfAt(swing).fan];

  test('has leaves as long in every stand as in the closed book, to 1e-6 mm', () => {
    const lengths = (swing: number): number[] =>
      gatherings(swing).flatMap((leaves) =>
        leaves.map((leaf) => leaf.reduce((sum, { at }, i) => sum + distance(at, nth(leaf, Math.max(0, i - 1)).at), 0)),
      );
    const closed = lengths(0);
    for (let k = 1; k <= 12; k++)
      lengths((Math.PI * k) / 12).forEach((length, i) => {
        expect(Math.abs(length - nth(closed, i))).toBeLessThan(1e-6);
      });
  });

  test('has leaves that begin at the spine in the same place in every stand', () => {
    const starts = (swing: number) => gatherings(swing).flatMap((leaves) => leaves.map((leaf) => nth(leaf, 0).at));
    for (const swing of [0.3, 1.2, Math.PI / 2, 2.5]) expect(starts(swing)).toEqual(starts(0));
  });

  test('has no crack between its gatherings when closed, nor at its middle', () => {
    const closed = gatherings(0);
    closed.slice(1).forEach((leaves, i) => {
      const below = nth(closed, i);
      nth(leaves, 0).forEach(({ at }, k) => {
        expect(distance(at, nth(nth(below, below.length - 1), k).at)).toBeLessThan(1e-9);
      });
    });
    for (const { at } of nth(nth(closed, closed.length - 1), 1)) expect(Math.abs(at[1])).toBeLessThan(1e-9);
  });

  test('has gatherings that reach neither into each other nor over the middle', () => {
    for (let k = 0; k <= 12; k++) {
      const all = gatherings((Math.PI * k) / 12);
      all.forEach((leaves, i) => {
        const above = all[i + 1];
        const outline = outlineOf(leaves);
        for (const { at } of above ? nth(above, 0) : []) expect(depthIn(outline, at)).toBeLessThan(0.02);
        for (const leaf of leaves) for (const { at } of leaf) expect(at[1]).toBeLessThan(1e-9);
      });
    }
  });

  test('has leaves that fan: open flat, the last ones stand off those that lie on the board', () => {
    const all = gatherings(Math.PI / 2);
    const tip = (leaves: Gathering): Vec2 => nth(nth(leaves, 0), nth(leaves, 0).length - 1).at;
    const [first, last] = [tip(nth(all, 1)), tip(nth(all, all.length - 1))];
    expect(distance(first, last)).toBeGreaterThan(0.08 * design.needs.thick.book.width);
  });
});

test('endpapers are on boards and flyleaves of a hardback, and on no paperback', () => {
  const papered = (id: string): string[] =>
    bookMeshes(defined(BOOKS.find(([name]) => name === id))[1], 'thin', stand([1, 1]))
      .filter(({ faces }) => faces.some(({ face, count }) => face === 'endpaper' && count > 0))
      .map(({ part }) => part);
  expect(papered('choir-book')).toEqual([
    'frontBoard',
    'backBoard',
    'frontJoint',
    'backJoint',
    'frontPages',
    'backPages',
  ]);
  expect(papered('shore-guide')).toEqual([]);
});

/** Least and greatest coordinate along each axis. */
function extents(positions: Float32Array): number[] {
  return [0, 1, 2].flatMap((axis) => {
    const along = Array.from(positions).filter((_, i) => i % 3 === axis);
    return [Math.min(...along), Math.max(...along)];
  });
}

/** Outline of a gathering in the section, round it once. */
const outlineOf = (leaves: Gathering): Vec2[] => [
  ...nth(leaves, 0).map(({ at }) => at),
  ...nth(leaves, leaves.length - 1)
    .map(({ at }) => at)
    .reverse(),
];

/** How deep a point lies inside a polygon, 0 outside. */
function depthIn(polygon: readonly Vec2[], point: Vec2): number {
  let inside = false;
  let nearest = Number.POSITIVE_INFINITY;
  polygon.forEach((a, i) => {
    const b = nth(polygon, (i + 1) % polygon.length);
    const [dx, dy] = subtract(b, a);
    const [px, py] = subtract(point, a);
    const share = Math.max(0, Math.min(1, (px * dx + py * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, Math.hypot(px - share * dx, py - share * dy));
    if (a[1] > point[1] !== b[1] > point[1] && px < (dx * py) / dy) inside = !inside;
  });
  return inside ? nearest : 0;
}
