import type { Printer } from '../../core/index.ts';

/** A gap or an overrun of so many mm, such as `gap 1.2 mm`: the sign is in the word. */
export const gapWords = (gap: number, lengths: Pick<Printer, 'gap'>): string =>
  `${gap < 0 ? 'overrun' : 'gap'} ${lengths.gap(gap)}`;
