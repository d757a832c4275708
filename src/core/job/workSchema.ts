import * as z from 'zod/mini';
import { MM_PER_INCH, type Mm, mm } from '../units/mm.ts';
import { lengthField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** Cut steps of a job worked in inches, mm, the usual one first: what a rule divided in sixteenths or 32nds shows. */
export const INCH_STEPS: readonly [Mm, Mm] = [mm(MM_PER_INCH / 16), mm(MM_PER_INCH / 32)];

/** How far a written inch step may be from its true value, mm: documents may round 1.5875 to 1.588. */
const WRITTEN_WITHIN = 1e-3;

const inchStep = (written: number): Mm | undefined =>
  INCH_STEPS.find((step) => Math.abs(step - written) <= WRITTEN_WITHIN);

/** The unit that a job is worked in, and the step that the sizes decided by the tool lie on; null for the unit's usual. */
export const workSchema = z.pipe(
  z
    .prefault(
      z.strictObject({
        units: z._default(z.enum(['mm', 'in']), 'mm').check(z.meta({ title: 'Units' })),
        cutStep_mm: z._default(z.nullable(lengthField('Rounded up to', 0, 10)), null),
      }),
      {},
    )
    .check(
      z.superRefine(({ units, cutStep_mm: step }, context) => {
        if (units === 'in' && step !== null && inchStep(step) === undefined)
          addRuleIssue(
            context,
            ['cutStep_mm'],
            step,
            `${INCH_STEPS.join(' (1/16 in) or ')} (1/32 in) in a job worked in inches`,
            'choose one of the two, or null for 1/16 in',
          );
      }),
    ),
  z.transform(({ units, cutStep_mm: step }) => ({
    units,
    cutStep_mm: step !== null && units === 'in' ? (inchStep(step) ?? step) : step,
  })),
);

/**
 * The step, mm, that the sizes decided by the tool are multiples of; 0 for none.
 *
 * The job's own, else the usual one: 1/16 in for a job in inches, `pattern.rounding_mm` for one in millimetres.
 */
export function cutStep({
  work,
  pattern,
}: {
  readonly work: z.output<typeof workSchema>;
  readonly pattern: { readonly rounding_mm: Mm };
}): Mm {
  return work.cutStep_mm ?? (work.units === 'in' ? INCH_STEPS[0] : pattern.rounding_mm);
}
