import { type JobDocument, patched } from '../job/jobDocument.ts';
import type { Job } from '../job/jobSchema.ts';
import { knowLeather } from './knowLeather.ts';
import { knownPatches, type TakenLeather } from './knownPatches.ts';
import type { Shop } from './shop.ts';

/**
 * The same cover in another leather of the maker, cut anew for it: sizes that were fixed for the job's own leather would show only how badly
 * one cut serves two. Pockets of a leather of their own keep it.
 * @param document that `job` was parsed from
 */
export function jobInLeather(document: JobDocument, job: Job, taken: TakenLeather, shop: Shop): JobDocument {
  const knowledge = knowLeather(taken.leather, shop, { worked: job.making.state });
  return patched(document, [
    ...knownPatches('outside', taken, knowledge, shop.hand, job),
    { path: 'leather.outside.foldThickness_mm', value: undefined },
    { path: 'pattern.outsideWidth_mm', value: undefined },
    { path: 'pattern.outsideHeight_mm', value: undefined },
  ]);
}
