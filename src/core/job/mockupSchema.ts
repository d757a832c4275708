import * as z from 'zod/mini';
import { checkCloses } from './closesRule.ts';
import { lengthField, numberField } from './field.ts';

const edge = (title: string) => z._default(z.nullable(lengthField(title, -60, 60)), null);

const cut = (title: string, max: number) => z._default(z.nullable(lengthField(title, 20, max)), null);

/** A measure taken again because of what the card showed; the first one stays as it was typed. Absent where none was. */
const again = (title: string, min: number, max: number) => z._default(z.nullable(lengthField(title, min, max)), null);

/** A trial of the cover in card: the card itself, what it showed on the book, and what was measured again after it. */
export const mockupSchema = z.prefault(
  z.strictObject({
    card: z.prefault(
      z.strictObject({
        thickness_mm: z.prefault(lengthField('Card thickness', 0.1, 3), 0.5),
        neutral: z._default(numberField('Card K factor', '', 0.4, 0.8), 0.5),
        bendRatio: z._default(numberField('Card bend ratio', '', 0.02, 3), 0.5),
        cutWidth_mm: cut('Card width', 4000),
        cutHeight_mm: cut('Card height', 2000),
      }),
      {},
    ),
    readings: z
      .prefault(
        z.strictObject({
          front_mm: edge('Front fore-edge'),
          back_mm: edge('Back fore-edge'),
          head_mm: edge('Head'),
          tail_mm: edge('Tail'),
          closes: z._default(z.nullable(z.boolean()), null).check(z.meta({ title: 'The card closes' })),
          opening_deg: z._default(z.nullable(numberField('Stays open', 'deg', 0, 180)), null),
          error_mm: z.prefault(lengthField('Reading error', 0.05, 5), 0.25),
          stop_mm: z.prefault(lengthField('Stop error', 0, 5), 0.5),
          error_deg: z._default(numberField('Angle error', 'deg', 0.1, 45), 3),
        }),
        {},
      )
      .check(z.superRefine(checkCloses)),
    again: z.optional(
      z.strictObject({
        spine_mm: again('Spine by callipers', 1, 300),
        width_mm: again('Width, again', 30, 1000),
        height_mm: again('Height, again', 30, 1500),
        rise_mm: again('Rise, by a straight edge', 0, 150),
      }),
    ),
  }),
  {},
);
