import { expect, test } from 'vitest';
import type { Photograph } from '../../../src/core/photograph/photograph.ts';
import type { PrintScale, Scene } from '../../../src/core/photograph/scene.ts';
import { solveScene } from '../../../src/core/photograph/scene.ts';
import { draws, photographed, standpointsRound, type TrueScene } from './photographed.ts';

const EXACT: PrintScale = { size: { value: 1, u: 1e-6 }, difference: 1e-6, across: null, along: null };
const BOOK = { width: 150, height: 220, thickness: 40 };
const away = (a: readonly number[] | null | undefined, b: readonly number[] | null | undefined): number =>
  Math.hypot(...a!.map((each, i) => each - b![i]!));

function bookScene(count: number, change: Partial<TrueScene> = {}): TrueScene {
  const [x, y] = [BOOK.width / 2, BOOK.height / 2];
  return {
    lens: { focal: 3200, centre: [2005, 1490], k1: 0.03, k2: -0.02 },
    standpoints: standpointsRound(count, 700, draws(7)),
    pages: [0, 1].map((page) => ({
      paper: 'A4',
      page,
      placement: { at: [page === 0 ? -106 : 107, page * 4], angle: page * 0.02 },
      across: 1,
      along: 1,
      height: () => 0,
    })),
    points: [
      [-x, y, BOOK.thickness],
      [x, y, BOOK.thickness],
      [x, -y, BOOK.thickness],
      [-x, -y, BOOK.thickness],
    ],
    hides: ([p, q]) => Math.abs(p) < x + 15 && Math.abs(q) < y + 15,
    width: 4000,
    height: 3000,
    focal: 3200,
    uMark: 1e-3,
    uPoint: 1e-3,
    ...change,
  };
}

const solved = (photographs: readonly Photograph[], thickness = { value: 40, u: 60 }): Scene => {
  const scene = solveScene(photographs, EXACT, { heightOf: [0, 0, 0, 0], heights: [thickness] });
  if (!scene.ok) throw new Error(scene.code);
  return scene;
};
const widthOf = (scene: Scene) => scene.figures([([a, b]) => away(a, b)]).figures[0]!;

test('three photographs without noise give the book, its thickness and the joint of the pages to a hundredth of a millimetre', () => {
  const scene = solved(photographed(bookScene(3), draws(1)));
  expect(widthOf(scene).value).toBeCloseTo(BOOK.width, 2);
  expect(scene.points[0]![2]).toBeCloseTo(BOOK.thickness, 2);
  const [first, second] = [scene.pages.get('A4 1')!, scene.pages.get('A4 2')!];
  expect(away(first.at, second.at)).toBeCloseTo(Math.hypot(213, 4), 2);
  expect(Math.abs(second.angle - first.angle)).toBeCloseTo(0.02, 4);
});

test('thickness is told by slanted views and not by one from straight above', () => {
  const above = bookScene(1, { standpoints: [{ turn: [0, 0, 0], shift: [0, 0, 700] }], uMark: 0.2, uPoint: 0.5 });
  const one = solved(photographed(above, draws(2)));
  const three = solved(photographed(bookScene(3, { uMark: 0.2, uPoint: 0.5 }), draws(2)));
  const uThickness = (scene: Scene) => scene.figures([([a]) => a![2]]).figures[0]!.u;
  expect(uThickness(one)).toBeGreaterThan(5);
  expect(uThickness(three)).toBeLessThan(0.4);
});

test('the doubt of the print is stated apart and grows with the length', () => {
  const photographs = photographed(bookScene(3, { uMark: 0.2, uPoint: 0.5 }), draws(3));
  // A thickness that is known well would tell the size of the print too.
  const scene = solveScene(
    photographs,
    { size: { value: 1, u: 0.01 }, difference: 0.002, across: null, along: null },
    { heightOf: [0, 0, 0, 0], heights: [{ value: 40, u: 10 }] },
  );
  if (!scene.ok) throw new Error(scene.code);
  const [width, height] = scene.figures([([a, b]) => away(a, b), ([a, , , d]) => away(a, d)]).figures;
  expect(width!.uPrint / width!.value).toBeCloseTo(0.01, 3);
  expect(height!.uPrint).toBeGreaterThan(width!.uPrint);
  expect(Math.sqrt(width!.u ** 2 - width!.uPrint ** 2)).toBeLessThan(0.25);
});

test('a mark that was misread is found out and changes nothing', () => {
  const photographs = photographed(bookScene(3, { uMark: 0.2, uPoint: 0.5 }), draws(4));
  const [first, ...rest] = photographs as [Photograph, ...Photograph[]];
  const wrong = first.marks[3]!;
  const misread: Photograph = {
    ...first,
    marks: first.marks.map((mark) =>
      mark === wrong ? { ...mark, seen: mark.seen.map(([x, y]) => [x + 25, y - 14] as const) } : mark,
    ),
  };
  const [sound, disturbed] = [solved(photographs), solved([misread, ...rest])];
  expect(disturbed.doubtful).toEqual([{ photograph: 0, page: wrong.page, mark: wrong.mark }]);
  expect(Math.abs(widthOf(disturbed).value - widthOf(sound).value)).toBeLessThan(0.1);
});

test('a photograph that no page ties to the others is left out, and the rest is solved', () => {
  const photographs = photographed(bookScene(3), draws(5));
  const [first, second, third] = photographs as [Photograph, Photograph, Photograph];
  const strange = { ...third, marks: third.marks.map((mark) => ({ ...mark, page: 'Letter 1' })) };
  const scene = solved([first, second, strange]);
  expect(scene.views.map((view) => view !== null)).toEqual([true, true, false]);
  expect(widthOf(scene).value).toBeCloseTo(BOOK.width, 1);
});

test('a camera held upright, or that wrote no focal length, is found too', () => {
  const scene = bookScene(3, { focal: null });
  const photographs = photographed(scene, draws(6));
  // The third is turned by a quarter: x right is what was down.
  const upright = photographs.map((photograph, i): Photograph => {
    if (i < 2) return photograph;
    const turned = ([x, y]: readonly [number, number]) => [photograph.height - y, x] as const;
    return {
      ...photograph,
      width: photograph.height,
      height: photograph.width,
      marks: photograph.marks.map((mark) => ({ ...mark, seen: mark.seen.map(turned) })),
      points: photograph.points.map((point) => ({ ...point, seen: turned(point.seen) })),
    };
  });
  const found = solved(upright);
  expect(found.views[0]!.lens.focal).toBeCloseTo(3200, -1);
  expect(widthOf(found).value).toBeCloseTo(BOOK.width, 1);
});

test('nothing, too little or nonsense is refused and not solved', () => {
  const [photograph] = photographed(bookScene(1), draws(8)) as [Photograph];
  const only = (marks: Photograph['marks']): string => {
    const scene = solveScene([{ ...photograph, marks, points: [] }], EXACT);
    return scene.ok ? 'solved' : scene.code;
  };
  expect(only([])).toBe('noMarks');
  expect(
    only([
      {
        ...photograph.marks[0]!,
        corners: photograph.marks[0]!.corners.slice(0, 3),
        seen: photograph.marks[0]!.seen.slice(0, 3),
      },
    ]),
  ).toBe('fewMarks');
  const line = photograph.marks.map((mark) => ({ ...mark, seen: mark.seen.map(([x]) => [x, x] as const) }));
  expect(only(line)).toBe('unsolved');
});

test('a corner of which each photograph shows one side counts across that side alone', () => {
  const seen = photographed(bookScene(3), draws(4));
  // In each photograph the corner slipped along a line of another direction, by 20 pixels.
  const [fine, rough] = [1e-6, 1e4];
  const slipped = seen.map((photograph, i): Photograph => {
    const [p, q] = [Math.cos(i), Math.sin(i)];
    return {
      ...photograph,
      points: photograph.points.map((each) =>
        each.point === 0
          ? {
              ...each,
              seen: [each.seen[0] + 20 * p, each.seen[1] + 20 * q],
              u: [p * p * rough + q * q * fine, p * q * (rough - fine), q * q * rough + p * p * fine],
            }
          : each,
      ),
    };
  });
  expect(widthOf(solved(slipped)).value).toBeCloseTo(BOOK.width, 2);
});
