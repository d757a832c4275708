import { describe, expect, test } from 'vitest';
import { jointSlide } from '../../../../src/core/book/bookOutline.ts';
import { coverDesign } from '../../../../src/core/fold/coverDesign.ts';
import {
  type HalfSection,
  inFromSeam,
  neutralAt,
  placeSection,
} from '../../../../src/core/fold/section/halfSection.ts';
import { gentleRise, seatCurve, seatPoint, swung } from '../../../../src/core/fold/section/seatCurve.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { boardDirection, type Standing, standingAt } from '../../../../src/core/solid/standing.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';
import { coverOf } from '../../pattern/coverOf.ts';

const DESIGNS = [
  ...EXAMPLE_JOBS.map(({ id, document }) => [id, coverDesign(soundJob(document))] as const),
  ['turned ends', coverOf({ pockets: { construction: 'turned' } })],
  ['slack at the spine', coverOf({ seating: 'spine' })],
  ['boards at the front', coverOf({ seating: 'front' })],
  [
    'a thick lining that ends on the board',
    coverOf({
      leather: { outside: { min_mm: 1, max_mm: 1 }, lining: { min_mm: 3.5, max_mm: 3.5 } },
      construction: { lining: 'centre' },
    }),
  ],
  ['skived folds', coverOf({ leather: { outside: { min_mm: 1.6, max_mm: 2, foldThickness_mm: 0.9 } } })],
  ['a wedge and rounded edges', coverOf({ book: { foreEdgeThickness_mm: 33, cornerRadius_mm: 6 } })],
] as const;
const OPENINGS = [0, 0.3, 1, 1.7, 2.4, 3, Math.PI];

const folds = { turnedFolds: [Math.PI / 2, Math.PI / 2] } as const;

/** Length of half the neutral line as it is placed, by many short chords. */
function placedLength(half: HalfSection, wrapped: number): number {
  const steps = 40_000;
  let end = 0;
  // Where one stretch meets the next the line may have a kink, which a chord across it would cut.
  const kinks = half.pieces.map(({ length }) => {
    end += length;
    return Math.min(end, half.length);
  });
  const even = Array.from({ length: steps + 1 }, (_, i) => (half.length * i) / steps);
  const at = [...even, ...kinks].sort((a, b) => a - b);
  const places = placeSection(half, at, { wrapped, ...folds });
  let length = 0;
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [nth(places, i - 1).neutral, nth(places, i).neutral];
    length += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return length;
}

describe('the neutral line of the folded outside is as long as the pattern is wide', () => {
  test.each(DESIGNS)('as the stretches add up, at every opening: %s', (_name, design) => {
    for (const opening of OPENINGS) {
      const { front, back } = standingAt(design, 'nominal', opening);
      expect(Math.abs(front.length + back.length - design.pieces.outside.width)).toBeLessThan(1e-6);
      for (const half of [front, back])
        expect(half.pieces.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(half.length, 9);
    }
  });

  test.each(DESIGNS)('as it is placed, wrapped and on the way to it: %s', (_name, design) => {
    const { front, back } = standingAt(design, 'thick', 0.8);
    for (const wrapped of [1, 0.4, 0]) {
      const length = placedLength(front, wrapped) + placedLength(back, wrapped);
      // Chords of 0.005 mm cut bends by less than 1e-6 mm, and every kink of a thinned layer by a few of those.
      expect(Math.abs(length - design.pieces.outside.width)).toBeLessThan(1e-4);
    }
  });
});

describe('the inner face', () => {
  test.each(DESIGNS)('ends the board stretch on the outer edge of the board, along the board: %s', (_name, design) => {
    const { book } = design.needs.nominal;
    for (const opening of OPENINGS) {
      const standing: Standing = standingAt(design, 'nominal', opening);
      const tip = nth(placeSection(standing.back, [standing.back.toTip], { wrapped: 1, ...folds }), 0);
      const reach = book.width + jointSlide(book, standing.swings.back);
      const direction = -boardDirection(design, 'nominal', standing, 'back');
      // Angles of chained bends add up to 1e-15; a lining that thins out over a bend costs a little more.
      expect(tip.inner[0]).toBeCloseTo(reach * Math.cos(direction), 2);
      expect(tip.inner[1]).toBeCloseTo(-book.thickness / 2 - reach * Math.sin(direction), 2);
      expect(Math.sin(tip.theta + direction)).toBeCloseTo(0, 9);
    }
  });

  test.each(DESIGNS)('is as long from the seam inward as chords of it add up: %s', (_name, design) => {
    const { back } = standingAt(design, 'thick', 0.8);
    const steps = 4000;
    const at = Array.from({ length: steps + 1 }, (_, i) => (back.toSeam * (steps - i)) / steps);
    const faces = placeSection(back, at.toReversed(), { wrapped: 1, ...folds }).toReversed();
    let length = 0;
    for (let i = 1; i <= steps; i++) {
      const [a, b] = [nth(faces, i - 1).inner, nth(faces, i).inner];
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (i % 400 > 0) continue;
      expect(inFromSeam(back, nth(at, i))).toBeCloseTo(length, 2);
      expect(inFromSeam(back, neutralAt(back, length))).toBeCloseTo(length, 9);
    }
  });
});

describe('the seat curve', () => {
  const [offset, radius, thickness] = [2.5, 1.25, 1.8];
  const curve = seatCurve(offset, radius, thickness, Number.POSITIVE_INFINITY);

  test('ends level, at its offset and its run', () => {
    const [u, h, angle] = seatPoint(curve, curve.length);
    expect(u).toBeCloseTo(curve.run, 9);
    expect(h).toBeCloseTo(offset, 9);
    expect(angle).toBeCloseTo(0, 9);
  });

  test('has the mid-surface radius half a thickness off its flesh side on both arcs', () => {
    expect(curve.seamRadius - thickness / 2).toBeCloseTo(radius, 9);
    expect(curve.boardRadius + thickness / 2).toBeCloseTo(radius, 9);
  });

  test('is pressed into the room there is, and no farther', () => {
    for (const room of [2.4, 2, 1.2, 0.6]) {
      const pressed = seatCurve(offset, radius, thickness, room);
      expect(pressed.run).toBeCloseTo(room, 9);
      expect(seatPoint(pressed, pressed.length)[1]).toBeCloseTo(offset, 9);
    }
    expect(seatCurve(offset, radius, thickness, 3)).toEqual(curve);
  });

  test('swung open lies above itself swung down, at every distance over the board', () => {
    for (const angle of [1.6, 1.2, 0.8, 0.4]) {
      const up = Math.max(curve.up, angle);
      const open = swung(curve, up, up - angle);
      for (let length = curve.length; length < 20; length += 1) {
        const [u, h] = seatPoint(open, length);
        if (u > curve.run) expect(h).toBeGreaterThan(offset - 1e-9);
      }
    }
  });

  test('gentler, rises under a sharper one from the same start', () => {
    for (let u = 0; u < 4; u += 0.1) expect(gentleRise(1.2, 4, u)).toBeLessThanOrEqual(gentleRise(1.2, 2, u) + 1e-12);
  });
});
