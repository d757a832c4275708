import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookModel } from '../../../src/core/book/bookModel.ts';
import {
  boardDirections,
  bookOutline,
  CLOSED,
  type Opening,
  outlinePolygon,
} from '../../../src/core/book/bookOutline.ts';
import { pathLength, type TautPath, tautPath } from '../../../src/core/book/tautPath.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { addScaled, distance, heading, leftOf, type Vec2 } from '../../../src/core/math/vec2.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { polygonBook, tautOver } from './polygonBook.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const orNone = (share: fc.Arbitrary<number>) => fc.option(share, { nil: 0 });

/** The model of a book, and its edge radius as typed. */
function modelOf(measures: Partial<JobInput['book']>) {
  const { book } = soundJob({
    format: 'coverwright-job',
    version: 1,
    book: { height_mm: 220, jointDip_mm: 0, ...measures },
    leather: { outside: { min_mm: 1.6, max_mm: 2 } },
  });
  return { model: bookModel(book), radius: book.cornerRadius_mm };
}

/** Books of every shape with boards wider than half the thickness: any rise and edge radius, wedges, joint dips. */
const bookDraw = fc
  .record({
    thickness: between(4, 120),
    widthShare: between(0, 1),
    rise: orNone(between(0.001, 0.5)),
    radius: orNone(between(0.001, 0.5)),
    wedge: orNone(between(-0.5, 0.5)),
    dip: orNone(between(0, 5)),
  })
  .map(({ thickness, widthShare, rise, radius, wedge, dip }) => {
    const width = 30 + 0.6 * thickness + 300 * widthShare;
    return modelOf({
      width_mm: width,
      thickness_mm: thickness,
      foreEdgeThickness_mm: thickness + wedge * Math.min(thickness, width),
      boardThickness_mm: 0.1 * thickness,
      spine: { shape: rise > 0 ? 'rounded' : 'flat', rise_mm: rise * thickness },
      cornerRadius_mm: radius * thickness,
      jointDip_mm: dip,
    });
  });

/** Both boards alike, which is all that covers ask for, or each on its own; closed and flat more often than by chance. */
const swing = fc.oneof(fc.constantFrom(0, Math.PI / 2), between(0, 0.75 * Math.PI));
const openingDraw = fc.oneof(
  { weight: 3, arbitrary: swing.map((each): Opening => ({ front: each, back: each })) },
  { weight: 1, arbitrary: fc.record({ front: swing, back: swing }) },
);

/** Within this of the polygon, mm, on the book and on the neutral line of a thick leather, this far off it, mm. */
const CLOSE = 1e-3;
const OFFSET = 4;

/** Where the pieces of a path, laid out from its start, end. */
function endOf({ start, heading: first, pieces }: TautPath): Vec2 {
  let [at, angle] = [start, first];
  for (const piece of pieces) {
    if (piece.kind === 'line') at = addScaled(at, heading(angle), piece.length);
    else {
      const centre = addScaled(at, leftOf(heading(angle)), piece.radius);
      angle += piece.angle;
      at = addScaled(centre, leftOf(heading(angle)), -piece.radius);
    }
  }
  return at;
}

describe('the taut path over any book at any opening', () => {
  test('is the hull of a fine polygon of the true outside: in length, turning and at both fore-edges', () => {
    checkLaw(
      fc.property(bookDraw, openingDraw, ({ model, radius }, opening) => {
        const polygon = polygonBook({ ...model, radius }, opening);
        const expected = tautOver(polygon);
        const path = tautPath(bookOutline(model, opening));
        expect(Math.abs(path.length - expected.length)).toBeLessThan(CLOSE);
        expect(Math.abs(path.turning - expected.turning) * OFFSET).toBeLessThan(CLOSE);
        expect(pathLength(path.pieces, OFFSET)).toBeCloseTo(path.length + OFFSET * path.turning, 9);
        expect(distance(path.start, nth(polygon, 0))).toBeLessThan(CLOSE);
        expect(distance(endOf(path), nth(polygon, -1))).toBeLessThan(CLOSE);
      }),
    );
  });
});

describe('the outside shrunk by the edge radius', () => {
  const rounded = { cornerRadius_mm: 4, spine: { shape: 'rounded', rise_mm: 6 } } as const;

  test.each([{ cornerRadius_mm: 4, spine: { shape: 'flat' } } as const, rounded])(
    'is grown to it again: front and back mirrored, fore-edges a radius inside: %o',
    (measures) => {
      const { model } = modelOf({ width_mm: 150, thickness_mm: 30, ...measures });
      const opening = { front: 0.3, back: 0.3 };
      const outline = bookOutline(model, opening);
      const { points, radius } = outlinePolygon(model, opening);
      const { tips } = outline;
      expect(radius).toBe(4);
      const path = tautPath(outline);
      // Chords of the back are short of its arc by some thousandths of a millimetre.
      const { length, turning } = tautOver(points);
      expect(length + radius * turning).toBeCloseTo(path.length, 2);
      expect(distance(nth(points, 0), tips[0])).toBeCloseTo(4, 9);
      expect(nth(points, 0)[1]).toBeLessThan(tips[0][1]);
      points.forEach(([x, y], i) => {
        const [mirroredX, mirroredY] = nth(points, -1 - i);
        expect([x, y]).toEqual([expect.closeTo(mirroredX, 9), expect.closeTo(-mirroredY, 9)]);
      });
    },
  );

  test('has the points of a rounded back on one circle, and says which they are', () => {
    const { model } = modelOf({ width_mm: 150, thickness_mm: 30, ...rounded });
    const { points, back } = outlinePolygon(model, CLOSED);
    const { arcs } = bookOutline(model, CLOSED);
    const { first, last, radius } = defined(back);
    expect([first, last]).toEqual([1, points.length - 2]);
    expect(radius).toBeCloseTo(nth(arcs, 1).radius - 4, 9);
    for (const point of points.slice(first, last + 1))
      expect(distance(point, [radius - 6 + 4, 0])).toBeCloseTo(radius, 9);
  });

  test('has boards that swing away from each other', () => {
    const { model } = modelOf({ width_mm: 150, thickness_mm: 30, foreEdgeThickness_mm: 36 });
    const tilt = Math.asin(3 / 150);
    const { front, back } = boardDirections(model, { front: 0.2, back: 0.5 });
    expect(front).toBeCloseTo(tilt + 0.2, 12);
    expect(back).toBeCloseTo(-tilt - 0.5, 12);
  });
});

describe('an edge rounder than the book has room for', () => {
  const outline = (book: Partial<JobInput['book']>) => bookOutline(modelOf(book).model, CLOSED);

  test('is as round as leaves the two edges to meet in the middle of the back', () => {
    // Boards that close by 0.2 rad each: a circle between them touches the back where its radius is T/2 tan(pi/4 - 0.1).
    const width = 150;
    const closing = { thickness_mm: 70, foreEdgeThickness_mm: 70 - 2 * width * Math.sin(0.2), width_mm: width };
    const { arcs } = outline({ ...closing, cornerRadius_mm: 35 });
    expect(nth(arcs, 0).radius).toBeCloseTo(35 * Math.tan(Math.PI / 4 - 0.1), 9);
    expect(distance(nth(arcs, 0).end, nth(arcs, 1).start)).toBeLessThan(1e-9);
  });

  test('takes no more than the whole board', () => {
    const { arcs, tips } = outline({ width_mm: 30, thickness_mm: 100, cornerRadius_mm: 50 });
    expect(nth(arcs, 0).radius).toBeCloseTo(30, 9);
    expect(distance(nth(arcs, 0).start, tips[0])).toBeLessThan(1e-9);
    // Of a rounded spine the circle that touches board and back at the fore-edge: 20 inside it, and R - 20 from its centre.
    const round = outline({
      width_mm: 30,
      thickness_mm: 100,
      cornerRadius_mm: 50,
      spine: { shape: 'rounded', rise_mm: 6 },
    });
    const [edge, spine] = [nth(round.arcs, 0), nth(round.arcs, 1)];
    expect(distance(edge.start, round.tips[0])).toBeLessThan(1e-9);
    expect(distance([30, 50 - edge.radius], [spine.radius - 6, 0])).toBeCloseTo(spine.radius - edge.radius, 9);
  });
});
