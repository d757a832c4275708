import { isRecord, type Patch, valueAt } from '../job/jobDocument.ts';
import type { JobPath } from '../job/jobPath.ts';
import type { Job, LeatherName } from '../job/jobSchema.ts';
import { knowLeather } from './knowLeather.ts';
import { knownPatches, type TakenLeather } from './knownPatches.ts';
import type { Shop } from './shop.ts';

/** A figure of the job that would be another if it were taken from the leather now. */
export interface NewerFigure {
  readonly path: JobPath;
  readonly before: unknown;
  readonly after: unknown;
}

/**
 * The changes of a job that takes a leather for one of its pieces.
 * @param shop of the maker's leathers, this one among them
 */
export function takeLeather(piece: LeatherName, taken: TakenLeather, shop: Shop, job: Job): readonly Patch[] {
  const knowledge = knowLeather(taken.leather, shop, { worked: job.making.state });
  return knownPatches(piece, taken, knowledge, shop.hand, job);
}

/**
 * What the changes of `takeLeather` would alter in a job, figure by figure. Nothing where the job has the figure already, and neither the
 * mark of the leather that was taken nor how the doubts of its figures hang together, which come along.
 */
export function newerFigures(patches: readonly Patch[], job: Job): readonly NewerFigure[] {
  return patches
    .filter(({ path }) => !path.endsWith('.taken') && path !== 'correlations')
    .map(({ path, value }) => ({ path, before: valueAt(job, path), after: value ?? null }))
    .filter(({ before, after }) => !isSame(before ?? null, after));
}

/** Closeness at which two figures are one: finer than any that is kept. */
const SAME = 1e-6;

function isSame(before: unknown, after: unknown): boolean {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after) < SAME;
  // A doubt has more to it than what a leather tells.
  if (isRecord(before) && isRecord(after)) return Object.keys(after).every((key) => isSame(before[key], after[key]));
  return before === after;
}
