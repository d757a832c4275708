import { z } from 'zod';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** One leather as sold: a range of thickness, and how it turns a corner. */
export const leatherPieceSchema = z
  .strictObject({
    min_mm: lengthField('Thin end', 0.2, 8, 'Thinnest place of the weight range; 1 oz = 0.396875 mm.'),
    max_mm: lengthField('Thick end', 0.2, 8, 'Thickest place of the weight range.'),
    neutral: numberField(
      'Neutral fraction K',
      '',
      0.4,
      0.8,
      'Depth of the neutral line from the inside of a bend, as a share of the thickness. 2/pi is "one thickness a fold".',
    ).default(2 / Math.PI),
    bendRatio: numberField(
      'Bend ratio',
      '',
      0.02,
      3,
      'Inside radius over thickness when pressed along a seam: 0.2 pressed or damp, about 0.5 firm and dry. Assumption.',
    ).default(0.2),
    modulus_MPa: numberField('Stiffness E', 'MPa', 20, 200, "Young's modulus. Assumption; alters forces only.").default(
      60,
    ),
    creaseSet: numberField(
      'Crease set',
      '',
      0,
      1,
      'Share of the closed bend that the leather keeps: 0 new, 1 fully set. Assumption.',
    ).default(0.8),
    density_kg_m3: numberField('Density', 'kg/m3', 300, 1500, 'For the weight of the cover. Assumption.').default(950),
    foldThickness_mm: lengthField('Skived to', 0.2, 8, 'Thickness left where the leather is skived at the folds.')
      .nullable()
      .default(null),
    strainLimit: numberField(
      'Strain limit',
      '',
      0.05,
      1.5,
      'Stretch of the grain side at a fold above which cracking is to be feared. Assumption.',
    ).default(0.45),
  })
  .superRefine((leather, context) => {
    if (leather.min_mm > leather.max_mm)
      addRuleIssue(
        context,
        ['min_mm'],
        leather.min_mm,
        `at most max_mm, ${leather.max_mm}`,
        'swap the two ends of the range',
      );
    if (leather.foldThickness_mm !== null && leather.foldThickness_mm > leather.max_mm)
      addRuleIssue(
        context,
        ['foldThickness_mm'],
        leather.foldThickness_mm,
        `at most max_mm, ${leather.max_mm}`,
        'skiving makes leather thinner: give a smaller thickness, or null for no skiving',
      );
  });

/** The leathers of one cover. The pocket is cut from the outside's leather unless said otherwise. */
export const leatherSchema = z
  .strictObject({
    outside: leatherPieceSchema,
    pocket: leatherPieceSchema.optional(),
    lining: leatherPieceSchema.nullable().default(null),
  })
  .transform((leather) => ({ ...leather, pocket: leather.pocket ?? leather.outside }));
