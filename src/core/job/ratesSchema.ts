import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { numberField } from './field.ts';

const price = (title: string, description: string) =>
  z._default(z.nullable(numberField(title, '', 0, 1e6, description)), null);

const minutes = (title: string, usual: number, description = 'Where it is a step.') =>
  z._default(numberField(title, '', 0, 10_000, `${description} Minutes; assumption.`), usual);

/** Who makes the cover, and what is charged. No price has a default: what is not priced is listed as such and left out of the sums. */
export const ratesSchema = z.prefault(
  z.strictObject({
    maker: z
      ._default(z.string().check(z.maxLength(80)), '')
      .check(z.meta({ title: 'Your name', description: 'Printed on the sheet for the customer.' })),
    currency: z
      ._default(z.string().check(z.maxLength(8)), '')
      .check(z.meta({ title: 'Currency sign', description: 'Printed before each amount.' })),
    decimals: z
      ._default(z.int().check(z.minimum(0), z.maximum(3)), 2)
      .check(
        z.meta({ title: 'Decimals', description: 'Digits after the point of an amount.', unit: '', min: 0, max: 3 }),
      ),
    prices: z.prefault(
      z.strictObject({
        outside_per_dm2: price('Outside leather', 'For 1 dm2 (0.1076 sq ft), waste included in the area.'),
        pocket_per_dm2: price('Pocket leather', 'For 1 dm2; left empty, as the outside.'),
        lining_per_dm2: price('Lining leather', 'For 1 dm2; left empty, as the outside.'),
        thread_per_m: price('Thread', 'For 1 m.'),
        lace_per_m: price('Lace', 'For 1 m.'),
        cement_per_dm2: price('Cement', 'For 1 dm2 coated.'),
        ribbon_per_m: price('Ribbon', 'For 1 m.'),
        fastening_each: price('Fastening', 'For one: a stud, snap or buckle of the closure strap.'),
        hour: price('Hour of work', 'For one hour of work.'),
      }),
      {},
    ),
    minutes: z.prefault(
      z.strictObject({
        measure: minutes('Measure and draft', 20, 'Measuring the book, printing and cutting the template.'),
        mockup: minutes(titled('card trial'), 25, 'Cutting the card and trying it on the book.'),
        cut: minutes('Cut', 8, 'Laying out and cutting, for each piece.'),
        edges: minutes('Edges', 30, 'Skiving, bevelling, burnishing.'),
        case: minutes('Case', 10),
        trace: minutes('Trace', 15),
        tool: minutes('Tool', 60),
        dry: minutes('Dry', 5),
        dye: minutes('Dye', 30),
        dress: minutes('Dress', 15),
        punch: minutes('Punch', 0.1, 'For each hole or slit of each layer group.'),
        line: minutes('Line', 10),
        cement: minutes('Cement', 10),
        assemble: minutes('Assemble', 20, 'Aligning the layers, with what of lining and cementing is no step.'),
        stitch: minutes('Stitch', 0.5, 'For each stitch of saddle stitching.'),
        lace: minutes('Lace', 0.6, 'For each turn of lacing.'),
        finish: minutes('Finish', 20, 'Dressing, loading the book, last trial.'),
      }),
      {},
    ),
    markup_percent: z._default(numberField('Markup', '', 0, 1000, 'Added to the sum of all lines, percent.'), 0),
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
