import { z } from 'zod';
import { numberField } from './field.ts';

const price = (title: string, description: string) =>
  numberField(title, '', 0, 1e6, description).nullable().default(null);

const minutes = (title: string, usual: number, description: string) =>
  numberField(title, '', 0, 10_000, `${description} Minutes; assumption.`).default(usual);

/** What the maker charges. No price has a default: what is not priced is listed as such and left out of the sums. */
export const ratesSchema = z
  .strictObject({
    currency: z.string().max(8).default('').meta({ title: 'Currency', description: 'Sign printed with amounts.' }),
    decimals: z
      .int()
      .min(0)
      .max(3)
      .default(2)
      .meta({ title: 'Decimals', description: 'Digits after the point of an amount.', unit: '', min: 0, max: 3 }),
    prices: z
      .strictObject({
        outside_per_dm2: price('Outside leather', 'For 1 dm2 (0.1076 sq ft), waste included in the area.'),
        pocket_per_dm2: price('Pocket leather', 'For 1 dm2; left open: as the outside.'),
        lining_per_dm2: price('Lining leather', 'For 1 dm2; left open: as the outside.'),
        thread_per_m: price('Thread', 'For 1 m.'),
        lace_per_m: price('Lace', 'For 1 m.'),
        cement_per_dm2: price('Cement', 'For 1 dm2 coated.'),
        hour: price('Hour of work', 'For one hour at the bench.'),
      })
      .prefault({}),
    minutes: z
      .strictObject({
        measure: minutes('Measure and draft', 20, 'Measuring the book, printing and cutting the template.'),
        mockup: minutes('Mock-up', 25, 'Card mock-up and trial on the book.'),
        cut: minutes('Cut', 8, 'Laying out and cutting, for each piece.'),
        edges: minutes('Edges', 30, 'Skiving, bevelling, burnishing.'),
        punch: minutes('Punch', 0.1, 'For each hole or slit of each layer group.'),
        assemble: minutes('Assemble', 20, 'Cementing and aligning the layers.'),
        stitch: minutes('Stitch', 0.5, 'For each stitch of saddle stitching.'),
        lace: minutes('Lace', 0.6, 'For each turn of lacing.'),
        finish: minutes('Finish', 20, 'Dressing, loading the book, last trial.'),
      })
      .prefault({}),
    markup_percent: numberField('Markup', '', 0, 1000, 'Added to the sum of all lines, percent.').default(0),
    extras: z
      .array(z.strictObject({ name: z.string().min(1).max(80), amount: z.number().min(-1e6).max(1e6) }))
      .max(20)
      .default([])
      .meta({ title: 'Further lines' }),
  })
  .prefault({});
