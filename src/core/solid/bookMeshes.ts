import { type BookModel, bookModel } from '../book/bookModel.ts';
import { boardDirections, type Opening, symmetricOpening } from '../book/bookOutline.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { remembered } from '../math/remembered.ts';
import { headBandMesh } from './bandMesh.ts';
import { backBoardMesh, spineMesh } from './caseMesh.ts';
import { mirrored } from './gridSolid.ts';
import { type HalfBlock, halfBlock } from './halfBlock.ts';
import { backJointMesh } from './jointMesh.ts';
import type { MeshData } from './meshData.ts';
import { type Pages, pagesMesh } from './pagesMesh.ts';

/** How a book stands: its spine at rest with its middle in the origin, as `bookOutline` has it. */
export interface BookStand {
  /** Swing of each board, radians: 0 closed, pi/2 flat, more when bent back. */
  readonly opening: Opening;
  /** Swing of the outermost leaves on each side, radians: at most that of their board; 0 where the block stands closed. */
  readonly leaves: Opening;
  /** Opening that the pockets force on a book too thin for them, radians; 0 for most books. */
  readonly forced: number;
  /** Mouth of the pocket on each board, mm from the hinge; null where the board is in no pocket. */
  readonly mouths: { readonly front: number | null; readonly back: number | null };
}

/** The parts of the book, standing as told; as many vertices and triangles however it stands. */
export function bookMeshes(
  design: CoverDesign,
  point: RangePoint,
  { opening, leaves, forced, mouths }: BookStand,
): MeshData[] {
  const { book, leathers } = design.needs[point];
  const tilt = boardDirections(book, symmetricOpening(forced)).front;
  // A book that lies on a bench has a back less round than its own.
  const rest = bookModel(design.job.book, leathers.pocket.thickness);
  const half = (side: 'front' | 'back'): HalfBlock => {
    const mouth = mouths[side];
    const board = Math.max(0, opening[side] - forced / 2);
    return halfBlock(book, {
      tilt,
      board,
      leaf: Math.max(0, Math.min(board, leaves[side] - forced / 2)),
      fromClosed: opening[side],
      pocket: mouth === null ? 0 : leathers.pocket.thickness,
      mouth: mouth ?? book.width,
      rest,
    });
  };
  const back = half('back');
  const isAlike = opening.front === opening.back && leaves.front === leaves.back && mouths.front === mouths.back;
  const front = isAlike ? back : half('front');
  const height = book.height - 2 * book.square;
  const flyleaf = book.kind === 'hardback' ? 'endpaper' : 'pageFace';
  const fan: Pages[] = [
    ...front.fan.map((gathering): Pages => ({ side: 'front', leaves: gathering })),
    ...back.fan.map((gathering): Pages => ({ side: 'back', leaves: gathering })),
  ];
  const backJoint = backJointMesh(book, opening.back);
  const frontJoint = opening.front === opening.back ? backJoint : backJointMesh(book, opening.front);
  return [
    mirrored(backBoardMesh(book, opening.front), 'frontBoard'),
    backBoardMesh(book, opening.back),
    ...(frontJoint && backJoint ? [mirrored(frontJoint, 'frontJoint'), backJoint] : []),
    spineMesh(book, opening),
    pagesMesh('frontPages', [{ side: 'front', leaves: front.slab }], height, flyleaf),
    pagesMesh('backPages', [{ side: 'back', leaves: back.slab }], height, flyleaf),
    pagesMesh('leaves', fan, height, 'pageFace'),
    ...bandsOf(book),
  ];
}

/** Head and tail band, alike however the book stands. */
const bandsOf = remembered((book: BookModel) => {
  const band = headBandMesh(book);
  return band === null ? [] : [band, mirrored(band, 'tailBand', 2)];
});
