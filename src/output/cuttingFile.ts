import {
  arrangePieces,
  type Drawing,
  type Entity,
  isTracing,
  LAYERS,
  type Layer,
  mirroredDrawing,
  type PieceDrawing,
  seenOf,
  textWidth,
} from '../core/index.ts';
import { brokenLines } from './brokenLines.ts';
import { kerfed } from './kerf.ts';
import { LASER_CAUTION } from './laserCaution.ts';
import { LAYER_STYLES } from './layerStyle.ts';

export interface CuttingOptions {
  /** Seen from the flesh side, for tracing or cutting there. */
  readonly mirrored?: boolean;
  /** Width that the beam burns away, mm, 0 to 2. */
  readonly kerf_mm?: number;
  /** Between pieces, mm. */
  readonly gap_mm?: number;
  /** Layers to write; if left out, all but the tooling areas of a pattern. The cautions go with the words. */
  readonly layers?: readonly Layer[];
}

/** A layer of a cutting file. Machines tell passes apart by name or by colour, so no two share either. */
export interface CuttingLayer {
  readonly name: string;
  /** Number in the palette of DXF, and the same colour for SVG. */
  readonly aci: number;
  readonly colour: string;
  /** Dashes and gaps in turn, mm; empty for a solid line. */
  readonly dash: readonly number[];
  /** Which entities of a drawing belong here. */
  readonly takes: (layer: Layer, kind: Entity['kind']) => boolean;
}

function layerOf(
  name: string,
  aci: number,
  colour: string,
  layer: Layer | null,
  takes: (kind: Entity['kind']) => boolean = () => true,
): CuttingLayer {
  const dash = layer === null ? [] : LAYER_STYLES[layer].dash;
  return { name, aci, colour, dash, takes: (own, kind) => own === layer && takes(kind) };
}

export const CAUTION_LAYER = layerOf('CAUTION', 30, '#ff7f00', null);

/**
 * Every layer, in the order in which a piece is worked: what is only drawn, holes and slits, the engraving of the tooling, and the
 * cut edge last, because a piece that is cut free may shift.
 */
export const CUTTING_LAYERS: readonly CuttingLayer[] = [
  CAUTION_LAYER,
  layerOf('TEXT', 94, '#008100', 'text'),
  layerOf('BOOK', 54, '#818100', 'book'),
  layerOf('CENTRE', 42, '#bd8d00', 'centre'),
  layerOf('AREA', 44, '#ffbf7f', 'area'),
  layerOf('DIRECTION', 140, '#00bfff', 'direction'),
  layerOf('SKIVE', 34, '#814000', 'skive'),
  layerOf('SEAM', 200, '#bf00ff', 'seam'),
  layerOf('FOLD', 5, '#0000ff', 'fold'),
  layerOf('MOUTH', 214, '#810081', 'mouth'),
  layerOf('LINING', 104, '#008141', 'lining'),
  layerOf('MARK', 134, '#008181', 'mark'),
  layerOf('ENGRAVE', 230, '#ff007f', null),
  layerOf('HOLE', 6, '#ff00ff', 'hole', (kind) => kind !== 'line'),
  layerOf('SLIT', 174, '#000081', 'hole', (kind) => kind === 'line'),
  layerOf('TOOLING', 24, '#bd2e00', 'tooling'),
  layerOf('CUT', 1, '#ff0000', 'cut'),
];

/** One piece of a cutting file, its layers in the order of work. */
interface CuttingPiece {
  readonly id: PieceDrawing['id'] | `${PieceDrawing['id']}-${number}`;
  readonly name: PieceDrawing['name'];
  /** Lower left corner of its box. */
  readonly at: readonly [number, number];
  readonly layers: readonly { readonly layer: CuttingLayer; readonly entities: readonly Entity[] }[];
}

/** Content of both kinds of cutting file; y up, the lowest piece at 0, mm. */
export interface CuttingFile {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly CuttingPiece[];
  /** Lines of the cautions under the pieces; empty where words are left out. */
  readonly cautions: readonly string[];
}

/** Letter height and line step of the cautions, mm. */
export const CAUTION = { height: 3, row: 4.5 } as const;

/**
 * Arranges the pieces for a cutter and allows for its kerf.
 *
 * Throws RangeError for a kerf out of range.
 */
export function cuttingFile(drawing: Drawing, options: CuttingOptions, gap: number): CuttingFile {
  const { mirrored = false, kerf_mm = 0, layers = usualLayers(drawing.pieces.every(isTracing)) } = options;
  const { width, height, pieces } = arrangePieces(mirrored ? mirroredDrawing(drawing) : drawing, gap);
  return {
    width,
    height,
    pieces: pieces.map(({ piece, copy, at }) => ({
      id: piece.count === 1 ? piece.id : `${piece.id}-${copy}`,
      name: piece.name,
      at,
      layers: inOrder(kerfed(piece, kerf_mm), layers),
    })),
    cautions: layers.includes('text') ? LASER_CAUTION.flatMap((text) => brokenLines(text, width, rowWidth)) : [],
  };
}

/** A tracing shows the areas that it is laid out in; a machine would engrave them. */
export const usualLayers = (isOfTracings: boolean): readonly Layer[] =>
  LAYERS.filter((layer) => layer !== 'area' || isOfTracings);

/** Width of a row of the cautions, mm. */
export const rowWidth = (words: string): number => textWidth(words, CAUTION.height);

/** What is drawn of a piece on each layer of a file, where only the chosen layers of the pattern are; empty layers are left out. */
export const inOrder = (piece: PieceDrawing, layers: readonly Layer[]): CuttingPiece['layers'] =>
  CUTTING_LAYERS.map((layer) => ({
    layer,
    entities: layers.flatMap((own) => seenOf(piece, own, layers).filter(({ kind }) => layer.takes(own, kind))),
  })).filter(({ entities }) => entities.length > 0);
