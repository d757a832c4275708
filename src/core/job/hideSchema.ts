import { z } from 'zod';
import { isSimplePolygon } from '../math/simplePolygon.ts';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

const coordinate = z.number().min(-5000).max(10_000);

/** A closed polygon, mm, in either sense of turning. */
const polygonSchema = z
  .array(z.tuple([coordinate, coordinate]))
  .min(3)
  .max(300)
  .superRefine((polygon, context) => {
    if (!isSimplePolygon(polygon))
      addRuleIssue(
        context,
        [],
        polygon,
        'an outline whose sides do not cross or touch each other',
        'go round the edge once, in order, and do not repeat the first point',
      );
  });

/** One piece of leather on the bench: a sheet, or a hide with its outline traced, seen from the flesh side. */
const hideSchema = z.strictObject({
  width_mm: lengthField('Sheet width', 20, 5000, 'Of a sheet; an outline takes its place.').prefault(600),
  height_mm: lengthField('Sheet height', 20, 5000, 'Of a sheet; an outline takes its place.').prefault(600),
  outline: polygonSchema.nullable().default(null).meta({ title: 'Outline', description: 'Corners of the hide, mm.' }),
  defects: z
    .array(polygonSchema)
    .max(60)
    .default([])
    .meta({ title: 'Defects', description: 'Scars, holes, brands and loose places to keep off, mm.' }),
  backbone_deg: numberField(
    'Backbone',
    'deg',
    0,
    360,
    'Direction of the backbone line on the piece, from its x axis. Leather stretches least along it.',
  ).default(90),
});

/** The leather owned, for each leather of the cover, and how close pieces may be cut. */
export const hidesSchema = z
  .strictObject({
    outside: hideSchema.nullable().default(null),
    pocket: hideSchema.nullable().default(null),
    lining: hideSchema.nullable().default(null),
    spacing_mm: lengthField('Spacing', 0, 100, 'Least distance between two pieces.').prefault(3),
    edge_mm: lengthField(
      'Off the edge',
      0,
      300,
      'Least distance from the edge of the leather and from defects.',
    ).prefault(5),
  })
  .prefault({});
