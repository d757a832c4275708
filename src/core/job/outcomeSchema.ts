import * as z from 'zod/mini';
import { checkCloses } from './closesRule.ts';
import { daySchema } from './daySchema.ts';
import { lengthField, numberField } from './field.ts';

const edge = (title: string) => z._default(z.nullable(lengthField(title, -60, 60)), null);
const opening = (title: string) => z._default(z.nullable(numberField(title, 'deg', 0, 180)), null);
const answer = (title: string) => z._default(z.nullable(z.boolean()), null).check(z.meta({ title }));

/**
 * How the finished cover came out, as read when it is handed over: gaps with the book pushed home, so that front and back together are
 * the spare wrap and head and tail the spare height. `error_mm` is two standard uncertainties of one reading.
 */
export const outcomeSchema = z
  .prefault(
    z.strictObject({
      day: z._default(z.nullable(daySchema), null).check(z.meta({ title: 'Handed over on' })),
      front_mm: edge('Front fore-edge'),
      back_mm: edge('Back fore-edge'),
      head_mm: edge('Head'),
      tail_mm: edge('Tail'),
      closes: answer('The cover closes'),
      opening_deg: opening('Stays open'),
      cracked: answer('The grain cracked'),
      weekLater_deg: opening('Stands open after a week'),
      error_mm: z.prefault(lengthField('Reading error', 0.05, 5), 0.5),
    }),
    {},
  )
  .check(z.superRefine(checkCloses));
