import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { numberField } from './field.ts';

const price = (title: string) => z._default(z.nullable(numberField(title, '', 0, 1e6)), null);

const minutes = (title: string, usual: number) => z._default(numberField(title, '', 0, 10_000), usual);

/** Who makes the cover, and what is charged. No price has a default: what is not priced is listed as such and left out of the sums. */
export const ratesSchema = z.prefault(
  z.strictObject({
    maker: z._default(z.string().check(z.maxLength(80)), '').check(z.meta({ title: 'Your name' })),
    currency: z._default(z.string().check(z.maxLength(8)), '').check(z.meta({ title: 'Currency sign' })),
    decimals: z
      ._default(z.int().check(z.minimum(0), z.maximum(3)), 2)
      .check(z.meta({ title: 'Decimals', unit: '', min: 0, max: 3 })),
    prices: z.prefault(
      z.strictObject({
        outside_per_dm2: price('Outside leather'),
        pocket_per_dm2: price('Pocket leather'),
        lining_per_dm2: price('Lining leather'),
        thread_per_m: price('Thread'),
        lace_per_m: price('Lace'),
        cement_per_dm2: price('Cement'),
        ribbon_per_m: price('Ribbon'),
        fastening_each: price('Fastening'),
        paint_per_ml: price('Edge paint'),
        hour: price('Hour of work'),
      }),
      {},
    ),
    minutes: z.prefault(
      z.strictObject({
        measure: minutes('Measure and draft', 20),
        mockup: minutes(titled('card trial'), 25),
        cut: minutes('Cut', 8),
        edges: minutes('Edges', 30),
        case: minutes('Case', 10),
        trace: minutes('Trace', 15),
        tool: minutes('Tool freehand', 60),
        tooling: minutes('Tool designs', 3),
        dry: minutes('Dry', 5),
        dye: minutes('Dye', 30),
        dress: minutes('Dress', 15),
        punch: minutes('Punch', 0.1),
        line: minutes('Line', 10),
        cement: minutes('Cement', 10),
        assemble: minutes('Assemble', 20),
        stitch: minutes('Stitch', 0.5),
        lace: minutes('Lace', 0.6),
        finish: minutes('Finish', 20),
      }),
      {},
    ),
    markup_percent: z._default(numberField('Markup', '', 0, 1000), 0),
    extras: z
      ._default(
        z
          .array(
            z.strictObject({
              name: z.string().check(z.minLength(1), z.maxLength(80)),
              amount: z.number().check(z.minimum(-1e6), z.maximum(1e6)),
            }),
          )
          .check(z.maxLength(20)),
        [],
      )
      .check(z.meta({ title: 'Further lines' })),
  }),
  {},
);
