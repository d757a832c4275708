import type { RangePoint } from '../../leather/leatherModel.ts';
import { findLevel } from '../../math/findLevel.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { wrapSection } from './wrapSection.ts';

/** Openings between which the cover reaches its seats on both boards, radians. */
export interface ReachRange {
  readonly least: number;
  readonly most: number;
}

/** Spare length that counts as none, mm: floating-point noise of sums of a few hundred mm. */
const TOUCH = 1e-6;
/** Openings tried, from the widest down, to find one at which the cover reaches. */
const STEPS = 12;

/**
 * Smallest and largest opening at which the cover reaches; null where the boards do not go in, or it reaches at none.
 *
 * The fit gives both from the length of the wrap. Here the cover must also reach while it is held flat to the boards as
 * far as the pockets go, which over a rounded back takes more than the taut path.
 * @param forced opening that is not gone below, radians
 */
export function reachRange(design: CoverDesign, point: RangePoint, forced = 0): ReachRange | null {
  const { staysOpen, opensTo, seats } = design.fits[point];
  if (!seats || staysOpen === null || opensTo === null) return null;
  const least = Math.max(staysOpen, forced);
  const widest = Math.max(least, Math.min(Math.PI, opensTo));
  // What thinned layers cost is pressed out of the seats.
  const spare = (angle: number): number => {
    const { slack, slanted } = wrapSection(design.job, design.made, design.needs[point], angle);
    return slack + slanted;
  };
  if (spare(widest) >= -TOUCH) return { least, most: widest };
  for (let i = 1; i <= STEPS; i++) {
    const angle = widest + ((least - widest) * i) / STEPS;
    if (spare(angle) < -TOUCH) continue;
    const before = widest + ((least - widest) * (i - 1)) / STEPS;
    return { least, most: findLevel((x) => -spare(x), 0, angle, before) };
  }
  return null;
}
