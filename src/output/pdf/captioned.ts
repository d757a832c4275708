import { type Box, line, type PieceDrawing, type Text, textWidth, unwrittenWords } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';

const SIZE = 3;
const LEADING = 1.4;
/** From the piece down to its words, mm, along which a leader goes. */
const DROP = 8;
/** Least width that the words are broken to, mm. */
const NARROW = 60;

/**
 * A piece with the words that found no room on it below it, and a leader from them to its edge.
 * @param pad clear round the piece, mm
 * @returns the piece, and the box that it takes with its words, in its coordinates
 */
export function captioned(piece: PieceDrawing, pad: number): { readonly piece: PieceDrawing; readonly box: Box } {
  const { unwritten, width, height, layers } = piece;
  const words = unwritten.length === 0 ? [] : brokenLines(unwrittenWords(unwritten), Math.max(width, NARROW), measured);
  const x = Math.min(width / 2, 10);
  const texts = words.map(
    (text, i): Text => ({
      kind: 'text',
      at: [0, -DROP - SIZE - i * SIZE * LEADING],
      height: SIZE,
      rotation: 0,
      align: 'start',
      text,
    }),
  );
  const low = words.length === 0 ? pad : DROP + words.length * SIZE * LEADING + pad;
  const wide = Math.max(width, ...words.map(measured));
  return {
    piece:
      words.length === 0
        ? piece
        : {
            ...piece,
            layers: {
              ...layers,
              text: [...layers.text, ...texts],
              mark: [...layers.mark, line([x, -DROP + 1], [x, -1])],
            },
          },
    box: { x: -pad, y: -low, width: wide + 2 * pad, height: height + pad + low },
  };
}

const measured = (text: string): number => textWidth(text, SIZE);
