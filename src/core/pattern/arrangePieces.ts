import { TOLERANCE } from '../math/tolerance.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Drawing, PieceDrawing } from './drawing.ts';

/** One piece to cut, with the lower left corner of its box. */
export interface ArrangedPiece {
  readonly piece: PieceDrawing;
  /** Which of the pieces cut from this pattern, from 1. */
  readonly copy: number;
  readonly at: Vec2;
}

export interface Arrangement {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly ArrangedPiece[];
}

/**
 * Places every piece, as often as it is cut, in rows; y up, the first row on top. This is an overview for the screen and
 * for cutting files, not a layout on the hide.
 * @param gap between pieces, mm, 0 or more
 * @param aspect width over height, above 0, of the room that the rows fill to the largest scale; without it no row is wider
 *   than the widest piece
 */
export function arrangePieces({ pieces }: Drawing, gap: number, aspect?: number): Arrangement {
  const copies = pieces.flatMap((piece) => Array.from({ length: piece.count }, (_, i) => ({ piece, copy: i + 1 })));
  const narrowest = inRows(copies, gap, Math.max(...pieces.map(({ width }) => width)));
  if (aspect === undefined) return narrowest;
  const scale = ({ width, height }: Arrangement): number => Math.min(aspect / width, 1 / height);
  let limit = -gap;
  return copies.reduce((best, { piece }) => {
    limit += gap + piece.width;
    const next = limit > narrowest.width ? inRows(copies, gap, limit) : best;
    return scale(next) > scale(best) ? next : best;
  }, narrowest);
}

function inRows(copies: readonly Omit<ArrangedPiece, 'at'>[], gap: number, limit: number): Arrangement {
  const rows: { width: number; height: number; pieces: (Omit<ArrangedPiece, 'at'> & { x: number })[] }[] = [];
  for (const { piece, copy } of copies) {
    let row = rows.at(-1);
    if (row === undefined || row.width + gap + piece.width > limit + TOLERANCE.length) {
      row = { width: -gap, height: 0, pieces: [] };
      rows.push(row);
    }
    row.pieces.push({ piece, copy, x: row.width + gap });
    row.width += gap + piece.width;
    row.height = Math.max(row.height, piece.height);
  }
  const height = rows.reduce((sum, row) => sum + row.height, 0) + gap * (rows.length - 1);
  let top = height;
  const placed = rows.flatMap((row) => {
    const at = row.pieces.map(({ piece, copy, x }): ArrangedPiece => ({ piece, copy, at: [x, top - piece.height] }));
    top -= row.height + gap;
    return at;
  });
  return { width: Math.min(limit, Math.max(...rows.map(({ width }) => width))), height, pieces: placed };
}
