import { type CoverDesign, foldedCover, type RangePoint } from '../../core/index.ts';
import type { Take } from './partTakes.ts';

/** Few enough takes for a file of some MB, enough for the folding to look smooth. */
const TAKES = 25;

/** The making of a cover from the flat pattern to the closed book, at even steps. */
export const sequenceTakes = (design: CoverDesign, point: RangePoint = 'nominal', count = TAKES): Take[] =>
  Array.from({ length: count }, (_, i) => {
    const at = i / (count - 1);
    return { at, parts: foldedCover(design, { kind: 'sequence', at }, point).parts };
  });
