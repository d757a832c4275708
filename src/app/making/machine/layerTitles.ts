import { LAYERS } from '../../../core/index.ts';
import { LAYER_NAMES } from '../../../output/layerNames.ts';

/** Layers of a cutting file that are a part of one of a drawing, or on none. */
const OWN: Readonly<Record<string, string>> = {
  HOLE: 'holes',
  SLIT: 'slits',
  ENGRAVE: 'engraving',
  PICTURE: 'pictures',
};

/** A layer of a cutting file in the words of a maker. */
export function layerTitle(layer: string): string {
  const drawn = LAYERS.find((name) => name.toUpperCase() === layer);
  return OWN[layer] ?? (drawn === undefined ? layer.toLowerCase() : LAYER_NAMES[drawn]);
}

/** What a pass may take, in the order of the work. */
export const LAYER_TITLES: readonly (readonly [layer: string, title: string])[] = [
  'TEXT',
  'MARK',
  'FOLD',
  'SEAM',
  'SKIVE',
  'BOOK',
  'CENTRE',
  'DIRECTION',
  'MOUTH',
  'LINING',
  'AREA',
  'TOOLING',
  'ENGRAVE',
  'HOLE',
  'SLIT',
  'CUT',
].map((layer) => [layer, layerTitle(layer)]);
