import * as z from 'zod/mini';
import { lengthField, numberField } from '../job/field.ts';
import { checkEnds, MOST_NAME } from '../job/leatherSchema.ts';
import { testsSchema } from '../leatherTest/testSchema.ts';
import { coverLessonSchema } from './coverLessonSchema.ts';

/** Names the document. */
export const LEATHER_FORMAT = 'coverwright-leather';

/** Kinds of leather by their tanning, the trade's own words; leathers of one kind teach each other. */
export const TANNAGES = ['vegetable', 'chrome', 'combination', 'alum', 'oil', 'not known'] as const;

const text = (title: string, most: number) =>
  z._default(z.string().check(z.maxLength(most)), '').check(z.meta({ title }));

/** A leather of the maker's stock: what was bought, what is left, how it was tested, and how covers of it came out. */
export const stockLeatherSchema = z
  .strictObject({
    format: z.literal(LEATHER_FORMAT),
    version: z.literal(1),
    name: z._default(z.string().check(z.maxLength(MOST_NAME)), 'Untitled leather').check(z.meta({ title: 'Name' })),
    /** Weight as sold. */
    min_mm: lengthField('Thin end', 0.2, 8),
    max_mm: lengthField('Thick end', 0.2, 8),
    /** Readings by callipers over this very hide. */
    callipered_mm: z
      ._default(z.array(z.number().check(z.minimum(0.2), z.maximum(8))).check(z.maxLength(40)), [])
      .check(z.meta({ title: 'By callipers' })),
    tannage: z._default(z.enum(TANNAGES), 'vegetable').check(z.meta({ title: 'Tannage' })),
    temper: z._default(z.enum(['soft', 'medium', 'firm']), 'medium').check(z.meta({ title: 'Temper' })),
    colour: z
      ._default(z.string().check(z.regex(/^#[0-9a-f]{6}$/, 'a colour as red, green and blue, as "#8f5b3a"')), '#8f5b3a')
      .check(z.meta({ title: 'Colour of the grain side' })),
    surface: z._default(z.enum(['matt', 'satin', 'glossy']), 'satin').check(z.meta({ title: 'Surface' })),
    finish: text('Finish as bought', 120),
    left_dm2: z
      ._default(z.nullable(z.number().check(z.minimum(0), z.maximum(2000))), null)
      .check(z.meta({ title: 'Left' })),
    price_per_dm2: z
      ._default(z.nullable(numberField('Price', '', 0, 1e6)), null)
      .check(z.meta({ title: 'Price of a square decimetre' })),
    notes: text('Notes', 4000),
    tests: testsSchema,
    covers: z._default(z.array(coverLessonSchema).check(z.maxLength(300)), []),
  })
  .check(z.superRefine(checkEnds));

/** A leather with every default filled in. */
export type StockLeather = z.output<typeof stockLeatherSchema>;
