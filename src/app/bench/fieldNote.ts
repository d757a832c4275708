import * as z from 'zod/mini';
import type { FieldNote } from '../../core/job/field.ts';
import { jobSchema } from '../../core/job/jobSchema.ts';

/** A schema with its optional, default, nullable and transform layers, from the outside in. */
function layers(schema: z.core.$ZodType): z.core.$ZodType[] {
  const { def } = (schema as z.ZodMiniType)._zod as unknown as {
    def: { innerType?: z.core.$ZodType; in?: z.core.$ZodType };
  };
  const inner = def.innerType ?? def.in;
  return inner === undefined ? [schema] : [schema, ...layers(inner)];
}

const shapeOf = (schema: z.core.$ZodType): Record<string, z.core.$ZodType> | undefined =>
  layers(schema).find((layer): layer is z.ZodMiniObject => layer instanceof z.ZodMiniObject)?.shape;

function schemaAt(path: string): z.core.$ZodType {
  return path.split('.').reduce<z.core.$ZodType>((schema, key) => {
    const inner = shapeOf(schema)?.[key];
    if (inner === undefined) throw new Error(`No field of a job lies at ${path}`);
    return inner;
  }, jobSchema);
}

/** Title, help, unit and range of the number field at a path of the job, from the schema itself. */
export function fieldNote(path: string): FieldNote {
  for (const layer of layers(schemaAt(path))) {
    const note = z.globalRegistry.get(layer);
    if (note?.title !== undefined) return note as unknown as FieldNote;
  }
  throw new Error(`The field of a job at ${path} has no title`);
}
