import * as z from 'zod/mini';
import { RESULT_ORIGINS } from '../words/resultOrigin.ts';
import { findingSchema, verdictSchema } from './checkSchema.ts';
import { CHECKS } from './checkTable.ts';
import { reportDoubtSchema } from './doubtSchema.ts';
import { STRIP_ROWS } from './stripRows.ts';

/**
 * The report document. All lengths in mm, angles in degrees; gap positive, overrun negative.
 *
 * The job inside it is a parsed one with its defaults filled in, so it is not checked a second time here.
 */
const number = z.number();
const nullable = z.nullable(z.number());

const allowanceSchema = z.strictObject({
  total_mm: number,
  parts: z.array(z.strictObject({ name: z.string(), length_mm: number })),
});

const seatSchema = z.strictObject({
  status: z.string(),
  closedForm_mm: number,
  strip_mm: number,
  press_N_per_mm: number,
});

const perBoardSchema = z.strictObject({ front_mm: number, back_mm: number });

/**
 * Where a released cover rests: in the leather as the job has it, and the range over stiffness, crease set and friction. An end of
 * the range is null where it was not found.
 */
const restSchema = z.strictObject({
  opening_deg: number,
  leastOpening_deg: nullable,
  mostOpening_deg: nullable,
  /** At the fore-edge, to hold it shut. */
  force_N: number,
  leastForce_N: nullable,
  mostForce_N: nullable,
});

/** What the elastic strip adds. Forces rest on the stiffness assumed in the job, shapes under posed boards do not. */
const stripSchema = z.strictObject({
  /** Unless `converged`, the closed form is used, and the shape below is empty or unreliable. */
  status: z.string(),
  iterations: number,
  /** Largest unbalanced force on a node, N. */
  residual: number,
  contactGap_mm: number,
  spineBow_mm: number,
  faceBulge_mm: number,
  /** Opening at which released boards come to rest, creased as in the job and new; null where it was not found. */
  releasedOpening_deg: nullable,
  newOpening_deg: nullable,
  /** Force at the fore-edge that holds the cover shut, creased and new. */
  closingForce_N: nullable,
  newClosingForce_N: nullable,
  /** The same and more in each state; null where it was not found. */
  rest: z.strictObject({
    newCover: z.nullable(restSchema),
    creased: z.nullable(restSchema),
    pressedDay: z.nullable(restSchema),
  }),
  /**
   * Spare wrap at the fore-edges once the boards are let go, pushed home before: without friction, and the most that friction
   * holds. `fit.*.spare` has the gaps pushed home.
   */
  spareAtForeEdge: z.strictObject({ least: perBoardSchema, held: perBoardSchema }),
  /** Smallest inside radius at the spine; null where the leather lies flat. */
  insideRadius_mm: nullable,
  /** Leather from seam to board edge at each seam: closed form and strip, creased and pressed by hand. */
  seats: z.strictObject({ foreEdge: z.nullable(seatSchema), headTail: z.nullable(seatSchema) }),
  /** What a pull by hand takes up of a wrap that is too short; null where no leather is left to pull. */
  stretch: z.nullable(z.strictObject({ short_mm: number, pull_N: number, most_mm: number, takes: z.boolean() })),
  section_mm: z.array(z.tuple([number, number])),
});

const fitAtSchema = z.strictObject({
  thickness_mm: number,
  foreEdge: perBoardSchema,
  /** Gaps that the spare wrap (`closed.slack_mm`) makes at the fore-edges pushed home, and all of it to one side. */
  spare: z.strictObject({ pushedHome: perBoardSchema, toOneSide_mm: number }),
  head_mm: number,
  tail_mm: number,
  closed: z.strictObject({
    closes: z.boolean(),
    slack_mm: number,
    /** 180 where the boards do not go in even with the book flat. */
    staysOpen_deg: number,
    gape_mm: number,
    goesIn: z.boolean(),
  }),
  flat: z.strictObject({ slack_mm: number, boardTravel_mm: number, opensTo_deg: nullable }),
  pockets: z.strictObject({ depth_mm: number, held_mm: number, loadingAngle_deg: number, loads: z.boolean() }),
  strip: z.optional(stripSchema),
});

export const reportSchema = z.strictObject({
  format: z.literal('coverwright-report'),
  version: z.literal(1),
  job: z.unknown(),
  pattern: z.strictObject({
    outside: z.strictObject({ width_mm: number, height_mm: number }),
    pocket: z.strictObject({ width_mm: number, height_mm: number, count: z.union([z.literal(0), z.literal(2)]) }),
    lining: z.nullable(z.strictObject({ width_mm: number, height_mm: number })),
  }),
  allowances: z.strictObject({ foreEdge: allowanceSchema, head: allowanceSchema, tail: allowanceSchema }),
  wrap: z.strictObject({ closed_mm: number, flat_mm: number }),
  fit: z.strictObject({ thin: fitAtSchema, nominal: fitAtSchema, thick: fitAtSchema }),
  doubt: reportDoubtSchema,
  checks: z.array(
    z.strictObject({
      id: z.enum([...CHECKS, ...STRIP_ROWS].map(({ id }) => id)),
      title: z.string(),
      unit: z.enum(['mm', 'deg', '']),
      ...findingSchema.shape,
      /** Where verdict and figures of the row come from. */
      origin: z.enum(RESULT_ORIGINS),
    }),
  ),
  headline: z.string(),
  state: z.string(),
  verdict: verdictSchema,
  /**
   * How far the springy model is in the report: not asked (`quick model`), or what its rows say. Sizes, gaps, chances, headline
   * and verdict are the quick model's in every case.
   */
  origin: z.enum(RESULT_ORIGINS),
});

export type Report = z.output<typeof reportSchema>;
/** One question asked of the design, with its answer. */
export type Check = Report['checks'][number];
export type CheckId = Check['id'];
export type StripReport = z.output<typeof stripSchema>;
export type FitAt = z.output<typeof fitAtSchema>;
