import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { soundJob } from '../../jobArbitrary.ts';

export type Change = { readonly [K in keyof JobInput]?: object | string };

/** Lays changes over a document, objects merged. */
export function merged(document: object, change: object): object {
  const result: Record<string, unknown> = { ...document };
  for (const [key, value] of Object.entries(change)) {
    const old = result[key];
    const isObject = (x: unknown): x is object => typeof x === 'object' && x !== null && !Array.isArray(x);
    result[key] = isObject(old) && isObject(value) ? merged(old, value) : value;
  }
  return result;
}

/** The tide ledger's cover with parts of its job changed. */
export const coverOf = (change: Change = {}): CoverDesign => coverDesign(soundJob(merged(tideLedger, change)));
