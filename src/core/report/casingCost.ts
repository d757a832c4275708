import type { CoverDesign } from '../fold/coverDesign.ts';
import { USUAL_CHANGE } from '../leather/changeOf.ts';
import type { Printer } from '../units/printer.ts';

/**
 * What casing costs beside what it is advised for: leather that was cut to be worked dry shrinks with it. To be put after
 * the advice; empty where the job already counts on leather that is worked wet.
 */
export function casingCost({ job, pieces }: Pick<CoverDesign, 'job' | 'pieces'>, say: Printer): string {
  if (job.making.state !== 'dry') return '';
  const shrinks = Math.abs(USUAL_CHANGE);
  return ` Cased leather shrinks, by ${say.share(shrinks)} as assumed: ${say.length(shrinks * pieces.outside.width)} of width. Choose it under Making, and the cut allows for it.`;
}
