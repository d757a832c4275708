import { circle, LAYERS, type Layer, type PieceDrawing, type Vec2 } from '../../core/index.ts';
import { LAYER_NAMES } from '../layerNames.ts';
import type { PdfCanvas } from './pdfCanvas.ts';

const SIZE = 2.7;
const ROW = 4.6;
/** Length of the line that shows a layer: the longest dash and the start of the next, mm. */
const SAMPLE = 18;
const GAP = 2;
/** Radius of the hole beside a slit that stands for both. */
const HOLE = 0.6;

/** Layers with something drawn on them, in their order; words need no legend. */
export const layersIn = (pieces: readonly PieceDrawing[]): readonly Layer[] =>
  LAYERS.filter(
    (layer) => layer !== 'text' && pieces.some(({ layers }) => layers[layer].some(({ kind }) => kind !== 'text')),
  );

/** Height of a legend at a width, mm. */
export const legendHeight = (canvas: PdfCanvas, width: number, layers: readonly Layer[]): number =>
  Math.ceil(layers.length / columnsIn(canvas, width, layers)) * ROW;

/**
 * Draws which line means what: each layer in its own line with its plain name, in columns.
 * @param at upper left corner, page mm
 * @returns its height, mm
 */
export function drawLegend(canvas: PdfCanvas, [left, top]: Vec2, width: number, layers: readonly Layer[]): number {
  const columns = columnsIn(canvas, width, layers);
  const rows = Math.ceil(layers.length / columns);
  canvas.group('L', () => {
    layers.forEach((layer, i) => {
      const x = left + (Math.floor(i / rows) * width) / columns;
      const y = top - ((i % rows) + 0.5) * ROW;
      const entities = sampleOf(layer, [x, y]);
      canvas.artifact(() => canvas.layer(layer, entities, { origin: [0, 0], from: [0, 0], scale: [1, 1] }));
      canvas.group('LI', () =>
        canvas.tagged('LBody', () => canvas.words(LAYER_NAMES[layer], [x + SAMPLE + GAP, y - SIZE * 0.35], SIZE)),
      );
    });
  });
  return rows * ROW;
}

function sampleOf(layer: Layer, [x, y]: Vec2) {
  const line = (from: number, to: number) => ({ kind: 'line', from: [x + from, y], to: [x + to, y] }) as const;
  return layer === 'hole' ? [circle([x + SAMPLE / 3, y], HOLE), line(SAMPLE / 2, SAMPLE / 2 + 2.4)] : [line(0, SAMPLE)];
}

function columnsIn(canvas: PdfCanvas, width: number, layers: readonly Layer[]): number {
  const widest = Math.max(0, ...layers.map((layer) => canvas.widthOf(LAYER_NAMES[layer], SIZE)));
  return Math.max(1, Math.min(layers.length, Math.floor(width / (SAMPLE + widest + 3 * GAP))));
}
