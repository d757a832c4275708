import * as z from 'zod/mini';
import { daySchema } from '../job/daySchema.ts';
import { lengthField, numberField } from '../job/field.ts';
import { MAKING_STATES } from '../job/makingSchema.ts';

/** Way of a strip's length on the hide. */
export const WAYS = ['along', 'across'] as const;

export type Way = (typeof WAYS)[number];

/** Which side is on the outside of the bend. */
export const GRAINS = ['out', 'in'] as const;

export type Grain = (typeof GRAINS)[number];

const error = (usual: number) => z.prefault(lengthField('Each may be off by', 0.01, 5), usual);

const callipers = z.prefault(lengthField('Callipers may be off by', 0.01, 1), 0.1);

/** What every reading says of its strip. Every error is two standard uncertainties of one figure that was read. */
const strip = {
  day: z._default(z.nullable(daySchema), null).check(z.meta({ title: 'Day' })),
  way: z._default(z.enum(WAYS), 'across').check(z.meta({ title: 'Strip cut' })),
  /** As the strip was treated before it was read. */
  worked: z._default(z.enum(MAKING_STATES), 'dry').check(z.meta({ title: 'Worked' })),
};

const bent = { ...strip, grain: z._default(z.enum(GRAINS), 'out').check(z.meta({ title: 'Grain' })) };

const thickness = lengthField('Thickness of the strip', 0.2, 8);

/** A strip folded hard on itself and pressed as at a seam: thickness over both layers. */
export const foldReadingSchema = z.strictObject({
  ...bent,
  thickness_mm: thickness,
  fold_mm: lengthField('Over the fold', 0.4, 60),
  error_mm: error(0.1),
});

/** A strip bent round a block or rod: its length from mark to mark, laid flat again. Thickness and radius are read by callipers. */
export const bendReadingSchema = z.strictObject({
  ...bent,
  thickness_mm: thickness,
  radius_mm: lengthField('Radius of the block', 0, 100),
  angle_deg: numberField('Turn of the bend, degrees', 'deg', 45, 180),
  length_mm: lengthField('From mark to mark', 1, 400),
  error_mm: error(0.2),
  callipers_mm: callipers,
});

/** A strip laid over an edge, and weighed: how far its tip hangs below the edge. */
export const droopReadingSchema = z.strictObject({
  ...bent,
  thickness_mm: thickness,
  overhang_mm: lengthField('Overhang', 50, 400),
  droop_mm: lengthField('Tip below the edge', 0.5, 400),
  length_mm: lengthField('Length of the strip', 50, 1000),
  width_mm: lengthField('Width of the strip', 5, 200),
  weight_g: numberField('Weight of the strip, g', '', 0.5, 500),
  error_mm: error(1),
  callipers_mm: callipers,
  scales_g: z._default(numberField('Scales may be off by, g', '', 0.01, 20), 0.5),
});

/** Two marks on a strip that is treated as the cover will be, and dried: their distance before and, once it is dry, after. */
export const changeReadingSchema = z.strictObject({
  ...strip,
  before_mm: lengthField('Between the marks, before', 50, 500),
  after_mm: z._default(z.nullable(lengthField('Between the marks, dried', 40, 520)), null),
  error_mm: error(0.4),
});

/** A strip folded, loaded and let go: the angle between its legs, 0 for one that stays folded, 180 for one that springs flat. */
const creaseReadingSchema = z.strictObject({
  ...bent,
  fiveMinutes_deg: z._default(z.nullable(numberField('After five minutes, degrees', 'deg', 0, 180)), null),
  day_deg: z._default(z.nullable(numberField('After a day, degrees', 'deg', 0, 180)), null),
  error_deg: z._default(numberField('Each may be off by, degrees', 'deg', 0.5, 30), 4),
});

/** The readings of the tests, by the lists that hold them. */
export const READING_SCHEMAS = {
  folds: foldReadingSchema,
  bends: bendReadingSchema,
  droops: droopReadingSchema,
  changes: changeReadingSchema,
  creases: creaseReadingSchema,
} as const;

export type ReadingList = keyof typeof READING_SCHEMAS;

/** Most readings of one test. */
export const MOST_READINGS = 60;

const list = <T extends z.core.$ZodType>(reading: T) =>
  z._default(z.array(reading).check(z.maxLength(MOST_READINGS)), []);

/** All readings of one leather, by test. */
export const testsSchema = z.prefault(
  z.strictObject({
    folds: list(foldReadingSchema),
    bends: list(bendReadingSchema),
    droops: list(droopReadingSchema),
    changes: list(changeReadingSchema),
    creases: list(creaseReadingSchema),
  }),
  {},
);

export type LeatherTests = z.output<typeof testsSchema>;
export type FoldReading = LeatherTests['folds'][number];
export type BendReading = LeatherTests['bends'][number];
export type DroopReading = LeatherTests['droops'][number];
export type ChangeReading = LeatherTests['changes'][number];
export type CreaseReading = LeatherTests['creases'][number];
