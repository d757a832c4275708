import { wrapAt } from '../../allowance/wrap.ts';
import type { BookModel } from '../../book/bookModel.ts';
import { boardDirections, jointSlide, symmetricOpening } from '../../book/bookOutline.ts';
import { pathLength, type TautPath } from '../../book/tautPath.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { ARC_STEPS, curvePoints, LINING_RAMP, thicken } from './layerLine.ts';

/** Slice across the spine, as closed outlines in mm: spine at x = 0, front board up. */
export interface CoverSection {
  readonly outside: readonly Vec2[];
  readonly lining: readonly Vec2[] | null;
  readonly boards: readonly (readonly Vec2[])[];
  readonly pages: readonly (readonly Vec2[])[];
  readonly pockets: readonly (readonly Vec2[])[];
  /** Ends of the seam line across the layers at each fore-edge; none where the ends are turned. */
  readonly seams: readonly (readonly [Vec2, Vec2])[];
  /** The opening shown, radians: not less than the wrap allows. */
  readonly opening: number;
}

/**
 * Draws the closed form: the outside on the taut path, the pockets' reverse curves laid out as computed.
 * @param opening wished opening, radians, 0 closed to pi flat
 */
export function coverSection(design: CoverDesign, point: RangePoint, opening: number): CoverSection {
  const needs = design.needs[point];
  const fit = design.fits[point];
  const { book, leathers, foreEdge, foreEdgeSeat } = needs;
  const isTurned = design.job.pockets.construction === 'turned';
  const shown = Math.max(opening, fit.staysOpen ?? Math.PI);
  const swing = symmetricOpening(shown);
  const { path } = wrapAt(book, swing, leathers);
  const depth = leathers.lining?.thickness ?? 0;
  const thickness = leathers.outside.thickness;
  const liningEnd = ((design.made.lining?.width ?? 0) - pathLength(path.pieces, depth / 2)) / 2;
  const reach = foreEdge.margin + foreEdge.seat;
  const ends = [reach + fit.foreEdge.front, reach + fit.foreEdge.back] as const;

  const sides = boardSides(book, shown).map(({ side, at }) => ({ at, gap: fit.foreEdge[side] }));
  const pocket = leathers.pocket.thickness;
  const covered = (gap: number): number => Math.max(0, design.pieces.pocketDepth - foreEdge.seat - Math.max(0, gap));
  const pocketLine = (gap: number): Vec2[] => {
    const mouth: Vec2 = [book.width - covered(gap), -book.board - pocket / 2];
    const start: Vec2 = [book.width + gap, mouth[1]];
    if (foreEdgeSeat === null) return [mouth, start, ...halfTurn(start, thickness / 2)];
    const curve = curvePoints(foreEdgeSeat.curve, leathers.pocket.seatRadius).map(
      ([u, v]): Vec2 => [start[0] + u, start[1] + v],
    );
    const seam = curve.at(-1)!;
    return [mouth, ...curve, [seam[0] + foreEdge.margin, seam[1]]];
  };
  return {
    outside: band(path, { middle: depth, ends: depth === 0 ? null : liningEnd }, thickness, ends),
    lining: depth === 0 ? null : band(path, { middle: 0, ends: null }, depth, [liningEnd, liningEnd]),
    ...bookSection(book, shown),
    pockets: sides.map(({ at, gap }) => thicken(pocketLine(gap), isTurned ? thickness : pocket).map(at)),
    seams: isTurned
      ? []
      : sides.map(({ at, gap }) => {
          const u = book.width + gap + foreEdge.seat;
          return [at([u, -pocket - 1]), at([u, thickness + 1])] as const;
        }),
    opening: shown,
  };
}

/** Both boards of a book at an opening, radians: `at` places u along the board from the spine and v outward from its outer face. */
function boardSides(book: BookModel, opening: number) {
  const swing = symmetricOpening(opening);
  const directions = boardDirections(book, swing);
  return (['front', 'back'] as const).map((side) => {
    const sign = side === 'front' ? 1 : -1;
    const along = heading(directions[side]);
    const out = addScaled([0, 0], leftOf(along), sign);
    const origin = addScaled([0, (sign * book.thickness) / 2], along, jointSlide(book, swing[side]));
    return { side, at: ([u, v]: Vec2): Vec2 => addScaled(addScaled(origin, along, u), out, v) };
  });
}

/**
 * The book alone, its boards and the two halves of its pages.
 * @param opening radians, 0 closed to pi flat
 */
export function bookSection(book: BookModel, opening: number): Pick<CoverSection, 'boards' | 'pages'> {
  const { width, board, square, thickness } = book;
  const sides = boardSides(book, opening);
  const box = (length: number, low: number, high: number): Vec2[] => [
    [0, low],
    [length, low],
    [length, high],
    [0, high],
  ];
  return {
    boards: sides.map(({ at }) => box(width, -board, 0).map(at)),
    pages: sides.map(({ at }) => box(width - square, -thickness / 2, -board).map(at)),
  };
}

/** What lies under a band: a thickness in the middle, ending where `ends` lengthens the path to (null: everywhere). */
interface Under {
  readonly middle: number;
  readonly ends: number | null;
}

/** The taut path grown by z over what lies under it, lengthened straight on by `ends` at front and back. */
function grown(path: TautPath, under: Under, z: number, ends: readonly [number, number]): Vec2[] {
  let angle = path.heading;
  const start = path.start;
  const points = end(start, angle, -1, under, z, ends[0]).reverse();
  let at: Vec2 = start;
  for (const piece of path.pieces) {
    if (piece.kind === 'line') {
      at = addScaled(at, heading(angle), piece.length);
    } else {
      const centre = addScaled(at, leftOf(heading(angle)), piece.radius);
      for (let i = 0; i <= ARC_STEPS; i++) {
        const turned = angle + (piece.angle * i) / ARC_STEPS;
        points.push(addScaled(centre, leftOf(heading(turned)), -piece.radius - under.middle - z));
      }
      angle += piece.angle;
      at = addScaled(centre, leftOf(heading(angle)), -piece.radius);
    }
  }
  return [...points, ...end(at, angle, 1, under, z, ends[1])];
}

/** The last points of a grown path, from its middle outward; level where what lies under it ends no earlier. */
function end(at: Vec2, angle: number, way: 1 | -1, { middle, ends }: Under, z: number, length: number): Vec2[] {
  const place = (run: number, offset: number): Vec2 =>
    addScaled(addScaled(at, heading(angle), way * run), leftOf(heading(angle)), -offset - z);
  if (ends === null || ends + LINING_RAMP > length) return [place(length, middle)];
  return [place(ends, middle), place(ends + LINING_RAMP, 0), place(length, 0)];
}

const band = (path: TautPath, under: Under, thickness: number, ends: readonly [number, number]): Vec2[] => [
  ...grown(path, under, 0, ends),
  ...grown(path, under, thickness, ends).reverse(),
];

/** Half circle from a point up to the height `to`. */
function halfTurn([u, v]: Vec2, to: number): Vec2[] {
  const radius = (to - v) / 2;
  return Array.from({ length: ARC_STEPS }, (_, i): Vec2 => {
    const turned = (Math.PI * (i + 1)) / ARC_STEPS;
    return [u + radius * Math.sin(turned), v + radius * (1 - Math.cos(turned))];
  });
}
