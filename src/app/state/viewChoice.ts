import * as z from 'zod/mini';
import { keptChoice } from './keptChoice.ts';

/** How the bench is looked at; it is kept in the browser and is no part of the job. */
const viewChoiceSchema = z.object({
  /** Chosen last: what a new cover is worked in. */
  units: z._default(z.enum(['mm', 'in']), 'mm'),
  scheme: z._default(z.enum(['system', 'light', 'dark']), 'system'),
  look: z._default(z.enum(['full', 'light']), 'full'),
});

export type ViewChoice = z.output<typeof viewChoiceSchema>;

export const { read: keptViewChoice, keep: keepViewChoice } = keptChoice('coverwright.view.v1', viewChoiceSchema);
