import * as z from 'zod/mini';
import { JOB_PATHS } from '../job/jobPaths.ts';

/**
 * - `tight`: it fits more likely than not, but not with the wished chance; or it needs care in the making;
 * - `loose`: over the loosest gap;
 * - `unknown`: what decides is missing, or a solve found no answer;
 * - `none`: a row that only informs, was not looked at, or has no meaning for this cover.
 */
export const verdictSchema = z.enum(['fits', 'tight', 'loose', 'fails', 'unknown', 'none']);

/** What a check found: a row of the report without its name. */
export const findingSchema = z.strictObject({
  verdict: verdictSchema,
  /** The verdict in plain words; for `fails`, and where a row has a reason, its own, as `too small`. */
  state: z.string(),
  value: z.number(),
  limit: z.number(),
  /**
   * Which side of the limit is asked for; `within` the limit either way, for a difference that may have either sign. Null
   * where there was nothing to judge: the limit is then 0, and the value too where nothing was found.
   */
  bound: z.nullable(z.enum(['atLeast', 'atMost', 'within'])),
  /** What was found, and why. */
  message: z.string(),
  /** What to do about it; empty for none. */
  remedy: z.string(),
  /** The remedy as changes to the job; empty where no change to the job is the remedy. */
  change: z.readonly(
    z.array(z.strictObject({ path: z.enum(JOB_PATHS), value: z.union([z.number(), z.string(), z.null()]) })),
  ),
});

export type Verdict = z.output<typeof verdictSchema>;
export type Finding = z.output<typeof findingSchema>;
