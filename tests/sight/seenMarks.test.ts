import { describe, expect, it } from 'vitest';
import { placeOfMark, type Vec2 } from '../../src/core/index.ts';
import type { GreyPicture } from '../../src/sight/greyPicture.ts';
import { seenMarks } from '../../src/sight/seenMarks.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { drawnPicture, normalDraws, pageMaps, pageShade } from './drawnPicture.ts';

const SIZE = { width: 840, height: 640 };
/** An A4 page on its long side, seen aslant on a dark table. */
const { pixel, place } = pageMaps(
  [
    [170, 40],
    [660, 70],
    [770, 610],
    [80, 560],
  ],
  { width: 297, height: 210 },
);
const upright = ([x, y]: Vec2): Vec2 => [-y, x];
const lying = ([x, y]: Vec2): Vec2 => [y, -x];

interface Look {
  readonly blur: number;
  readonly noise: number;
  readonly hidden?: (id: number) => boolean;
  readonly over?: (place: Vec2) => number | null;
}

function page({ blur, noise, hidden, over = () => null }: Look): GreyPicture {
  const shade = pageShade('A4', 0, hidden);
  return drawnPicture({
    ...SIZE,
    blur,
    noise,
    place: (at) => upright(place(at)),
    shade: (at) => over(at) ?? shade(at) ?? 0.1,
  });
}

/** Root mean square of what the coordinates of all corners are off, pixels, and of the same over its stated uncertainty. */
function errors(picture: GreyPicture): { count: number; off: number; ofStated: number; blur: number } {
  const { marks, blur } = seenMarks(picture);
  const squares = marks.flatMap(({ corners, seen, u }) =>
    corners.flatMap((corner, i) => {
      const [x, y] = pixel(lying(corner));
      return [nth(seen, i)[0] - x, nth(seen, i)[1] - y].map((error) => ({ square: error ** 2, u }));
    }),
  );
  const mean = (values: number[]): number => Math.sqrt(values.reduce((sum, each) => sum + each, 0) / values.length);
  return {
    count: marks.length,
    off: mean(squares.map(({ square }) => square)),
    ofStated: mean(squares.map(({ square, u }) => square / u ** 2)),
    blur,
  };
}

const quarterTurned = ({ width, height, values }: GreyPicture): GreyPicture => ({
  width: height,
  height: width,
  values: values.map((_, i) => defined(values[(height - 1 - (i % height)) * width + Math.floor(i / height)])),
});

const ids = (picture: GreyPicture): number[] => seenMarks(picture).marks.map(({ mark }) => Number(mark));

describe('marks in a photograph', () => {
  const sharp = page({ blur: 0.5, noise: 0 });

  it('stand at their drawn corners within 0.05 px without noise, and 0.15 px with noise and blur, as sure as they say', () => {
    const clean = errors(sharp);
    expect(clean.count).toBe(24);
    expect(clean.off).toBeLessThan(0.05);
    const rough = errors(page({ blur: 1.2, noise: 5 }));
    expect(rough.count).toBe(24);
    expect(rough.off).toBeLessThan(0.15);
    for (const { ofStated } of [clean, rough]) {
      expect(ofStated).toBeGreaterThan(0.4);
      expect(ofStated).toBeLessThan(1.6);
    }
    // From 10 to 90 % a normal blur takes 2.563 of its standard deviations; the cells here are only four pixels wide.
    expect(rough.blur / (2.563 * 1.2)).toBeGreaterThan(0.8);
    expect(rough.blur / (2.563 * 1.2)).toBeLessThan(1.2);
    expect(clean.blur).toBeLessThan(2.2);
  });

  it('are told by page and place, turned however', () => {
    const { marks } = seenMarks(sharp);
    for (const { page, mark, corners } of marks) {
      expect(page).toBe('A4 1');
      expect(corners).toEqual(defined(placeOfMark(Number(mark))).corners);
    }
    const once = quarterTurned(sharp);
    const twice = quarterTurned(once);
    const corner = (picture: GreyPicture) => defined(seenMarks(picture).marks.find(({ mark }) => mark === '7')).seen[0];
    const [x, y] = defined(corner(sharp));
    const [a, b] = defined(corner(once));
    const [p, q] = defined(corner(twice));
    expect(Math.hypot(a - (SIZE.height - y), b - x)).toBeLessThan(0.05);
    expect(Math.hypot(p - (SIZE.width - x), q - (SIZE.height - y))).toBeLessThan(0.05);
  });

  it('are found where others of their page are hidden or crossed by a line, and none where there is none', () => {
    const half = page({ blur: 0.6, noise: 3, hidden: (id) => id % 2 === 0 });
    expect(ids(half).sort((a, b) => a - b)).toEqual(Array.from({ length: 12 }, (_, i) => 2 * i + 1));
    // A dark stroke that runs into one side of each mark of the left edge.
    const struck = page({
      blur: 0.6,
      noise: 0,
      over: ([x, y]) => (x > -89 && x < -87 && y > -140 && y < 140 ? 0.03 : null),
    });
    expect(ids(struck)).toHaveLength(24);
  });

  it('are left out where the edge of what covers them was taken for a side', () => {
    // Aslant over the rim of each mark of the left edge, from its lower corner to 1.7 mm in at its upper one.
    const [first, step] = [-131.5, 263 / 7];
    const edge = (y: number): number => -96.2 + 0.1 * (y - first - step * Math.round((y - first) / step));
    const covered = page({ blur: 0.6, noise: 0, over: ([x, y]) => (x > -98 && x < edge(y) ? 0.6 : null) });
    const { count, off } = errors(covered);
    expect(count).toBeGreaterThanOrEqual(16);
    expect(off).toBeLessThan(0.1);
  });

  it('count for nothing when two are alike', () => {
    const shade = pageShade('A4', 0);
    const pair = drawnPicture({
      width: 900,
      height: 640,
      place: ([x, y]) => [x / 2 - 110, 150 - y / 2],
      shade: ([x, y]) => shade([x, y]) ?? shade([x - 220, y]) ?? 0.1,
      samples: 2,
    });
    expect(ids(pair)).toEqual([]);
  });

  it('are not seen in noise, chequered cloth, a gradient, black, or a picture of one pixel', () => {
    const random = normalDraws(3);
    const of = (value: (x: number, y: number) => number): GreyPicture => ({
      ...SIZE,
      values: Uint8Array.from({ length: SIZE.width * SIZE.height }, (_, i) =>
        Math.max(0, Math.min(255, value(i % SIZE.width, Math.floor(i / SIZE.width)))),
      ),
    });
    for (const picture of [
      of(() => 128 + 60 * random()),
      of((x, y) => (x + y) / 6),
      of((x, y) => (x % 24 < 17 && y % 24 < 17 ? 30 : 230)),
      of(() => 0),
      { width: 1, height: 1, values: Uint8Array.of(90) },
    ])
      expect(seenMarks(picture)).toEqual({ marks: [], blur: 0 });
  });
});
