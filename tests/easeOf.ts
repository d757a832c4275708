import type { Ease } from '../src/core/allowance/ease.ts';
import type { NeedsOverRange } from '../src/core/allowance/needs.ts';
import { coverDoubt } from '../src/core/doubt/coverDoubt.ts';
import { sizedEase } from '../src/core/doubt/sizedEase.ts';
import type { Job } from '../src/core/job/jobSchema.ts';

/** The ease that a job gives or leaves to the tool. */
export const easeOf = (job: Job, needs: NeedsOverRange): Ease => sizedEase(job, needs, coverDoubt(job));
