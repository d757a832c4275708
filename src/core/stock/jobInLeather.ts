import { type JobDocument, patched } from '../job/jobDocument.ts';
import type { Job } from '../job/jobSchema.ts';
import type { TakenLeather } from './knownPatches.ts';
import type { Shop } from './shop.ts';
import { takeLeather } from './takeLeather.ts';

/**
 * The same cover in another leather of the maker, cut anew for it: sizes that were fixed for the job's own leather would show only how badly
 * one cut serves two. Pockets of a leather of their own keep it.
 * @param document that `job` was parsed from
 */
export function jobInLeather(document: JobDocument, job: Job, taken: TakenLeather, shop: Shop): JobDocument {
  const isOwn = job.leather.outside.taken?.id === taken.id;
  return patched(document, [
    // The price of the leather before says nothing of one without a price.
    ...(isOwn ? [] : [{ path: 'rates.prices.outside_per_dm2', value: undefined } as const]),
    ...takeLeather('outside', taken, shop, job),
    { path: 'leather.outside.foldThickness_mm', value: undefined },
    { path: 'pattern.outsideWidth_mm', value: undefined },
    { path: 'pattern.outsideHeight_mm', value: undefined },
  ]);
}
