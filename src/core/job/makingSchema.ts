import * as z from 'zod/mini';
import { numberField } from './field.ts';

/** How the leather is worked after it is cut, as far as that changes its size. */
export const MAKING_STATES = ['dry', 'cased', 'dyed', 'wet-formed'] as const;

const change = (title: string) => z._default(z.nullable(numberField(title, '%', -0.05, 0.03)), null);

/** Change of size between the cut piece and the finished cover. Height lies along the backbone, width across it. */
export const makingSchema = z.prefault(
  z.strictObject({
    state: z._default(z.enum(MAKING_STATES), 'dry').check(z.meta({ title: 'Worked' })),
    changeAlong: change('Change of size along'),
    changeAcross: change('Change of size across'),
  }),
  {},
);
