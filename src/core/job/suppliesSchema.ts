import * as z from 'zod/mini';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

const multiple = (style: string, low: number, high: number) =>
  z
    .prefault(
      z.strictObject({
        low: z._default(numberField(`${style}, low`, '', 0.5, 50), low),
        high: z._default(numberField(`${style}, high`, '', 0.5, 50), high),
      }),
      {},
    )
    .check(
      z.superRefine((range, context) => {
        if (range.low > range.high)
          addRuleIssue(
            context,
            ['low'],
            range.low,
            `at most the high end, ${range.high}`,
            'swap the two ends of the range',
          );
      }),
    );

const laceMultiples = z.strictObject({
  running: multiple('Running', 1.5, 2),
  whip: multiple('Whip', 2.5, 3.5),
  'single loop': multiple('Single loop', 5, 6.5),
  'double loop': multiple('Double loop', 7, 8.5),
  'triple loop': multiple('Triple loop', 9, 10),
});

/** Styles of lacing that the trade names. */
export const LACE_STYLES = Object.keys(laceMultiples.shape) as readonly (keyof typeof laceMultiples.shape)[];

/** How thread, lace, cement and leather are used up. Defaults are common practice, no source, unless said otherwise. */
export const suppliesSchema = z.prefault(
  z.strictObject({
    threadTail_mm: z.prefault(lengthField('Thread tail', 0, 1000), 200),
    threadWorking_mm: z.prefault(lengthField('Thread in hand', 300, 10000), 1800),
    backStitches: z._default(z.int().check(z.minimum(0), z.maximum(10)), 2).check(
      z.meta({
        title: 'Back stitches',
        unit: '',
        min: 0,
        max: 10,
      }),
    ),
    laceThickness_mm: z.prefault(lengthField('Lace thickness', 0.2, 5), 0.8),
    laceTail_mm: z.prefault(lengthField('Lace tail', 0, 1000), 100),
    laceWorking_mm: z.prefault(lengthField('Lace in hand', 300, 10000), 1200),
    spliceOverlap_mm: z.prefault(lengthField('Splice', 0, 200), 20),
    laceMultiples: z.prefault(laceMultiples, {}).check(z.meta({ title: "The trade's multiples of the seam" })),
    cementBand_mm: z.prefault(lengthField('Cement band', 0, 30), 3.175),
    paintFilm_mm: z.prefault(lengthField('Edge paint, all coats', 0.05, 2), 0.3),
    waste: z._default(numberField('Waste', '%', 0, 3), 0.2),
  }),
  {},
);
