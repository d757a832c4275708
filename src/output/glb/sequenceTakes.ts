import { type CoverDesign, foldedCover, type RangePoint } from '../../core/index.ts';
import type { Take } from './partTakes.ts';

/** Close enough for no movement to be missed; each part keeps the few that it needs. */
const TAKES = 41;

/** The making of a cover from the flat pattern to the closed book, at even steps. */
export const sequenceTakes = (design: CoverDesign, point: RangePoint = 'nominal', count = TAKES): Take[] =>
  Array.from({ length: count }, (_, i) => {
    const at = i / (count - 1);
    return { at, parts: foldedCover(design, { kind: 'sequence', at }, point).parts };
  });
