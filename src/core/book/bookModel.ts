import type { Job } from '../job/jobSchema.ts';
import { circularSegment } from '../math/circularSegment.ts';
import { type Mm, mm } from '../units/mm.ts';
import { type Radians, radians, radiansFromDegrees } from '../units/radians.ts';
import { riseOf } from './rise.ts';
import { largestEdgeRadius, roundedEdge } from './roundedEdge.ts';

/** The closed book as the fold model sees it: one section across the spine, and a height. */
export interface BookModel {
  readonly kind: Job['book']['kind'];
  /** W: along the board from the spine plane to the fore-edge. */
  readonly width: Mm;
  /** H: head to tail. */
  readonly height: Mm;
  /** T: over the boards at the spine. */
  readonly thickness: Mm;
  readonly board: Mm;
  readonly square: Mm;
  /** e: rise of the back; 0 when flat. */
  readonly rise: Mm;
  /** P: path over the back from board line to board line. */
  readonly spinePath: Mm;
  /** Tilt of each board away from the middle plane; positive where the fore-edge is thicker than the spine. */
  readonly wedge: Radians;
  /** Radius of the edge between board line and spine: as typed, at most `largestEdgeRadius`. */
  readonly edgeRadius: Mm;
  readonly jointDip: Mm;
  readonly foldBack: Radians;
}

/**
 * Extra thickness that two pockets force on the fore-edge, once the pages have given way as far as they will:
 * max(0, 2 t_p - g (T_f - 2 b)). An assumption of this project: a text block is a pile of loose edges and gives a little.
 * @param pocketThickness t_p, mm; 0 where no pocket lies there
 */
function pocketSwell(book: Job['book'], pocketThickness: number): number {
  const textBlock = book.foreEdgeThickness_mm - 2 * book.boardThickness_mm;
  return Math.max(0, 2 * pocketThickness - book.pageGive * textBlock);
}

/**
 * Whether two books have the same outline across the spine, closed or flat; height, boards and pages may differ. Closed, the joints
 * give nothing.
 */
export const hasSameSection = (a: BookModel, b: BookModel, at: 'closed' | 'flat'): boolean =>
  a.width === b.width &&
  a.thickness === b.thickness &&
  a.rise === b.rise &&
  a.wedge === b.wedge &&
  a.edgeRadius === b.edgeRadius &&
  (at === 'closed' || a.jointDip === b.jointDip);

/** A rise below this, mm, is a flat back: no rule shows it, and its circle is too large to place points on. */
const FLAT_RISE = 1e-4;

/**
 * Derives the model of a book from its measures.
 *
 * The joint dip is taken from the open-flat width where the maker measured it: what exceeds the closed book's own path,
 * half per joint.
 * @param book the book of a parsed job
 * @param pocketThickness thickness of one pocket's leather, mm, 0 for the bare book
 */
export function bookModel(book: Job['book'], pocketThickness = 0): BookModel {
  const typed = riseOf(book);
  const rise = typed < FLAT_RISE ? mm(0) : typed;
  const { arc: spinePath, halfAngle, radius } = circularSegment(book.thickness_mm, rise);
  const openFlat = book.measured.openFlatWidth_mm;
  const foreEdge = book.foreEdgeThickness_mm + pocketSwell(book, pocketThickness);
  const wedge = Math.asin(Math.max(-1, Math.min(1, (foreEdge - book.thickness_mm) / 2 / book.width_mm)));
  const edgeRadius = Math.min(book.cornerRadius_mm, largestEdgeRadius(book.width_mm, book.thickness_mm, rise, wedge));
  const { saving } = roundedEdge(edgeRadius, radius, Math.PI / 2 - halfAngle - wedge);
  const path = 2 * book.width_mm + spinePath - 2 * saving;
  return {
    kind: book.kind,
    width: book.width_mm,
    height: book.height_mm,
    thickness: book.thickness_mm,
    board: book.boardThickness_mm,
    square: book.square_mm,
    rise,
    spinePath: mm(spinePath),
    wedge: radians(wedge),
    edgeRadius: mm(edgeRadius),
    jointDip: openFlat === null ? book.jointDip_mm : mm(Math.max(0, (openFlat - path) / 2)),
    foldBack: radiansFromDegrees(book.foldBack_deg),
  };
}
