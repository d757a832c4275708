import { z } from 'zod';

/** How the bench is looked at; it is kept in the browser and is no part of the job. */
const viewChoiceSchema = z.object({
  units: z.enum(['mm', 'in']).default('mm'),
  scheme: z.enum(['system', 'light', 'dark']).default('system'),
  look: z.enum(['full', 'light']).default('full'),
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
