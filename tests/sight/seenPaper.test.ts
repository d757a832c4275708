import { describe, expect, it } from 'vitest';
import { paperCorners, type Vec2 } from '../../src/core/index.ts';
import { seenPaper } from '../../src/sight/seenPaper.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { drawnPicture, pageMaps } from './drawnPicture.ts';

const SIZE = { width: 800, height: 620 };
const A4 = { width: 210, height: 297 };
const upright: Vec2[] = [
  [300, 60],
  [600, 80],
  [650, 590],
  [230, 560],
];
const { pixel, place } = pageMaps(upright, A4);
/** Pale wood with a grain. */
const wood = ([x, y]: Vec2): number => 0.3 + 0.06 * Math.sin(x / 3 + Math.sin(y / 40));
const paper = ([x, y]: Vec2): number | null => (Math.abs(x) < 105 && Math.abs(y) < 148.5 ? 0.85 : null);
const picture = (shade: (at: Vec2) => number | null, ground: (at: Vec2) => number = wood) =>
  drawnPicture({ ...SIZE, blur: 0.7, noise: 4, samples: 2, place, shade: (at) => shade(at) ?? ground(at) });

describe('a plain paper', () => {
  it('is seen with its corners within 0.4 px, a dark or pale book on it', () => {
    for (const light of [0.05, 0.6]) {
      const book = ([x, y]: Vec2): number | null => (Math.abs(x - 10) < 70 && Math.abs(y + 15) < 100 ? light : null);
      const { corners, seen, page, u } = defined(
        seenPaper(
          picture((at) => book(at) ?? paper(at)),
          'A4',
        ),
      );
      expect(page).toBe('A4');
      expect(corners).toEqual(paperCorners('A4'));
      corners.forEach((corner, i) => {
        const [x, y] = pixel(corner);
        expect(Math.hypot(nth(seen, i)[0] - x, nth(seen, i)[1] - y)).toBeLessThan(0.4);
      });
      expect(u).toBeLessThan(0.3);
    }
  });

  it('is seen where the book stands over one of its sides', () => {
    const over = ([x, y]: Vec2): number | null => (x > 30 && x < 160 && Math.abs(y + 10) < 50 ? 0.08 : null);
    const { corners, seen } = defined(
      seenPaper(
        picture((at) => over(at) ?? paper(at)),
        'A4',
      ),
    );
    corners.forEach((corner, i) => {
      const [x, y] = pixel(corner);
      expect(Math.hypot(nth(seen, i)[0] - x, nth(seen, i)[1] - y)).toBeLessThan(0.5);
    });
  });

  it('is not seen where there is none, or one of another shape', () => {
    expect(
      seenPaper(
        picture(() => null),
        'A4',
      ),
    ).toBeNull();
    const square = ([x, y]: Vec2): number | null => (Math.abs(x) < 90 && Math.abs(y) < 90 ? 0.85 : null);
    expect(seenPaper(picture(square), 'A4')).toBeNull();
    expect(seenPaper({ width: 1, height: 1, values: Uint8Array.of(200) }, 'A4')).toBeNull();
    expect(seenPaper({ ...SIZE, values: new Uint8Array(SIZE.width * SIZE.height) }, 'A4')).toBeNull();
  });
});
