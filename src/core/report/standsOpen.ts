import { radians, radiansFromDegrees } from '../units/radians.ts';

/** Step that openings are told in, degrees: nothing finer is known of leather that was not tested. */
const STEP_DEG = 5;

/**
 * How far a released cover stands open, as a verb: `stands open 20 to 60 degrees`, `stays shut`.
 * @param least, most ends of the range, radians, 0 to pi; widened to whole steps of 5 degrees
 * @param angle prints an opening, as `60 degrees`
 */
export function standsOpen(least: number, most: number, angle: (value: number) => string): string {
  const step = radiansFromDegrees(STEP_DEG);
  // A hair's breadth, so that a whole step stays what it is.
  const low = radians(step * Math.floor(least / step + 1e-9));
  const high = radians(step * Math.ceil(most / step - 1e-9));
  const isWide = high > Math.PI - step;
  if (high === 0) return 'stays shut';
  if (!isWide) return `stands open ${low === high ? '' : `${plain(angle(low))} to `}${angle(high)}`;
  if (low > Math.PI - step) return 'springs right open';
  return low === 0 ? 'may rest anywhere from shut to wide open' : `stands open ${angle(low)} or more`;
}

const plain = (angle: string): string => angle.slice(0, angle.indexOf(' '));
