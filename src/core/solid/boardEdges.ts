import { jointSlide } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Edge } from '../fold/edges.ts';
import type { HalfSection } from '../fold/section/halfSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../math/vec2.ts';
import { combine3, type Vec3 } from '../math/vec3.ts';
import { caseShape } from './caseMesh.ts';
import { boardDirection, type Standing } from './standing.ts';

/** An edge of a board, on one of its faces. */
export interface BoardEdge {
  readonly edge: Edge;
  /** 1 at the front board, -1 at the back one. */
  readonly side: 1 | -1;
  /** From the tail to the head, or from the fore-edge to the mouth of the pocket, mm. */
  readonly length: number;
  /** As shares of the whole edge, from the tail or the spine. */
  readonly span: readonly [from: number, to: number];
  readonly board: number;
  /** Out of the face. */
  readonly out: Vec3;
  /** A place along the edge and `by` mm beyond it, in the plane of the face. */
  at(along: number, by: number): Vec3;
}

/**
 * The edges of both boards.
 * @param rise how far the face lies from the outer one, mm: 0 or the thickness of the board
 */
export function boardEdges(design: CoverDesign, point: RangePoint, standing: Standing, rise: number): BoardEdge[] {
  const { book } = design.needs[point];
  const half = book.height / 2;
  return ([1, -1] as const).flatMap((side): BoardEdge[] => {
    const direction = boardDirection(design, point, standing, side === 1 ? 'front' : 'back');
    const inward: Vec3 = [side * Math.sin(direction), -side * Math.cos(direction), 0];
    const out = rise > 0 ? inward : combine3(inward, -1, inward, 0);
    const [x, y] = addScaled(boardTip(design, point, standing, side, 0), [inward[0], inward[1]], rise);
    const [alongX, alongY] = heading(direction);
    const on = (by: number, z: number): Vec3 => [x + by * alongX, y + by * alongY, z];
    const length = headLength(design, point, side === 1 ? standing.front : standing.back);
    const common = { side, out, board: book.board };
    const inPocket = { ...common, length, span: [1, 1 - length / book.width] as const };
    return [
      {
        ...common,
        edge: side === 1 ? 'frontForeEdge' : 'backForeEdge',
        length: book.height,
        span: [0, 1],
        at: (along, by) => on(by, along - half),
      },
      { ...inPocket, edge: 'head', at: (along, by) => on(-along, half + by) },
      { ...inPocket, edge: 'tail', at: (along, by) => on(-along, -half - by) },
    ];
  });
}

/**
 * How far head and tail of a board are in the pocket, from the fore-edge, mm: beyond its mouth nothing stops the board. At most
 * up to the joint or the fold at the spine.
 */
export const headLength = (
  { needs, pieces }: CoverDesign,
  point: RangePoint,
  { toTip, toFoldEnd, toSeam }: HalfSection,
): number => {
  const { book } = needs[point];
  return Math.max(
    0,
    Math.min(toTip - toFoldEnd, book.width - caseShape(book).joint, pieces.pocketDepth - (toSeam - toTip)),
  );
};

/**
 * Where the ends of the boards lie on the pattern, mm from the tail cut edge: margin and seat are drawn in between them and
 * the cut edges.
 */
export function boardEnds(
  { pieces, job, needs, fits }: CoverDesign,
  point: RangePoint,
): { tail: number; head: number } {
  const { needed } = needs[point].headTail;
  const margin = job.seam.edgeMargin_mm + needed;
  return { tail: margin + fits[point].tail, head: pieces.outside.height - margin - fits[point].head };
}

/** Outer edge of a board's fore-edge, moved along the board by `by`. */
export function boardTip(design: CoverDesign, point: RangePoint, standing: Standing, side: 1 | -1, by: number): Vec2 {
  const { book } = design.needs[point];
  const { turn, shift } = standing.place;
  const name = side === 1 ? 'front' : 'back';
  const hinge = addScaled(shift, leftOf(heading(turn)), (side * book.thickness) / 2);
  const along = heading(boardDirection(design, point, standing, name));
  return addScaled(hinge, along, book.width + jointSlide(book, standing.swings[name]) + by);
}
