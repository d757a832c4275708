import type { Piece, Pieces } from '../../core/pattern/pieces.ts';

export interface PlacedPiece {
  readonly piece: Piece & { readonly name: string; readonly kind: 'lining' | 'frontPocket' | 'backPocket' };
  /** mm from the left. */
  readonly x: number;
  /** Rows below the outside, from 0. */
  readonly row: number;
}

/** Sets the pieces other than the outside in rows no wider than the outside, `space` mm apart. */
export function placeSmallPieces({ outside, pocket, lining }: Pieces, space: number): readonly PlacedPiece[] {
  const small: PlacedPiece['piece'][] = [];
  if (pocket.count > 0) {
    small.push({ ...pocket, name: 'front pocket', kind: 'frontPocket' });
    small.push({ ...pocket, name: 'back pocket', kind: 'backPocket' });
  }
  if (lining !== null) small.push({ ...lining, name: 'centre lining', kind: 'lining' });
  let [x, row] = [0, 0];
  return small.map((piece) => {
    if (x > 0 && x + piece.width > outside.width) [x, row] = [0, row + 1];
    const placed = { piece, x, row };
    x += piece.width + space;
    return placed;
  });
}
