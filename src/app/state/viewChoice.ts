import * as z from 'zod/mini';

/** How the bench is looked at; it is kept in the browser and is no part of the job. */
const viewChoiceSchema = z.object({
  /** Chosen last: what a new cover is worked in. */
  units: z._default(z.enum(['mm', 'in']), 'mm'),
  scheme: z._default(z.enum(['system', 'light', 'dark']), 'system'),
  look: z._default(z.enum(['full', 'light']), 'full'),
});

export type ViewChoice = z.output<typeof viewChoiceSchema>;

const KEY = 'coverwright.view.v1';

export function keptViewChoice(): ViewChoice {
  try {
    return viewChoiceSchema.parse(JSON.parse(localStorage.getItem(KEY) ?? '{}'));
  } catch {
    return viewChoiceSchema.parse({});
  }
}

/** Nothing is lost that matters where the browser refuses to keep it, so a failure is passed over. */
export function keepViewChoice(choice: ViewChoice): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(choice));
  } catch {}
}
