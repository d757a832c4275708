import * as z from 'zod/mini';
import { jobSchema } from '../job/jobSchema.ts';
import { fieldHelp } from '../words/fieldHelp.ts';
import { reportSchema } from './reportSchema.ts';

type JsonSchema = z.core.JSONSchema.BaseSchema;

/**
 * JSON Schema (draft 2020-12) of a job as it may be written and of its report, under `$defs`; either is a valid document.
 *
 * It holds titles, help, units, ranges and every default that does not depend on another field. The rules between two
 * fields are checked by `parseJob` alone.
 */
export function documentSchema(): JsonSchema {
  const { $schema, ...job } = schemaOf(jobSchema, 'input');
  const { $schema: _same, properties, ...report } = schemaOf(reportSchema, 'output');
  return {
    $schema,
    title: 'Job and report of a cover',
    oneOf: [{ $ref: '#/$defs/job' }, { $ref: '#/$defs/report' }],
    $defs: {
      job: { title: 'Job', ...job },
      report: {
        title: 'Report',
        description: 'Lengths in mm, angles in degrees, forces in N; a gap is positive, an overrun negative.',
        ...report,
        properties: { ...properties, job: { $ref: '#/$defs/job' } },
      },
    },
  };
}

const schemaOf = (schema: z.core.$ZodType, io: 'input' | 'output'): JsonSchema =>
  z.toJSONSchema(schema, {
    io,
    override({ zodSchema, jsonSchema, path }) {
      const { def } = zodSchema._zod;
      // The converter drops a default of 0 or null.
      if (def.type === 'default' || def.type === 'prefault') jsonSchema.default = def.defaultValue;
      const help = fieldHelp(pathOf(path));
      if (help !== '' && jsonSchema.title !== undefined) jsonSchema.description = help;
      // A field's note repeats them; the standard has `minimum` and `maximum`.
      delete jsonSchema.min;
      delete jsonSchema.max;
    },
  });

/** The path of a field of a job from its place in the schema; a list's items, and the kinds of a union, are `*` together. */
const pathOf = (path: readonly PropertyKey[]): string =>
  path
    .map(String)
    .join('.')
    .replace(/(?:^|\.)properties\./g, '.')
    .replace(/\.items\.(?:(?:oneOf|anyOf)\.\d+\.)?/g, '.*.')
    .replace(/\.(?:oneOf|anyOf|allOf)\.\d+/g, '')
    .replace(/^\./, '');
