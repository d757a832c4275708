import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { bookSchema } from './bookSchema.ts';
import { checkConstruction, constructionSchema } from './constructionSchema.ts';
import { correlationsSchema, doubtsSchema } from './doubtSchema.ts';
import { lengthField, numberField } from './field.ts';
import { finishSchema } from './finishSchema.ts';
import { hidesSchema } from './hideSchema.ts';
import { IRONS, ironSchema } from './ironSchema.ts';
import { leatherSchema } from './leatherSchema.ts';
import { makingSchema } from './makingSchema.ts';
import { mockupSchema } from './mockupSchema.ts';
import { checkOrder, madeSchema, orderSchema } from './orderSchema.ts';
import { outcomeSchema } from './outcomeSchema.ts';
import { ratesSchema } from './ratesSchema.ts';
import { addRuleIssue } from './rule.ts';
import { LACE_STYLES, suppliesSchema } from './suppliesSchema.ts';
import { toolingSchema } from './toolingSchema.ts';
import { workSchema } from './workSchema.ts';

/** Ways of joining the edges, with the styles the trade names for each. */
export const SEAM_STYLES = { stitching: ['saddle'], lacing: LACE_STYLES } as const;

/** Usual margin and pitch of each seam. Common practice, no source. */
export const SEAM_DEFAULTS = {
  stitching: { style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 },
  lacing: { style: 'double loop', edgeMargin_mm: 6.35, pitch_mm: 4.76 },
} as const;

const seamSchema = z
  .pipe(
    z.prefault(
      z.strictObject({
        method: z._default(z.enum(['stitching', 'lacing']), 'stitching').check(z.meta({ title: 'Seam' })),
        style: z.optional(z.enum([...SEAM_STYLES.stitching, ...SEAM_STYLES.lacing])).check(z.meta({ title: 'Style' })),
        edgeMargin_mm: z.optional(lengthField(titled('edge margin'), 1, 30)),
        pitch_mm: z.optional(lengthField(titled('pitch'), 1, 25)),
        cornerRadius_mm: z.prefault(lengthField('Corner radius', 0, 60), 0),
        iron: z._default(z.nullable(ironSchema), null),
      }),
      {},
    ),
    z.transform((seam) => {
      const usual = SEAM_DEFAULTS[seam.method];
      return {
        ...seam,
        style: seam.style ?? usual.style,
        edgeMargin_mm: seam.edgeMargin_mm ?? (usual.edgeMargin_mm as typeof seam.cornerRadius_mm),
        pitch_mm: seam.iron?.pitch_mm ?? seam.pitch_mm ?? (usual.pitch_mm as typeof seam.cornerRadius_mm),
      };
    }),
  )
  .check(
    z.superRefine((seam, context) => {
      const styles: readonly string[] = SEAM_STYLES[seam.method];
      if (!styles.includes(seam.style))
        addRuleIssue(
          context,
          ['style'],
          seam.style,
          `one of ${styles.join(', ')} for ${seam.method}`,
          'choose a style of this seam',
        );
      const { iron, method } = seam;
      if (iron !== null && !(IRONS[iron.kind] as readonly string[]).includes(method))
        addRuleIssue(
          context,
          ['iron', 'kind'],
          iron.kind,
          `a tool for ${method}`,
          'choose another tool or seam (seam.method)',
        );
    }),
  );

const pocketsSchema = z.prefault(
  z.strictObject({
    construction: z._default(z.enum(['separate', 'turned']), 'separate').check(z.meta({ title: 'Pockets' })),
    depth_mm: z._default(z.nullable(lengthField('Depth', 5, 1000)), null),
    share: z._default(numberField('Board covered', '%', 0.2, 0.95), 2 / 3),
    hold_mm: z.prefault(lengthField('Least hold', 5, 300), 40),
  }),
  {},
);

const easeField = (title: string) => z._default(z.nullable(lengthField(title, 0, 20)), null);

const easeSchema = z.prefault(
  z.strictObject({
    foreEdge_mm: easeField('Fore-edge ease'),
    head_mm: easeField('Head ease'),
    tail_mm: easeField('Tail ease'),
    share: z._default(numberField('How sure', '%', 0.5, 0.999), 0.95),
  }),
  {},
);

const loosestField = (title: string) => z.prefault(lengthField(title, 0, 50), 4);

/** Largest gap at each edge that still fits; at a fore-edge half the spare wrap. */
const loosestSchema = z.prefault(
  z.strictObject({
    foreEdge_mm: loosestField('Loosest fore-edge gap'),
    head_mm: loosestField('Loosest head gap'),
    tail_mm: loosestField('Loosest tail gap'),
  }),
  {},
);

const patternSchema = z.prefault(
  z.strictObject({
    outsideWidth_mm: z._default(z.nullable(lengthField('Outside width', 40, 4000)), null),
    outsideHeight_mm: z._default(z.nullable(lengthField('Outside height', 30, 2000)), null),
    rounding_mm: z.prefault(lengthField('Rounded up to', 0, 10), 0.5),
  }),
  {},
);

const WIDER = 'give a larger size, or leave it empty (null)';

/** A whole job: the book, its leathers, and how the cover is made. The one document that is edited, kept and shared. */
export const jobSchema = z
  .strictObject({
    format: z.literal('coverwright-job'),
    version: z.literal(3),
    name: z._default(z.string().check(z.maxLength(200)), 'Untitled cover').check(z.meta({ title: 'Job' })),
    work: workSchema,
    book: bookSchema,
    leather: leatherSchema,
    making: makingSchema,
    seam: seamSchema,
    pockets: pocketsSchema,
    seating: z
      ._default(z.enum(['centred', 'front', 'back', 'spine']), 'centred')
      .check(z.meta({ title: 'Where the spare wrap goes' })),
    ease: easeSchema,
    loosest: loosestSchema,
    pattern: patternSchema,
    construction: constructionSchema,
    finish: finishSchema,
    tooling: toolingSchema,
    order: orderSchema,
    made: madeSchema,
    mockup: mockupSchema,
    outcome: outcomeSchema,
    hides: hidesSchema,
    supplies: suppliesSchema,
    rates: ratesSchema,
    doubts: doubtsSchema,
    correlations: correlationsSchema,
  })
  .check(
    z.superRefine((job, context) => {
      checkConstruction(job, context);
      checkOrder(job, context);
      const { outsideWidth_mm: width, outsideHeight_mm: height } = job.pattern;
      const margins = 2 * job.seam.edgeMargin_mm;
      if (height !== null && height <= margins)
        addRuleIssue(
          context,
          ['pattern', 'outsideHeight_mm'],
          height,
          `more than two edge margins, ${margins} mm`,
          WIDER,
        );
      const ends = job.pockets.construction === 'turned' ? 2 * (job.pockets.depth_mm ?? 0) : margins;
      if (width !== null && width <= ends)
        addRuleIssue(
          context,
          ['pattern', 'outsideWidth_mm'],
          width,
          `more than the two ${job.pockets.construction === 'turned' ? 'turned ends' : 'edge margins'}, ${ends} mm`,
          WIDER,
        );
    }),
  );

/** A job as written, of any version: optional fields may be missing. */
export type JobInput = Omit<z.input<typeof jobSchema>, 'version'> & { readonly version: 1 | 2 | 3 };

/** A job with every default filled in. */
export type Job = z.output<typeof jobSchema>;

/** The leathers of a cover. */
export type LeatherName = keyof Job['leather'];
