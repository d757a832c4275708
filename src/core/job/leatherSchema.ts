import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** Characters of the name of a leather at most. */
export const MOST_NAME = 120;

/** The leather of the maker's stock that a job has taken its figures from, as it stood then. */
const takenSchema = z.strictObject({
  id: z.string().check(z.minLength(1), z.maxLength(60), z.meta({ title: 'Place among your leathers' })),
  revision: z.int().check(z.minimum(1), z.meta({ title: 'Count of its saves' })),
  name: z.string().check(z.maxLength(MOST_NAME), z.meta({ title: 'Name of the leather' })),
});

/** The thin end of a range is not beyond its thick end. */
export function checkEnds(
  { min_mm: min, max_mm: max }: { readonly min_mm: number; readonly max_mm: number },
  context: z.core.$RefinementCtx,
): void {
  if (min > max)
    addRuleIssue(context, ['min_mm'], min, `at most the thick end, ${max} mm`, 'swap the two ends of the range');
}

/** One leather as sold: a range of thickness, and how it turns a corner. */
export const leatherPieceSchema = z
  .strictObject({
    min_mm: lengthField(titled('thin end'), 0.2, 8),
    max_mm: lengthField(titled('thick end'), 0.2, 8),
    neutral: z._default(numberField(titled('K factor'), '', 0.4, 0.8), 2 / Math.PI),
    bendRatio: z._default(numberField(titled('bend ratio'), '', 0.02, 3), 0.2),
    modulus_MPa: z._default(numberField('Stiffness E', 'MPa', 20, 200), 60),
    creaseSet: z._default(numberField('How well creases stay', '%', 0, 1), 0.8),
    density_kg_m3: z._default(numberField('Density', 'kg/m3', 300, 1500), 950),
    friction: z._default(numberField('Friction on the book', '', 0, 1.5), 0.4),
    foldThickness_mm: z._default(z.nullable(lengthField('Skived to', 0.2, 8)), null),
    strainLimit: z._default(z.nullable(numberField('Strain limit', '%', 0.05, 1.5)), null),
    taken: z._default(z.nullable(takenSchema), null).check(z.meta({ title: 'Taken from your leathers' })),
  })
  .check(
    z.superRefine((leather, context) => {
      checkEnds(leather, context);
      if (leather.foldThickness_mm !== null && leather.foldThickness_mm > leather.max_mm)
        addRuleIssue(
          context,
          ['foldThickness_mm'],
          leather.foldThickness_mm,
          `at most the thick end, ${leather.max_mm} mm`,
          'skiving makes leather thinner: give a smaller thickness, or none (null)',
        );
    }),
  );

/** The leathers of one cover. The pocket is cut from the outside's leather unless said otherwise. */
export const leatherSchema = z.pipe(
  z.strictObject({
    outside: leatherPieceSchema,
    pocket: z.optional(leatherPieceSchema),
    lining: z._default(z.nullable(leatherPieceSchema), null),
  }),
  z.transform((leather) => ({ ...leather, pocket: leather.pocket ?? leather.outside })),
);
