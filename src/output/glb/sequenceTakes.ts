import type { CoverDesign, RangePoint } from '../../core/index.ts';
import { modelParts } from '../model/modelParts.ts';
import type { Take } from './partTakes.ts';

/** Close enough for no movement to be missed; each part keeps the few that it needs. */
const TAKES = 41;

/** The making of a cover from the flat pattern to the closed book, at even steps. */
export function sequenceTakes(design: CoverDesign, point: RangePoint = 'nominal', count = TAKES): Take[] {
  const partsIn = modelParts(design, point);
  return Array.from({ length: count }, (_, i) => {
    const at = i / (count - 1);
    return { at, parts: partsIn({ kind: 'sequence', at }) };
  });
}
