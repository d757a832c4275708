import { StandardFontEmbedder, StandardFonts } from '@cantoo/pdf-lib';
import { isInside } from '../../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { nth } from '../nth.ts';

/** Published metrics of Helvetica, as the PDF library has them, for any plain sans serif. */
export const helvetica = StandardFontEmbedder.for(
  StandardFonts.Helvetica as unknown as Parameters<typeof StandardFontEmbedder.for>[0],
);
const { font } = helvetica as unknown as { font: { CapHeight: number; Descender: number } };
export const [CAPITAL, TAIL] = [font.CapHeight / 1000, -font.Descender / 1000] as const;

export interface Words {
  /** Start of the base line. */
  readonly at: Vec2;
  readonly text: string;
  /** Of the letters' body (em), mm. */
  readonly height: number;
  readonly rotation: number;
  /** As a file gives it; null where the font does. */
  readonly width: number | null;
}

/** Corners of the box that words take, counterclockwise from the start of their base line; smaller all round by a pad. */
export function wordsBox({ at: [x, y], text, height, rotation, width }: Words, pad = 0): Vec2[] {
  const long = width ?? helvetica.widthOfTextAtSize(text, height);
  const at = (u: number, v: number): Vec2 => [
    x + u * Math.cos(rotation) - v * Math.sin(rotation),
    y + u * Math.sin(rotation) + v * Math.cos(rotation),
  ];
  const [low, high] = [pad - TAIL * height, CAPITAL * height - pad];
  return [at(pad, low), at(long - pad, low), at(long - pad, high), at(pad, high)];
}

const turn = (a: Vec2, b: Vec2, c: Vec2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
const isCrossed = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean =>
  turn(a, b, c) > 0 !== turn(a, b, d) > 0 && turn(c, d, a) > 0 !== turn(c, d, b) > 0;

/** Whether a chain of straight stretches has a point in a box. */
export const meets = (points: readonly Vec2[], box: readonly Vec2[]): boolean =>
  !areApart(points, box) && isOver(points, box);

/** Whether the boxes round two sets of points lie apart, as a quick test. */
const areApart = (a: readonly Vec2[], b: readonly Vec2[]): boolean =>
  ([0, 1] as const).some((axis) => {
    const ends = (points: readonly Vec2[]): [number, number] =>
      points.reduce<[number, number]>(
        ([low, high], point) => [Math.min(low, point[axis]), Math.max(high, point[axis])],
        [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
      );
    const [[low, high], [from, to]] = [ends(a), ends(b)];
    return high < from || to < low;
  });

const isOver = (points: readonly Vec2[], box: readonly Vec2[]): boolean =>
  points.some((point) => isInside(point, box)) ||
  points.slice(1).some((b, i) => box.some((c, k) => isCrossed(nth(points, i), b, c, nth(box, (k + 1) % box.length))));
