import * as z from 'zod/mini';
import { daySchema } from '../job/daySchema.ts';
import { BACKBONES, MAKING_STATES } from '../job/makingSchema.ts';
import { UNKNOWNS, type Unknown } from './leatherUnknowns.ts';

const number = z.number();
// Fields one by one: a record of zod's would come into the first script, which has none.
const perUnknown = z.strictObject(
  Object.fromEntries(UNKNOWNS.map((name) => [name, z.optional(number)])) as Record<
    Unknown,
    z.ZodMiniOptional<z.ZodMiniNumber>
  >,
);

/** What one dimension of a finished cover says: spare room as read, as the job foretold it, and how that hangs on leather and hand. */
const evidenceSchema = z.strictObject({
  of: z.enum(['wrap', 'height']),
  read_mm: number,
  /** Foretold with the leather and the hand as `at` has them. */
  expected_mm: number,
  /** Standard uncertainty of all but leather and hand: book, thickness, reading, chance of this cut. */
  u_mm: number.check(z.minimum(0)),
  /** Standard uncertainty of what was foretold and read, leather and hand as doubtful as the job had them. */
  foretold_mm: number.check(z.minimum(0)),
  /** Change of the spare room, mm, for one unit of each. */
  slopes: perUnknown,
  at: perUnknown,
});

/** A finished cover of a leather, as it stays with the leather when the job is gone. */
export const coverLessonSchema = z.strictObject({
  /** The job's id on the shelf. */
  job: z.string().check(z.maxLength(60)),
  name: z.string().check(z.maxLength(200)),
  day: z._default(z.nullable(daySchema), null),
  worked: z._default(z.enum(MAKING_STATES), 'dry'),
  backbone: z._default(z.enum(BACKBONES), 'upright'),
  /** Whether the maker lets it teach. */
  counts: z._default(z.boolean(), true),
  evidence: z.array(evidenceSchema).check(z.maxLength(2)),
  /** Stretch of the grain at the spine folds as foretold, as a share, and whether the grain cracked. */
  strain: z._default(z.nullable(number.check(z.minimum(0), z.maximum(5))), null),
  cracked: z._default(z.nullable(z.boolean()), null),
  /** How far it stood open after a week, degrees. */
  weekLater_deg: z._default(z.nullable(number.check(z.minimum(0), z.maximum(180))), null),
});

export type CoverLesson = z.output<typeof coverLessonSchema>;
export type CoverEvidence = CoverLesson['evidence'][number];
