/** Layers of a cutting file in the words of a maker, in the order of the work. */
export const LAYER_TITLES: readonly (readonly [layer: string, title: string])[] = [
  ['TEXT', 'words'],
  ['MARK', 'marks'],
  ['FOLD', 'folds'],
  ['SEAM', 'seam line'],
  ['SKIVE', 'skiving'],
  ['BOOK', 'boards of the book'],
  ['CENTRE', 'centre line'],
  ['DIRECTION', 'direction'],
  ['MOUTH', 'pocket mouths'],
  ['LINING', 'ends of the lining'],
  ['AREA', 'tooling areas'],
  ['TOOLING', 'tooling'],
  ['ENGRAVE', 'engraving'],
  ['HOLE', 'holes'],
  ['SLIT', 'slits'],
  ['CUT', 'cut edge'],
];

export const layerTitle = (layer: string): string =>
  LAYER_TITLES.find(([name]) => name === layer)?.[1] ?? (layer === 'PICTURE' ? 'pictures' : layer.toLowerCase());
