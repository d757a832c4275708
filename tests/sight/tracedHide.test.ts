import { describe, expect, it } from 'vitest';
import { distance, OUTLINE_LIMITS, type Vec2 } from '../../src/core/index.ts';
import { doubleArea, isSimplePolygon } from '../../src/core/math/simplePolygon.ts';
import { labPicture } from '../../src/sight/lab.ts';
import { tracedHide } from '../../src/sight/tracedHide.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { normalDraws } from './drawnPicture.ts';

const SIZE = { width: 1200, height: 900 };
const [MIDDLE, ROUND]: [Vec2, number] = [[610, 440], 300];
/** Distance from the middle to the edge of the hide, as a share of `ROUND`, by direction. */
const edge = (angle: number): number =>
  1 + 0.12 * Math.cos(2 * angle) + 0.08 * Math.sin(3 * angle) + 0.05 * Math.cos(7 * angle);
const SPOTS: readonly Vec2[] = [
  [500, 400],
  [700, 520],
];

type Colour = readonly [number, number, number];

/** A hide on planks, with two dark spots of 12 pixels' radius, each colour with noise; light falls off to the right. */
function hidePicture(leather: Colour, over: (at: Vec2) => Colour | null = () => null) {
  const random = normalDraws(5);
  const rgba = new Uint8ClampedArray(4 * SIZE.width * SIZE.height);
  for (let y = 0, i = 0; y < SIZE.height; y++)
    for (let x = 0; x < SIZE.width; x++, i += 4) {
      const [dx, dy] = [x + 0.5 - MIDDLE[0], y + 0.5 - MIDDLE[1]];
      const isHide = Math.hypot(dx, dy) < ROUND * edge(Math.atan2(dy, dx));
      const isSpot = SPOTS.some((spot) => distance(spot, [x + 0.5, y + 0.5]) < 12);
      const plank: Colour = Math.floor(y / 90) % 2 === 0 ? [150, 150, 145] : [132, 130, 128];
      const colour = over([x, y]) ?? (isHide ? (isSpot ? [40, 25, 15] : leather) : plank);
      const light = 1.05 - (0.2 * x) / SIZE.width;
      const grain = 4 * random();
      for (let k = 0; k < 3; k++) rgba[i + k] = light * nth(colour, k) + grain;
      rgba[i + 3] = 255;
    }
  return { ...SIZE, rgba };
}

/** Farthest that a corner stands from the edge of the hide, pixels, along the ray from its middle. */
const farthest = (outline: readonly Vec2[]): number =>
  Math.max(
    ...outline.map(([x, y]) => {
      const [dx, dy] = [x - MIDDLE[0], y - MIDDLE[1]];
      return Math.abs(Math.hypot(dx, dy) - ROUND * edge(Math.atan2(dy, dx)));
    }),
  );

/** Area within the edge: half the integral of its distance squared over the angle. */
const AREA = (ROUND * ROUND * Math.PI * (2 + 0.12 ** 2 + 0.08 ** 2 + 0.05 ** 2)) / 2;

describe('a hide on the floor', () => {
  it.each([
    ['brown', [120, 72, 40]],
    ['pale', [205, 180, 150]],
  ] as const)('of %s leather is traced within 4 px and 1 % of its area', (_, leather) => {
    const { outline, defects, whole } = defined(tracedHide(hidePicture(leather)));
    expect(whole).toBe(true);
    expect(farthest(outline)).toBeLessThan(4);
    expect(Math.abs(doubleArea(outline) / 2) / AREA - 1).toBeCloseTo(0, 2);
    expect(outline.length).toBeLessThanOrEqual(OUTLINE_LIMITS.corners);
    expect(isSimplePolygon(outline)).toBe(true);
    expect(defects).toHaveLength(2);
    for (const spot of SPOTS) {
      const near = defects.filter((defect) => defect.every((corner) => Math.abs(distance(corner, spot) - 12) < 4));
      expect(near).toHaveLength(1);
    }
  });

  it('is told from a page of the sheet, on it or beside it', () => {
    const pages: Vec2[][] = [
      [
        [560, 300],
        [660, 300],
        [660, 400],
        [560, 400],
      ],
      [
        [60, 60],
        [200, 60],
        [200, 260],
        [60, 260],
      ],
    ];
    const paper = ([x, y]: Vec2): Colour | null => {
      const isOn = pages.some(
        ([a, , b]) =>
          x >= nth(defined(a), 0) && x < nth(defined(b), 0) && y >= nth(defined(a), 1) && y < nth(defined(b), 1),
      );
      return isOn ? (((x >> 4) + (y >> 4)) % 2 === 0 ? [235, 235, 235] : [20, 20, 20]) : null;
    };
    const { outline, defects } = defined(tracedHide(hidePicture([120, 72, 40], paper), pages));
    expect(farthest(outline)).toBeLessThan(4);
    expect(defects).toHaveLength(2);
  });

  it('is said not to be whole where it leaves the picture', () => {
    const wide = ([x, y]: Vec2): Colour | null => (x > 500 && Math.abs(y - 450) < 150 ? [120, 72, 40] : null);
    expect(defined(tracedHide(hidePicture([120, 72, 40], wide))).whole).toBe(false);
  });

  it('is not seen on an empty floor, in black, or in a picture of one pixel', () => {
    expect(
      tracedHide(
        hidePicture([120, 72, 40], ([, y]) => (Math.floor(y / 90) % 2 === 0 ? [150, 150, 145] : [132, 130, 128])),
      ),
    ).toBeNull();
    expect(tracedHide({ ...SIZE, rgba: new Uint8ClampedArray(4 * SIZE.width * SIZE.height) })).toBeNull();
    expect(tracedHide({ width: 1, height: 1, rgba: [9, 9, 9, 255] })).toBeNull();
  });
});

describe('CIELAB', () => {
  it('is that of reference colours', () => {
    // sRGB red, green and blue by CIE 15:2004 and IEC 61966-2-1, as tables print them (from memory).
    const lab = labPicture({ width: 3, height: 1, rgba: [255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255] }, 1).values;
    [53.24, 80.09, 67.2, 87.73, -86.18, 83.18, 32.3, 79.19, -107.86].forEach((value, i) => {
      expect(Math.abs(nth(lab, i) - value)).toBeLessThan(0.1);
    });
  });
});
