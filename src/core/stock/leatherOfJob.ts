import type { Job, LeatherName } from '../job/jobSchema.ts';
import { MOST_NAME } from '../job/leatherSchema.ts';
import { temperOf } from '../leather/temper.ts';
import { LEATHER_FORMAT, type StockLeather, stockLeatherSchema } from './stockSchema.ts';

/**
 * A leather of a job as the maker's leathers would keep it: what it was bought as. K, bend ratio and stiffness stay in the job, for only
 * tests tell them of a leather; where they are those of a temper, that is kept.
 */
export function leatherOfJob(job: Job, piece: LeatherName, name: string): StockLeather {
  const { min_mm, max_mm, ...own } = job.leather[piece] ?? job.leather.outside;
  const { colour, surface } = job.finish[piece] ?? job.finish.outside;
  const temper = temperOf(own)?.name;
  return stockLeatherSchema.parse({
    format: LEATHER_FORMAT,
    version: 1,
    name: name.slice(0, MOST_NAME),
    min_mm,
    max_mm,
    temper: temper === 'card' ? undefined : temper,
    colour,
    surface,
    price_per_dm2: job.rates.prices[`${piece}_per_dm2`],
  });
}
