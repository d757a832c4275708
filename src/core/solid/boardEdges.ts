import type { BookModel } from '../book/bookModel.ts';
import { jointSlide } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { HalfSection } from '../fold/section/halfSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { addScaled, heading, type Vec2 } from '../math/vec2.ts';
import { combine3, type Vec3 } from '../math/vec3.ts';
import { caseShape } from './caseMesh.ts';
import type { Standing } from './standing.ts';

/** An edge of a board, on one of its faces. */
export interface BoardEdge {
  readonly edge: 'frontForeEdge' | 'backForeEdge' | 'head' | 'tail';
  /** 1 at the front board, -1 at the back one. */
  readonly side: 1 | -1;
  /** From the tail to the head, or from the fore-edge to the spine, mm. */
  readonly length: number;
  readonly board: number;
  /** Out of the face. */
  readonly out: Vec3;
  /** A place along the edge and `by` mm beyond it, in the plane of the face. */
  at(along: number, by: number): Vec3;
}

/**
 * The edges of both boards.
 * @param face how far it lies from the outer face, 0 or the thickness of the board, and how far the book hovers, mm
 */
export function boardEdges(
  design: CoverDesign,
  point: RangePoint,
  standing: Standing,
  { rise, lift }: { readonly rise: number; readonly lift: number },
): BoardEdge[] {
  const { book } = design.needs[point];
  const half = book.height / 2;
  return ([1, -1] as const).flatMap((side): BoardEdge[] => {
    const inward: Vec3 = [Math.sin(standing.direction), -side * Math.cos(standing.direction), 0];
    const out = rise > 0 ? inward : combine3(inward, -1, inward, 0);
    const on = (by: number, z: number): Vec3 => {
      const [x, y] = boardTip(design, point, standing, side, by);
      return combine3([x + lift, y, z], 1, inward, rise);
    };
    const length = headLength(book, side === 1 ? standing.front : standing.back);
    const common = { side, out, board: book.board };
    return [
      {
        ...common,
        edge: side === 1 ? 'frontForeEdge' : 'backForeEdge',
        length: book.height,
        at: (along, by) => on(by, along - half),
      },
      { ...common, edge: 'head', length, at: (along, by) => on(-along, half + by) },
      { ...common, edge: 'tail', length, at: (along, by) => on(-along, -half - by) },
    ];
  });
}

/** Length of a board at head and tail that leather lies on, from its fore-edge to the joint or the fold, mm. */
export const headLength = (book: BookModel, { toTip, toFoldEnd }: HalfSection): number =>
  Math.min(toTip - toFoldEnd, book.width - caseShape(book).joint);

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
  const along = heading(side * standing.direction);
  return addScaled([0, (side * book.thickness) / 2], along, book.width + jointSlide(book, standing.swing) + by);
}
