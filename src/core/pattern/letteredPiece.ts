import { changeOf, changeWords } from '../leather/changeOf.ts';
import type { PieceDrawing } from './drawing.ts';
import { type LabelLines, letteringOn, type Word } from './lettering.ts';
import type { PatternSource } from './seam.ts';
import type { Box } from './textBox.ts';

/** Which face of a piece is seen: card has no grain. */
export const faceUp = ({ isCard = false }: PatternSource): string => (isCard ? 'outside face up' : 'grain side up');

/** For which state of the leather a piece is larger or smaller than it will be; nothing where it keeps its size. */
function cutFor({ job, isCard = false }: PatternSource): string[] {
  const { width, height } = changeOf(job);
  if (isCard || (width === 0 && height === 0)) return [];
  const wide = changeWords(job, width);
  return [`as cut: it ${width === height ? wide : `${wide} across, ${changeWords(job, height)} from head to tail`}`];
}

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
  const label = lettering.label(name, [`cut ${count}, ${faceUp(source)}`, ...cutFor(source), ...lines], box);
  return {
    ...piece,
    layers: { ...layers, text: [...label, ...beside] },
    holes: layers.hole.length,
    unwritten: lettering.unwritten,
  };
}
