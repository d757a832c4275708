import * as z from 'zod/mini';
import { isSimplePolygon } from '../math/simplePolygon.ts';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** Corners of an outline at most, and where they may lie, mm. */
export const OUTLINE_LIMITS = { corners: 300, min: -5000, max: 10_000 } as const;

/** Defects of a hide at most. */
export const MOST_DEFECTS = 60;

const coordinate = z.number().check(z.minimum(OUTLINE_LIMITS.min), z.maximum(OUTLINE_LIMITS.max));

/** A point, mm: an array, because zod's tuples weigh 0.5 kB in the first script. */
const pointSchema = z.pipe(
  z.array(coordinate).check(z.minLength(2), z.maxLength(2)),
  z.transform((at) => at as [number, number]),
);

/** A closed polygon, mm, in either sense of turning. */
const polygonSchema = z.array(pointSchema).check(
  z.minLength(3),
  z.maxLength(OUTLINE_LIMITS.corners),
  z.superRefine((polygon, context) => {
    if (!isSimplePolygon(polygon))
      addRuleIssue(
        context,
        [],
        polygon,
        'an outline whose sides do not cross or touch each other',
        'go round the edge once, in order, and do not repeat the first point',
      );
  }),
);

/** One piece of leather on the bench: a sheet, or a hide with its outline traced, seen from the flesh side. */
const hideSchema = z.strictObject({
  width_mm: z.prefault(lengthField('Leather width', 20, 5000), 600),
  height_mm: z.prefault(lengthField('Leather height', 20, 5000), 600),
  outline: z._default(z.nullable(polygonSchema), null).check(z.meta({ title: 'Outline' })),
  defects: z._default(z.array(polygonSchema).check(z.maxLength(MOST_DEFECTS)), []).check(z.meta({ title: 'Defects' })),
  backbone_deg: z._default(numberField('Backbone', 'deg', 0, 360), 90),
});

/** The leather owned, for each leather of the cover, and how close pieces may be cut. */
export const hidesSchema = z.prefault(
  z.strictObject({
    outside: z._default(z.nullable(hideSchema), null),
    pocket: z._default(z.nullable(hideSchema), null),
    lining: z._default(z.nullable(hideSchema), null),
    spacing_mm: z.prefault(lengthField('Spacing', 0, 100), 3),
    edge_mm: z.prefault(lengthField('Off the edge', 0, 300), 5),
  }),
  {},
);
