import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** One leather as sold: a range of thickness, and how it turns a corner. */
export const leatherPieceSchema = z
  .strictObject({
    min_mm: lengthField(titled('thin end'), 0.2, 8, 'Thinnest place of the weight range; 1 oz = 0.396875 mm.'),
    max_mm: lengthField(titled('thick end'), 0.2, 8, 'Thickest place of the weight range.'),
    neutral: z._default(
      numberField(
        titled('K factor'),
        '',
        0.4,
        0.8,
        'Share of the thickness, counted from the inside of a bend, at which the leather keeps its length. 2/pi is "one thickness a fold".',
      ),
      2 / Math.PI,
    ),
    bendRatio: z._default(
      numberField(
        titled('bend ratio'),
        '',
        0.02,
        3,
        'Inside radius over thickness when pressed along a seam: 0.2 pressed or damp, about 0.5 firm and dry. Assumption.',
      ),
      0.2,
    ),
    modulus_MPa: z._default(
      numberField('Stiffness E', 'MPa', 20, 200, "Young's modulus. Assumption; alters forces only."),
      60,
    ),
    creaseSet: z._default(
      numberField(
        'How well creases stay',
        '%',
        0,
        1,
        '0 %: the leather springs back whole; 100 %: it stays as it was closed. Assumption.',
      ),
      0.8,
    ),
    density_kg_m3: z._default(
      numberField('Density', 'kg/m3', 300, 1500, 'For how far its weight helps to hold the book shut. Assumption.'),
      950,
    ),
    friction: z._default(
      numberField(
        'Friction on the book',
        '',
        0,
        1.5,
        'Coefficient of friction of the leather on the book, about 0.25 to 0.55. It decides how far spare wrap moves by itself. Assumption.',
      ),
      0.4,
    ),
    foldThickness_mm: z._default(
      z.nullable(lengthField('Skived to', 0.2, 8, 'Thickness left where the leather is skived at the folds.')),
      null,
    ),
    strainLimit: z._default(
      z.nullable(
        numberField(
          'Strain limit',
          '%',
          0.05,
          1.5,
          'Stretch of the grain side that an offcut of this leather bore in a fold without cracking. Leave it empty where none was tested.',
        ),
      ),
      null,
    ),
  })
  .check(
    z.superRefine((leather, context) => {
      if (leather.min_mm > leather.max_mm)
        addRuleIssue(
          context,
          ['min_mm'],
          leather.min_mm,
          `at most the thick end, ${leather.max_mm} mm`,
          'swap the two ends of the range',
        );
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
