import { expect, test } from 'vitest';
import { isInside, pointToSegment, polygonArea, type Vec2 } from '../../src/core/index.ts';
import { normalDraw, randomDraws } from '../../src/core/math/randomDraws.ts';
import type { ColourPicture } from '../../src/sight/colourPicture.ts';
import { leatherOutline } from '../../src/sight/leatherOutline.ts';

const [WIDTH, HEIGHT] = [1200, 900];
const LIMITS = { corners: 300, defects: 60 };

/** A hide with legs and neck: how far its edge is from its middle, pixels, by direction. */
const radius = (angle: number): number => 300 + 45 * Math.cos(4 * angle + 0.4) + 30 * Math.cos(2 * angle);
const HIDE: readonly Vec2[] = Array.from({ length: 240 }, (_, i) => {
  const angle = (i / 240) * 2 * Math.PI;
  return [600 + radius(angle) * Math.cos(angle), 450 + radius(angle) * Math.sin(angle)];
});
const isLeather = ([x, y]: Vec2): boolean => Math.hypot(x - 600, y - 450) < radius(Math.atan2(y - 450, x - 600));
const HOLE: readonly Vec2[] = [
  [520, 380],
  [560, 380],
  [560, 420],
  [520, 420],
];
const PAGE: readonly Vec2[] = [
  [660, 390],
  [780, 390],
  [780, 550],
  [660, 550],
];

interface Colours {
  readonly floor: (x: number, y: number) => readonly [number, number, number];
  readonly leather: readonly [number, number, number];
  readonly spot?: readonly [number, number, number];
  readonly noise?: number;
}

function drawn({ floor, leather, spot, noise = 6 }: Colours): ColourPicture {
  const draws = randomDraws(5);
  const rgba = new Uint8ClampedArray(4 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const at: Vec2 = [x + 0.5, y + 0.5];
      const isPage = isInside(at, PAGE);
      const colour = isPage
        ? (x >> 4) % 2 === (y >> 4) % 2
          ? ([250, 250, 250] as const)
          : ([20, 20, 20] as const)
        : spot !== undefined && isInside(at, HOLE)
          ? spot
          : isLeather(at)
            ? leather
            : floor(x, y);
      // Light falls off from left to right.
      const light = 1 - (0.25 * x) / WIDTH;
      rgba.set([...colour.map((value) => value * light + noise * normalDraw(draws)), 255], 4 * (y * WIDTH + x));
    }
  return { width: WIDTH, height: HEIGHT, rgba };
}

const offOutline = (point: Vec2): number =>
  Math.min(...HIDE.map((corner, i) => pointToSegment(point, corner, HIDE[(i + 1) % HIDE.length]!)));

const FLOORS: readonly (readonly [string, Colours])[] = [
  ['tan leather on a grey floor', { floor: () => [130, 130, 128], leather: [188, 134, 84] }],
  [
    'brown leather on pale boards',
    { floor: (_, y) => (y % 90 < 4 ? [150, 120, 90] : [215, 190, 150]), leather: [96, 58, 38] },
  ],
  [
    'pale leather on a dark cloth',
    { floor: (x) => ((x >> 3) % 2 ? [40, 46, 60] : [48, 54, 70]), leather: [226, 200, 170] },
  ],
];

test.each(FLOORS)('the outline of %s is found within 3 pixels, its page and its hole within it', (_, colours) => {
  const found = leatherOutline(drawn({ ...colours, spot: [30, 24, 20] }), [PAGE], LIMITS);
  expect(found).not.toBeNull();
  const { outline, defects } = found!;
  expect(Math.max(...outline.map(offOutline))).toBeLessThan(3);
  expect(Math.abs(polygonArea(outline)) / Math.abs(polygonArea(HIDE))).toBeCloseTo(1, 2);
  expect(outline.length).toBeLessThanOrEqual(LIMITS.corners);
  if (colours.leather[0] > 120) {
    expect(defects).toHaveLength(1);
    expect(isInside([540, 400], defects[0]!)).toBe(true);
    expect(Math.abs(polygonArea(defects[0]!))).toBeLessThan(4000);
  }
});

test('where nothing stands out from the floor there is no proposal', () => {
  const bare = drawn({ floor: () => [150, 120, 90], leather: [150, 120, 90] });
  expect(leatherOutline(bare, [PAGE], LIMITS)).toBeNull();
  expect(leatherOutline({ width: 4, height: 4, rgba: new Uint8ClampedArray(64) }, [], LIMITS)).toBeNull();
});
