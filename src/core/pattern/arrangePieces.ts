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
 * Places every piece, as often as it is cut, in rows no wider than the widest piece, or than so many of it; y up, the first
 * row on top. This is an overview for the screen and for cutting files, not a layout on the hide.
 * @param gap between pieces, mm, 0 or more
 * @param across width of a row, in widths of the widest piece, 1 or more
 */
export function arrangePieces({ pieces }: Drawing, gap: number, across = 1): Arrangement {
  const limit = across * Math.max(...pieces.map(({ width }) => width));
  const rows: { x: number; height: number; pieces: { piece: PieceDrawing; copy: number; x: number }[] }[] = [];
  for (const piece of pieces) {
    for (let copy = 1; copy <= piece.count; copy++) {
      let row = rows.at(-1);
      if (row === undefined || row.x + piece.width > limit + TOLERANCE.length) {
        row = { x: 0, height: 0, pieces: [] };
        rows.push(row);
      }
      row.pieces.push({ piece, copy, x: row.x });
      row.x += piece.width + gap;
      row.height = Math.max(row.height, piece.height);
    }
  }
  const height = rows.reduce((sum, row) => sum + row.height, 0) + gap * (rows.length - 1);
  let top = height;
  const placed = rows.flatMap((row) => {
    const at = row.pieces.map(({ piece, copy, x }): ArrangedPiece => ({ piece, copy, at: [x, top - piece.height] }));
    top -= row.height + gap;
    return at;
  });
  return { width: Math.min(limit, Math.max(...rows.map(({ x }) => x - gap))), height, pieces: placed };
}
