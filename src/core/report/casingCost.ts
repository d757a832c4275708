import type { CoverDesign } from '../fold/coverDesign.ts';
import { TEST_FIRST } from '../leather/changeOf.ts';
import { usualChange } from '../leather/usualChange.ts';
import type { Printer } from '../units/printer.ts';

/**
 * What casing costs beside what it is advised for: leather that was cut to be worked dry shrinks with it, by how much is in doubt. To be
 * put after the advice; empty where the job already counts on leather that is worked wet.
 */
export function casingCost({ job, pieces }: Pick<CoverDesign, 'job' | 'pieces'>, say: Printer): string {
  if (job.making.state !== 'dry') return '';
  const { mean, u } = usualChange({ ...job.making, state: 'cased' });
  const { width, height } = pieces.outside;
  return (
    ` Cased leather shrinks, by ${say.share(Math.abs(mean))} give or take ${say.share(2 * u, 1)}: ${say.length(Math.abs(mean) * width)} of width and ` +
    `${say.length(Math.abs(mean) * height)} of height. ${TEST_FIRST} Choose it under Making, and the cut allows for it.`
  );
}
