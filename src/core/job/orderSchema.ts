import * as z from 'zod/mini';
import { daySchema } from './daySchema.ts';
import { lengthField } from './field.ts';
import { addRuleIssue } from './rule.ts';

const step = (title: string) => z._default(z.nullable(z.boolean()), null).check(z.meta({ title }));

/** Steps that a cover may do without; each is taken where it is true, and where it is null as the job asks for it. */
const optionalSteps = {
  case: step('Case'),
  trace: step('Trace'),
  tool: step('Tool'),
  dry: step('Dry'),
  dye: step('Dye'),
  dress: step('Dress'),
  line: step('Line'),
  cement: step('Cement'),
};

export type OptionalStep = keyof typeof optionalSteps;

export const OPTIONAL_STEPS = Object.keys(optionalSteps) as readonly OptionalStep[];

/** The order of work at the maker's own bench, as far as the trade has more than one. */
export const orderSchema = z.prefault(
  z.strictObject({
    ...optionalSteps,
    dyeing: z
      ._default(z.enum(['before tooling', 'after tooling']), 'after tooling')
      .check(z.meta({ title: 'Dye, where it is a step' })),
    holes: z
      ._default(z.enum(['before joining', 'after cementing']), 'before joining')
      .check(z.meta({ title: 'Holes or slits' })),
    clip_mm: z._default(z.nullable(lengthField('Corners clipped by', 0.5, 30)), null),
  }),
  {},
);

const day = z.optional(z.nullable(daySchema)).check(z.meta({ title: 'Day it was done' }));

/** The steps that are done, each with its local calendar day (ISO 8601); null where the day is not known. */
export const madeSchema = z.prefault(
  z.strictObject({
    measure: day,
    mockup: day,
    cut: day,
    edges: day,
    case: day,
    trace: day,
    tool: day,
    dry: day,
    dye: day,
    dress: day,
    punch: day,
    fittings: day,
    line: day,
    cement: day,
    assemble: day,
    stitch: day,
    lace: day,
    finish: day,
    load: day,
    close: day,
  }),
  {},
);

/** The steps as they are worked, one at a time. */
export type WorkId = keyof z.output<typeof madeSchema>;

/** Least leather left between a clipped corner and its hole, as a share of the edge margin. Assumption. */
const LEFT_AT_CORNER = 0.5;

/** Rules between the order of work and the rest of the job. */
export function checkOrder(
  job: {
    readonly order: z.output<typeof orderSchema>;
    readonly construction: { readonly corners: string | null };
    readonly seam: { readonly cornerRadius_mm: number; readonly edgeMargin_mm: number };
    readonly pockets: { readonly construction: 'separate' | 'turned' };
    readonly supplies: { readonly cementBand_mm: number };
    readonly leather: { readonly lining: unknown };
  },
  context: z.core.$RefinementCtx,
): void {
  const { order, construction, seam, pockets, supplies, leather } = job;
  const report = (field: keyof typeof order, allowed: string, remedy: string): void =>
    addRuleIssue(context, ['order', field], order[field], allowed, remedy);
  const band = 'give the cement band (supplies.cementBand_mm) a width';
  if (supplies.cementBand_mm === 0 && order.holes === 'after cementing')
    report('holes', 'before joining while nothing is cemented', band);
  if (supplies.cementBand_mm === 0 && order.cement === true) report('cement', 'left out while the band is 0', band);
  if (leather.lining === null && order.line === true)
    report('line', 'left out while there is no lining', 'choose the leather of the lining (leather.lining)');
  if (order.clip_mm === null) return;
  // The hole at a corner is a margin m from both edges: (2 m - clip) / sqrt 2 from the clipped edge.
  const most = (2 - LEFT_AT_CORNER * Math.SQRT2) * seam.edgeMargin_mm;
  if (order.clip_mm > most)
    report(
      'clip_mm',
      `at most ${most.toFixed(1)} mm, so that half the edge margin is left at the hole in the corner`,
      'clip less, or make the edge margin (seam.edgeMargin_mm) wider',
    );
  if (construction.corners === null ? seam.cornerRadius_mm > 0 : construction.corners !== 'square')
    report(
      'clip_mm',
      'empty (null) while the corners are cut rounded or clipped',
      'leave it empty, or cut the corners square (construction.corners)',
    );
  if (pockets.construction === 'turned')
    report('clip_mm', 'empty (null) while the ends are turned in', 'leave it empty: a clip would open the folds');
}
