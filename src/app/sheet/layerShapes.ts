import {
  type Entity,
  hatchLines,
  LAYERS,
  type Layer,
  type Picture,
  type PieceDrawing,
  type Text,
} from '../../core/index.ts';
import { pathData } from '../../output/svg/pathData.ts';

/** One layer of a piece, ready for an SVG whose y runs down from the head: everything drawn as one path, and the words. */
export interface LayerShapes {
  readonly layer: Layer;
  readonly data: string;
  readonly words: readonly Text[];
  readonly pictures: readonly Picture[];
}

/** The layers of a piece that hold anything, in the order in which they are drawn. */
export function layerShapes({ layers, height }: PieceDrawing): readonly LayerShapes[] {
  const data = (entity: Entity): string => {
    const lines = (segments: Parameters<typeof pathData>[0]): string => pathData(segments, ([x, y]) => [x, height - y]);
    switch (entity.kind) {
      case 'text':
      case 'picture':
        return '';
      case 'path':
        return `${lines(entity.segments)}${entity.isClosed ? 'Z' : ''}`;
      case 'hatch':
        return hatchLines(entity)
          .map((line) => lines([line]))
          .join('');
      default:
        return lines([entity]);
    }
  };
  return LAYERS.filter((layer) => layers[layer].length > 0).map((layer) => ({
    layer,
    data: layers[layer].map(data).join(''),
    words: layers[layer].filter((entity) => entity.kind === 'text'),
    pictures: layers[layer].filter((entity) => entity.kind === 'picture'),
  }));
}
