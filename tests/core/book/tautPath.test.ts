import { describe, expect, test } from 'vitest';
import { bookModel } from '../../../src/core/book/bookModel.ts';
import { bookOutline, CLOSED, FLAT, type Opening, symmetricOpening } from '../../../src/core/book/bookOutline.ts';
import { pathLength, tautPath } from '../../../src/core/book/tautPath.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { circularSegment } from '../../../src/core/math/circularSegment.ts';
import { heading, leftOf } from '../../../src/core/math/vec2.ts';
import { soundJob } from '../../jobArbitrary.ts';

const model = (book: Partial<JobInput['book']> = {}) =>
  bookModel(
    soundJob({
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 150, height_mm: 220, thickness_mm: 30, jointDip_mm: 0, ...book },
      leather: { outside: { min_mm: 1.6, max_mm: 2 } },
    }).book,
  );

const pathOf = (book: Partial<JobInput['book']>, opening: Opening) => tautPath(bookOutline(model(book), opening));

describe('the taut path over a closed book', () => {
  test('with a flat back is two widths and the thickness, and turns by pi', () => {
    const path = pathOf({}, CLOSED);
    expect(path.length).toBeCloseTo(330, 12);
    expect(path.turning).toBeCloseTo(Math.PI, 12);
    expect(path.pieces.map(({ zone }) => zone)).toEqual(['frontBoard', 'frontFold', 'spine', 'backFold', 'backBoard']);
  });

  test('with a rounded back has the arc in place of the thickness, and still turns by pi', () => {
    const path = pathOf({ spine: { shape: 'rounded', rise_mm: 6 } }, CLOSED);
    expect(path.length).toBeCloseTo(300 + circularSegment(30, 6).arc, 9);
    expect(path.turning).toBeCloseTo(Math.PI, 9);
  });

  test('with rounded edges is shorter by 2 r tan(A/2) - r A at each', () => {
    const r = 4;
    const saved = 2 * r * Math.tan(Math.PI / 4) - (r * Math.PI) / 2;
    expect(pathOf({ cornerRadius_mm: r }, CLOSED).length).toBeCloseTo(330 - 2 * saved, 9);
  });

  test('with a wedge turns less where the fore-edge is thicker, more where it is thinner', () => {
    const tilt = Math.asin(5 / 150);
    expect(pathOf({ foreEdgeThickness_mm: 40 }, CLOSED).turning).toBeCloseTo(Math.PI - 2 * tilt, 9);
    expect(pathOf({ foreEdgeThickness_mm: 20 }, CLOSED).turning).toBeCloseTo(Math.PI + 2 * tilt, 9);
  });

  test('draws what it says: its pieces, laid out from its start, end at the back fore-edge', () => {
    for (const book of [
      {},
      { cornerRadius_mm: 5 },
      { spine: { shape: 'rounded' as const, rise_mm: 7 }, cornerRadius_mm: 2 },
    ]) {
      const path = pathOf(book, CLOSED);
      const end = path.pieces.reduce(
        ({ x, y, angle }, piece) => {
          const [dx, dy] = heading(angle);
          if (piece.kind === 'line') return { x: x + piece.length * dx, y: y + piece.length * dy, angle };
          const turned = angle + piece.angle;
          const [nx, ny] = leftOf([dx, dy]);
          const [mx, my] = leftOf(heading(turned));
          return { x: x + piece.radius * (nx - mx), y: y + piece.radius * (ny - my), angle: turned };
        },
        { x: path.start[0], y: path.start[1], angle: path.heading },
      );
      expect(end.x).toBeCloseTo(150, 6);
      expect(end.y).toBeCloseTo(-15, 6);
    }
  });
});

describe('the taut path over an opened book', () => {
  test('loses the turning that the boards take up', () => {
    for (const opening of [0.3, 1, 2, 3]) {
      expect(pathOf({}, symmetricOpening(opening)).turning).toBeCloseTo(Math.PI - opening, 9);
    }
  });

  test('lying flat is straight, and longer by the dip of both joints', () => {
    expect(pathOf({ jointDip_mm: 1.5 }, FLAT)).toMatchObject({ turning: 0, length: 333 });
  });

  test('takes the joint dip from the open-flat width where that was measured', () => {
    expect(pathOf({ measured: { openFlatWidth_mm: 334 } }, FLAT).length).toBeCloseTo(334, 9);
  });

  test('folded back bridges from fore-edge to fore-edge', () => {
    const path = pathOf({}, symmetricOpening(1.5 * Math.PI));
    expect(path.pieces).toEqual([{ kind: 'line', zone: 'bridge', length: expect.closeTo(30 + 300 * Math.SQRT1_2, 9) }]);
  });

  test('flat over a rounded back bridges from the fore-edge to a tangent of the arc', () => {
    // Hand case: tangents from the fore-edges to a circle through the joints.
    const { radius } = circularSegment(30, 6);
    const [x, y] = [6 - radius, 165] as const; // fore-edge seen from the circle's centre, height over it negative
    const away = Math.hypot(x, y);
    const tangent = Math.sqrt(away * away - radius * radius);
    const path = pathOf({ spine: { shape: 'rounded', rise_mm: 6 } }, FLAT);
    const turning = 2 * (Math.PI / 2 - Math.atan2(-x, y) - Math.acos(radius / away));
    expect(path.length).toBeCloseTo(2 * tangent + turning * radius, 3);
    expect(path.turning).toBeCloseTo(turning, 3);
  });

  test('has no stretch without length and no bend without turning, and says what each lies over', () => {
    const piecesOf = (book: Partial<JobInput['book']>, opening: Opening): string[] =>
      pathOf(book, opening).pieces.map(({ kind, zone }) => `${kind} ${zone}`);
    // Edges so round that they meet in the middle of the back.
    expect(piecesOf({ cornerRadius_mm: 15 }, CLOSED)).toEqual([
      'line frontBoard',
      'bend frontFold',
      'bend backFold',
      'line backBoard',
    ]);
    const rounded = { spine: { shape: 'rounded' as const, rise_mm: 6 } };
    expect(piecesOf(rounded, FLAT)).toEqual(['line bridge', 'bend spine', 'line bridge']);
    expect(piecesOf(rounded, { front: 0, back: Math.PI / 2 })).toEqual([
      'line frontBoard',
      'bend frontFold',
      'bend spine',
      'line bridge',
    ]);
    expect(piecesOf(rounded, { front: Math.PI / 2, back: 0 })).toEqual([
      'line bridge',
      'bend spine',
      'bend backFold',
      'line backBoard',
    ]);
  });

  test('grows by the turning times the offset', () => {
    const path = pathOf({ spine: { shape: 'rounded', rise_mm: 6 } }, symmetricOpening(0.7));
    expect(pathLength(path.pieces, 2.5) - path.length).toBeCloseTo(2.5 * path.turning, 9);
  });

  test('keeps the book covering its length when a rounded edge unbends', () => {
    const closed = pathOf({ cornerRadius_mm: 6 }, CLOSED).length;
    expect(pathOf({ cornerRadius_mm: 6 }, FLAT).length).toBeCloseTo(closed, 9);
  });
});
