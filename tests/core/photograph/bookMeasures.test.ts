import { expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import type { Vec3 } from '../../../src/core/math/vec3.ts';
import { type BookPhotographs, measuredBook } from '../../../src/core/photograph/bookMeasures.ts';
import { photographPatches } from '../../../src/core/photograph/photographPatches.ts';
import { paperScale, printScale } from '../../../src/core/photograph/printScale.ts';
import { draws, photographed, standpointsRound, type TrueScene } from './photographed.ts';

/** A rounded hardback that is thicker at the spine, mm. */
const BOOK = { width: 148, height: 215, spine: 42, foreEdge: 38, rise: 9, board: 2.6 };

function scene(points: readonly Vec3[], hides: TrueScene['hides'], noise: number): TrueScene {
  return {
    lens: { focal: 3300, centre: [2010, 1485], k1: 0.02, k2: -0.01 },
    standpoints: standpointsRound(3, 720, draws(11)),
    pages: [-106, 106].map((x, page) => ({
      ...{ paper: 'A4', page, across: 1, along: 1, height: () => 0 },
      placement: { at: [x, 0], angle: 0 },
    })),
    points,
    hides,
    ...{ width: 4000, height: 3000, focal: 3200, uMark: noise, uPoint: 2 * noise },
  };
}

function bookAt(noise: number, change: Partial<BookPhotographs> = {}): BookPhotographs {
  const [x, y] = [BOOK.width / 2, BOOK.height / 2];
  const [s, f] = [BOOK.spine / 2, BOOK.foreEdge / 2];
  const lying: Vec3[] = [
    [-x, y, BOOK.spine],
    [x, y, BOOK.foreEdge],
    [x, -y, BOOK.foreEdge],
    [-x, -y, BOOK.spine],
  ];
  const head = BOOK.height;
  const standing: Vec3[] = [
    [-x, s, head],
    [x, f, head],
    [x, -f, head],
    [-x, -s, head],
    [-x - BOOK.rise, 0, head],
    [x, f - BOOK.board, head],
  ];
  return {
    lying: photographed(
      scene(lying, ([p, q]) => Math.abs(p) < x + 15 && Math.abs(q) < y + 15, noise),
      draws(1),
    ),
    standing: photographed(
      scene(standing, ([p, q]) => Math.abs(p) < x + 70 && Math.abs(q) < s + 70, noise),
      draws(2),
    ),
    print: printScale('A4', { across: 190, along: 280 }, 0.25),
    thickness: null,
    foreEdgeThickness: null,
    height: null,
    isParallel: false,
    ...change,
  };
}

const figure = (found: ReturnType<typeof measuredBook>, path: string) =>
  found.measures.find((measure) => measure.path === path)!;

test('a book that lies and stands is measured whole, with no figure by hand', () => {
  const found = measuredBook(bookAt(1e-3));
  expect(found.measures.map(({ path }) => path)).toEqual([
    'book.width_mm',
    'book.height_mm',
    'book.thickness_mm',
    'book.foreEdgeThickness_mm',
    'book.spine.rise_mm',
    'book.boardThickness_mm',
  ]);
  // The upper board slants from spine to fore-edge, so its true width is a little more than seen from above.
  expect(figure(found, 'book.width_mm').value).toBeCloseTo(Math.hypot(BOOK.width, BOOK.spine - BOOK.foreEdge), 1);
  expect(figure(found, 'book.height_mm').value).toBeCloseTo(BOOK.height, 1);
  expect(figure(found, 'book.thickness_mm').value).toBeCloseTo(BOOK.spine, 1);
  expect(figure(found, 'book.foreEdgeThickness_mm').value).toBeCloseTo(BOOK.foreEdge, 1);
  expect(figure(found, 'book.spine.rise_mm').value).toBeCloseTo(BOOK.rise, 1);
  expect(figure(found, 'book.boardThickness_mm').value).toBeCloseTo(BOOK.board, 1);
  expect(found.swell!.value).toBeCloseTo(BOOK.spine - BOOK.foreEdge, 1);
  expect(found.outOfSquare!.value).toBeCloseTo(0, 1);
});

test('standing photographs make the thickness better known than lying ones alone, and a reading by hand both', () => {
  const uOf = (change: Partial<BookPhotographs>): number =>
    figure(measuredBook(bookAt(0.3, change)), 'book.thickness_mm').u;
  const alone = uOf({ standing: [] });
  const together = uOf({});
  const typed = uOf({ thickness: { value: BOOK.spine, u: 0.1 } });
  expect(together).toBeLessThan(alone);
  expect(typed).toBeLessThan(together);
  expect(typed).toBeLessThan(0.1);
});

test('without photographs nothing is measured, and no mark says so', () => {
  const none = measuredBook(bookAt(0.3, { lying: [], standing: [] }));
  expect(none.measures).toEqual([]);
  expect([none.lying, none.standing, none.swell]).toEqual([null, null, null]);
  const [first] = bookAt(0.3).lying;
  const blank = measuredBook(bookAt(0.3, { lying: [{ ...first!, marks: [] }], standing: [] }));
  expect(blank.lying).toEqual({ ok: false, code: 'noMarks' });
});

test('what was measured goes into the job with its doubts and correlations, and the job is sound', () => {
  const found = measuredBook(bookAt(0.3));
  const before = parseJob({
    ...EXAMPLE_JOBS[1].document,
    correlations: [{ a: 'book.width_mm', b: 'book.height_mm', r: 0.9 }],
  });
  if (!before.ok) throw new Error('the example is no job');
  const document = patched(EXAMPLE_JOBS[1].document, photographPatches(before.job, found, 'ruler A'));
  const after = parseJob(document);
  if (!after.ok) throw new Error(JSON.stringify(after.issues));
  const { book, doubts, correlations } = after.job;
  expect(Math.abs(book.width_mm - BOOK.width)).toBeLessThan(1);
  expect(book.spine.shape).toBe('rounded');
  expect(doubts['book.width_mm']).toMatchObject({ distribution: 'normal', from: 'photograph', with: 'ruler A' });
  expect(doubts['book.width_mm']!.u).toBeGreaterThanOrEqual(figure(found, 'book.width_mm').u - 1e-9);
  // The photographs say how the two hang together; what was said before is gone.
  expect(correlations.filter(({ a, b }) => a === 'book.width_mm' && b === 'book.height_mm')).toHaveLength(1);
  expect(correlations.every(({ r }) => Math.abs(r) < 1)).toBe(true);
});

test('a reading of a bar is the scale of the print; one far off is refused with what to do', () => {
  expect(printScale('A4', { across: null, along: 273 }, 0.25)).toMatchObject({
    size: { value: 0.975 },
    across: null,
    along: { value: 0.975, u: 0.25 / 280 },
  });
  expect(printScale('Letter', { across: null, along: null }, 0.25).size).toEqual({ value: 1, u: 0.01 });
  expect(() => printScale('A4', { across: 19, along: null }, 0.25)).toThrow(/measures 19 mm.*190 mm.*actual size/);
});

test('a plain paper is as large as its standard allows, in each direction by itself', () => {
  const { size, difference } = paperScale('A4', { across: null, along: null }, 0.25);
  const each = 2 / Math.sqrt(3) / 210;
  expect(Math.sqrt(size.u ** 2 + difference ** 2 / 4)).toBeCloseTo(each, 12);
});
