import type { Report, RestRange } from '../../../core/index.ts';

/** What the springy model says of the cover; undefined until it is solved. */
export type Strip = Report['fit']['nominal']['strip'];

/** Where a cover creased as the job has it comes to rest; undefined where that was not found. An end that was not found is shut or flat. */
export function restRange(strip: Strip): RestRange | undefined {
  const rest = strip?.rest.creased;
  if (!rest) return undefined;
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  return {
    opening: radians(rest.opening_deg),
    least: radians(rest.leastOpening_deg ?? 0),
    most: radians(rest.mostOpening_deg ?? 180),
  };
}
