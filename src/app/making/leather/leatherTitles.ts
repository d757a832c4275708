import type { LeatherName } from '../../../core/index.ts';

export const LEATHER_TITLES: Readonly<Record<LeatherName, string>> = {
  outside: 'Outside leather',
  pocket: 'Pocket leather',
  lining: 'Lining leather',
};
