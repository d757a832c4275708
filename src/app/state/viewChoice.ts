import * as z from 'zod/mini';
import { keptChoice } from './keptChoice.ts';

/** View of the bench; kept in the browser, not in the job. */
const viewChoiceSchema = z.object({
  /** The unit chosen last, used for a new cover. */
  units: z._default(z.enum(['mm', 'in']), 'mm'),
  scheme: z._default(z.enum(['system', 'light', 'dark']), 'system'),
  look: z._default(z.enum(['full', 'light']), 'full'),
});

export type ViewChoice = z.output<typeof viewChoiceSchema>;

export const { read: keptViewChoice, keep: keepViewChoice } = keptChoice('coverwright.view.v1', viewChoiceSchema);
