import { cardDesign, type Job } from '../../core/index.ts';
import { remembered } from './remembered.ts';

/** The job in card, for its trial. */
export const cardOf = remembered((job: Job) => cardDesign(job, job.mockup.card));
