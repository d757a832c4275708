import type { Job } from '../job/jobSchema.ts';
import { type OrderedStep, type StepId, workOrder } from '../job/workOrder.ts';
import type { CoverSupplies } from './coverSupplies.ts';

/** One step with the time that the job's rates give it. */
export interface WorkStep extends OrderedStep {
  readonly minutes: number;
}

/** Order of work with times, each step once. */
export function workSteps(job: Job, { outlines, holes, punched, tooling }: CoverSupplies): WorkStep[] {
  const { minutes } = job.rates;
  const pieces = outlines.reduce((sum, { count }) => sum + count, 0);
  const takes: Readonly<Record<StepId, number>> = {
    ...minutes,
    cut: minutes.cut * pieces,
    punch: minutes.punch * punched,
    stitch: minutes.stitch * holes,
    lace: minutes.lace * holes,
    // Without a design the step is what the maker tools freehand.
    ...(tooling.line > 0 && { tool: (minutes.tooling * tooling.line) / 100 }),
  };
  return workOrder(job).map((step) => ({ ...step, minutes: takes[step.id] }));
}
