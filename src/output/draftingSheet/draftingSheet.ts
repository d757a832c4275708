import {
  capital,
  type Drawing,
  isPunchedTogether,
  KNIFE,
  type Layer,
  type PatternSource,
  type PieceDrawing,
  printer,
  type Vec2,
} from '../../core/index.ts';
import { boxShape } from './boxShape.ts';
import { holeSteps } from './holeSteps.ts';
import { lineSteps } from './lineSteps.ts';
import { outlineSteps } from './outlineSteps.ts';

/** Layers that the figure of a piece shows: what a hand draws but the holes, which are too small to be told apart. */
export const DRAFTED = ['cut', 'fold', 'seam', 'centre', 'mouth', 'lining'] as const satisfies readonly Layer[];

/** One piece to be drawn by hand. */
export interface Draft {
  readonly title: string;
  readonly piece: PieceDrawing;
  /** The points that the steps name, on the piece. */
  readonly points: readonly { readonly name: string; readonly at: Vec2 }[];
  readonly steps: readonly string[];
}

/** Words and figures to draw the pieces of a drawing by hand. */
export interface DraftingSheet {
  readonly title: string;
  readonly introduction: readonly string[];
  readonly caution: string;
  readonly drafts: readonly Draft[];
  readonly notes: readonly string[];
}

/**
 * Makes the drafting sheet: how each piece is drawn by rule, set square, compasses and dividers, with no printer, in the unit
 * of the job.
 *
 * Cut sizes are printed exactly. A diagonal, a fold and every tenth hole are there to check by, and rounded as a rule shows them.
 * @param source the design that the drawing was made of
 * @param drawing its pieces, seen from the side that is not mirrored
 */
export function draftingSheet(source: PatternSource, drawing: Drawing): DraftingSheet {
  const print = printer(drawing.units);
  const { strap } = source.job.construction;
  const sewn =
    strap === null
      ? []
      : [
          `The ${strap.shape} is sewn to the back over ${print.size(strap.anchor_mm)} from its fore-edge, about the middle of the height.`,
        ];
  const after = isPunchedTogether(source.job)
    ? [
        'Your order makes the holes after cementing, through all layers. The steps for the seam line and its holes can be left out.',
      ]
    : [];
  return {
    title: drawing.title,
    introduction: [
      'Draw each piece by rule, set square, compasses and dividers, in the order of the steps. The figure shows where the points are.',
      `${capital(drawing.faceUp)}: head at the top; of the outside, front at the right.`,
    ],
    caution: KNIFE,
    drafts: drawing.pieces.map((piece) => ({
      title: `${piece.name}, cut ${piece.count}`,
      piece,
      points: boxShape(piece).corners,
      steps: [
        ...outlineSteps(piece, print),
        ...lineSteps(source, piece, print),
        ...holeSteps(source, piece, print),
        ...(piece.id === 'outside' || piece.id === 'half' ? sewn : []),
      ],
    })),
    notes: [
      ...drawing.lengths.map(({ name, count, sum }) => `${name}, cut ${count}: ${print.size(sum.total)}.`),
      ...after,
      ...drawing.notes,
    ],
  };
}
