import * as z from 'zod/mini';
import { lengthField } from './field.ts';

const colourField = (title: string, usual: string) =>
  z
    ._default(z.string().check(z.regex(/^#[0-9a-f]{6}$/, 'a colour as red, green and blue, as "#8f5b3a"')), usual)
    .check(z.meta({ title }));

const leatherFinish = (usual: string) =>
  z.strictObject({
    colour: colourField('Colour of the grain side', usual),
    surface: z._default(z.enum(['matt', 'satin', 'glossy']), 'satin').check(z.meta({ title: 'Surface' })),
  });

/**
 * How leather, edges, seam and fittings look. Colours are sRGB (IEC 61966-2-1), for the picture alone: no dye is meant by them.
 * A pocket without a finish of its own looks as the outside does.
 */
export const finishSchema = z.prefault(
  z.strictObject({
    outside: z.prefault(leatherFinish('#8f5b3a'), {}),
    pocket: z._default(z.nullable(leatherFinish('#a97c58')), null),
    lining: z.prefault(leatherFinish('#c4b496'), {}),
    edge: z._default(z.enum(['raw', 'burnished', 'painted']), 'burnished').check(z.meta({ title: 'Cut edges' })),
    edgeColour: colourField('Colour of the edge paint', '#3a2418'),
    thread: colourField('Colour of the thread', '#efe3c6'),
    thread_mm: z.prefault(lengthField('Thread thickness', 0.2, 3), 0.8),
    lace: colourField('Colour of the lace', '#6b3f24'),
    ribbon: colourField('Colour of the ribbon', '#7d2432'),
    metal: z._default(z.enum(['brass', 'nickel', 'black']), 'brass').check(z.meta({ title: 'Metal' })),
  }),
  {},
);

export type Finish = z.output<typeof finishSchema>;
