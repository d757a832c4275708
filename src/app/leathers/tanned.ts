import type { StockLeather } from '../../core/index.ts';

/** How a leather was tanned, as it is said of it. */
export const TANNED: Readonly<Record<StockLeather['tannage'], string>> = {
  vegetable: 'vegetable tanned',
  chrome: 'chrome tanned',
  combination: 'combination tanned',
  alum: 'alum tawed',
  oil: 'oil tanned',
  'not known': 'tannage not known',
};
