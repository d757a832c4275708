import * as z from 'zod/mini';
import { lengthField, numberField } from './field.ts';

/** How the leather is worked after it is cut, as far as that changes its size. */
export const MAKING_STATES = ['dry', 'cased', 'dyed', 'wet-formed'] as const;

export type MakingState = (typeof MAKING_STATES)[number];

/** What the grain is finished with at the end, as far as that wets the leather. */
export const DRESSINGS = ['nothing', 'oil or wax', 'water-based finish', 'spirit-based finish'] as const;

/** Ways in which the hide's backbone may run on a piece that lies with its head up. */
export const BACKBONES = ['upright', 'across'] as const;

const change = (title: string) => z._default(z.nullable(numberField(title, '%', -0.05, 0.03)), null);

/**
 * What happens to the size between the cut piece and the finished cover. Height lies along the backbone and width across it, or the other
 * way round where the piece is turned. The hand is how much more than drawn the maker leaves at an edge, and cuts in a dimension.
 */
export const makingSchema = z.prefault(
  z.strictObject({
    state: z._default(z.enum(MAKING_STATES), 'dry').check(z.meta({ title: 'Worked' })),
    changeAlong: change('Change of size along'),
    changeAcross: change('Change of size across'),
    dressing: z._default(z.enum(DRESSINGS), 'nothing').check(z.meta({ title: 'Finished with' })),
    backbone: z._default(z.enum(BACKBONES), 'upright').check(z.meta({ title: 'Backbone on the outside' })),
    hand: z.prefault(
      z.strictObject({
        margin_mm: z.prefault(lengthField('Your hand: edge margin', -3, 3), 0),
        cutting_mm: z.prefault(lengthField('Your hand: cutting', -3, 3), 0),
      }),
      {},
    ),
  }),
  {},
);
