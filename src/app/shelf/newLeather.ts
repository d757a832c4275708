import { leatherOfJob, openLeather, parseLeatherWeight, type StockLeather } from '../../core/index.ts';
import type { BenchStore } from '../state/bench.ts';
import type { ShelfRecord } from './shelfSchema.ts';
import type { Shelved } from './shelfTrouble.ts';
import { theLeathers } from './theLeathers.ts';

/** A weight as a first value to type over. Common practice, no source. */
const USUAL = '4-5 oz';

/** A leather of which nothing is known yet. */
export function freshLeather(): StockLeather {
  const weight = parseLeatherWeight(USUAL);
  const range = weight.ok ? { min_mm: weight.value.min, max_mm: weight.value.max } : {};
  const opened = openLeather({ format: 'coverwright-leather', version: 1, name: 'New leather', ...range });
  if (!opened.ok) throw new Error(opened.issues[0]?.message);
  return opened.document;
}

/** Puts the leather of the open job's outside among the maker's leathers; the job then has taken it. */
export async function keepLeatherOfJob({ getState }: BenchStore): Promise<Shelved<ShelfRecord>> {
  const { job } = getState().history.good;
  const added = await theLeathers.add(leatherOfJob(job, 'outside', `Leather of ${job.name}`));
  if (!added.ok) return added;
  const { id, revision, name } = added.value;
  getState().dispatch({ type: 'edit', patches: [{ path: 'leather.outside.taken', value: { id, revision, name } }] });
  return added;
}
