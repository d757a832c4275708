import * as z from 'zod/mini';
import { ORIGINS } from '../job/doubtSchema.ts';

const number = z.number();

/** One line of a budget: how much of the doubt of a length comes from one input. */
const budgetLineSchema = z.strictObject({
  /** Path of the input in the job, or `scale of` a tool. */
  path: z.string(),
  words: z.string(),
  /** Standard uncertainty, in the unit of the input. */
  u: number,
  /** Change of the length for one unit of the input. */
  sensitivity: number,
  /** Part of the variance, covariances with other inputs taken in; all lines add up to 1. */
  share: number,
  from: z.enum(ORIGINS),
  with: z.string(),
});

const doubtedSchema = z.strictObject({
  /** At the middle of the leather; negative where it is wanting. */
  spare_mm: number,
  u_mm: number,
  /** Chance that it is not negative. */
  chance: number,
  budget: z.array(budgetLineSchema),
});

/** What Monte Carlo trials of the whole model say beside the first order. */
const trialsSchema = z.strictObject({
  draws: number,
  chance: z.strictObject({ closes: number, fits: number }),
  /** Mean, standard uncertainty and symmetric 95 % interval of each length. */
  edges: z.record(
    z.enum(['foreEdge', 'head', 'tail', 'flat', 'held']),
    z.strictObject({ mean_mm: number, u_mm: number, low_mm: number, high_mm: number }),
  ),
  /** Symmetric 95 % interval of the least opening, and of the fold-back for loading; 180 where the boards do not go in. */
  staysOpen_deg: z.tuple([number, number]),
  loading_deg: z.tuple([number, number]),
  /** Lengths whose uncertainty the first order misses by over 10 %; theirs is then that of the trials. */
  nonLinear: z.array(z.string()),
  /** Said where the trials would give another word than the verdict; else empty. */
  differs: z.string(),
});

/**
 * How sure the fit is. By first order, but for `trials`. Chances hold if the doubts assumed are right. At the fore-edge the length is the
 * spare wrap, of both edges together.
 */
export const reportDoubtSchema = z.strictObject({
  /** Wished chance. */
  share: number,
  chance: z.strictObject({ closes: number, fits: number }),
  edges: z.strictObject({ foreEdge: doubtedSchema, head: doubtedSchema, tail: doubtedSchema }),
  flat: doubtedSchema,
  /** Board in its pocket beyond what must stay there, and board that could be covered more and still be loaded. */
  held: doubtedSchema,
  loading: doubtedSchema,
  /** What the sized ease pays for, mm at one edge, most first; of an ease left open alone. */
  ease: z.strictObject({
    foreEdge: z.array(z.strictObject({ path: z.string(), words: z.string(), costs_mm: number })),
    head: z.array(z.strictObject({ path: z.string(), words: z.string(), costs_mm: number })),
  }),
  /** False where no size reaches the wished chance. */
  reaches: z.boolean(),
  measureNext: z.array(
    z.strictObject({ path: z.string(), words: z.string(), saves_mm: number, of: z.enum(['width', 'height']) }),
  ),
  /** The input that makes the fit least sure, in words. */
  leastSure: z.string(),
  trials: z.optional(trialsSchema),
});

export type ReportDoubt = z.output<typeof reportDoubtSchema>;
export type BudgetLine = z.output<typeof budgetLineSchema>;
export type ReportTrials = z.output<typeof trialsSchema>;
