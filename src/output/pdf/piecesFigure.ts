import { arrangePieces, type Box, type Drawing, type Layer, pieceWords, printer } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { drawLegend, layersIn, legendHeight } from './legend.ts';
import type { PdfCanvas } from './pdfCanvas.ts';

/** Layers that are clear on a small scale; single holes run into one line, which shows where they are. */
const SHOWN: readonly Layer[] = ['cut', 'fold', 'seam', 'hole', 'skive', 'centre', 'tooling', 'mouth', 'lining'];
const SIZE = 2.7;
const LEADING = 1.4;
/** Between pieces on paper, with room for a number, mm. */
const BETWEEN = 6;

/** Draws every piece once, as large as a box allows, with its number; the numbers and the lines are explained below. */
export function drawPieces(canvas: PdfCanvas, box: Box, drawing: Drawing): void {
  const { exact, size } = printer(drawing.units);
  const pieces = drawing.pieces.map((piece) => ({ ...piece, count: 1 }));
  const layers = layersIn(pieces).filter((layer) => SHOWN.includes(layer));
  const key = drawing.pieces
    .map((piece, i) => {
      const width = (piece.id === 'half' ? exact : size)(piece.width);
      return `${i + 1} ${pieceWords(piece)}: ${width} × ${size(piece.height)}`;
    })
    .join('; ');
  const lines = brokenLines(`${key}. Not in true size.`, box.width, (part) => canvas.widthOf(part, SIZE));
  const foot = legendHeight(canvas, box.width, layers) + lines.length * SIZE * LEADING + 3;
  const room = { ...box, y: box.y + foot, height: box.height - foot };
  canvas.tagged('Figure', () => drawOutlines(canvas, room, { ...drawing, pieces }, layers), {
    alt: `The pieces of the cover: ${key}`,
    box: room,
  });
  canvas.tagged('Caption', () => {
    lines.forEach((line, i) => {
      canvas.words(line, [box.x, room.y - 1 - (i + 1) * SIZE * LEADING], SIZE);
    });
  });
  drawLegend(canvas, [box.x, box.y + foot - 2 - lines.length * SIZE * LEADING], box.width, layers);
}

function drawOutlines(canvas: PdfCanvas, room: Box, drawing: Drawing, layers: readonly Layer[]): void {
  // The gap on the pieces depends on the scale, which depends on the gap: a second try is near enough.
  const [aspect, inner] = [room.width / (room.height - BETWEEN), room.height - BETWEEN];
  const fitting = (gap: number) => {
    const arranged = arrangePieces(drawing, gap, aspect);
    return { arranged, scale: Math.min(1, room.width / arranged.width, inner / arranged.height) };
  };
  const { arranged, scale } = fitting(BETWEEN / fitting(0).scale);
  const left = room.x + (room.width - arranged.width * scale) / 2;
  const low = room.y + Math.max(0, (inner - arranged.height * scale) / 2);
  arranged.pieces.forEach(({ piece, at: [x, y] }, i) => {
    const map = { origin: [left + x * scale, low + y * scale], from: [0, 0], scale: [scale, scale] } as const;
    for (const layer of layers)
      canvas.layer(
        layer,
        piece.layers[layer].filter(({ kind }) => kind !== 'text'),
        map,
      );
    canvas.words(String(i + 1), [map.origin[0], map.origin[1] + piece.height * scale + 1.2], 3.4);
  });
}
