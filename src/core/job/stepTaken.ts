import type { Job } from './jobSchema.ts';
import type { OptionalStep } from './orderSchema.ts';

/** Whether the seam's holes are made through all layers at once, along a scribed line. */
export const isPunchedTogether = ({ order }: Job): boolean => order.holes === 'after cementing';

/**
 * Whether the job asks for a step by itself. Casing, drying and dyeing follow from how the leather is worked, tracing and
 * tooling from the designs. Lining and cementing belong to assembling, unless the holes come after them.
 */
export function isStepAskedFor(job: Job, step: OptionalStep): boolean {
  const { making, tooling, leather, order } = job;
  switch (step) {
    case 'case':
      return making.state === 'cased' || making.state === 'wet-formed';
    case 'trace':
    case 'tool':
      return tooling.designs.length > 0;
    case 'dry':
      return making.state !== 'dry' || order.case === true || order.dye === true;
    case 'dye':
      return making.state === 'dyed';
    // Dye that is not sealed comes off on the book.
    case 'dress':
      return isStepTaken(job, 'dye') || making.dressing !== 'nothing';
    case 'line':
      return isPunchedTogether(job) && leather.lining !== null;
    case 'cement':
      return isPunchedTogether(job);
  }
}

/** Whether a step is taken: as the maker says, else where the job asks for it. */
export const isStepTaken = (job: Job, step: OptionalStep): boolean => job.order[step] ?? isStepAskedFor(job, step);
