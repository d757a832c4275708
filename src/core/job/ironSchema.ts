import * as z from 'zod/mini';
import { lengthField, numberField } from './field.ts';

/** Tools that make several holes or slits at one blow, with the seams that each serves. */
export const IRONS = {
  'pricking iron': ['stitching'],
  'lacing chisel': ['lacing'],
  'drive punch': ['stitching', 'lacing'],
} as const;

/**
 * What the holes are made with. Its pitch takes the place of the seam's: every hole then lies at whole strides from a corner.
 * `teeth` are the counts that the maker owns, as 10 and 2; `tooth_mm` is the width of a tooth, or the diameter of a round hole.
 */
export const ironSchema = z.strictObject({
  kind: z.enum(Object.keys(IRONS) as (keyof typeof IRONS)[]).check(z.meta({ title: 'Tool' })),
  name: z._default(z.string().check(z.maxLength(60)), '').check(z.meta({ title: 'Name of the iron' })),
  pitch_mm: lengthField('Stride', 1, 25),
  teeth: z
    ._default(z.array(z.int().check(z.minimum(1), z.maximum(24))).check(z.minLength(1), z.maxLength(8)), [1])
    .check(z.meta({ title: 'Teeth' })),
  tooth_mm: lengthField('Tooth', 0.4, 12),
  angle_deg: z._default(numberField('Tooth angle', 'deg', 0, 90), 0),
});

export type Iron = z.output<typeof ironSchema>;
