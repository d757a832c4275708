import type { PieceDrawing } from './drawing.ts';
import { type LabelLines, letteringOn, type Word } from './lettering.ts';
import type { PatternSource } from './seam.ts';
import type { Box } from './textBox.ts';

/** Which face of a piece is seen: card has no grain. */
export const faceUp = ({ isCard = false }: PatternSource): string => (isCard ? 'outside face up' : 'grain side up');

/**
 * Sets the words of a piece where all its lines leave room: first those beside marks, then its name with how often it is
 * cut and `lines` under it.
 */
export function letteredPiece(
  source: PatternSource,
  piece: Omit<PieceDrawing, 'holes' | 'unwritten'>,
  lines: readonly LabelLines[],
  box: Box,
  words: readonly Word[] = [],
): PieceDrawing {
  const { name, count, layers } = piece;
  const lettering = letteringOn(piece);
  const beside = words.flatMap((word) => lettering.word(...word));
  const label = lettering.label(name, [`cut ${count}, ${faceUp(source)}`, ...lines], box);
  return {
    ...piece,
    layers: { ...layers, text: [...label, ...beside] },
    holes: layers.hole.length,
    unwritten: lettering.unwritten,
  };
}
