import type { Layer } from '../core/index.ts';

/** What each layer shows, in the words of legends and of the choice of layers. */
export const LAYER_NAMES: Readonly<Record<Layer, string>> = {
  cut: 'cut edge',
  fold: 'folds',
  seam: 'seam line',
  hole: 'holes and slits',
  skive: 'skiving',
  book: 'boards of the book',
  centre: 'centre line',
  area: 'tooling areas',
  tooling: 'tooling',
  direction: 'direction',
  mouth: 'pocket mouths',
  lining: 'ends of the lining',
  mark: 'marks',
  text: 'words',
};
