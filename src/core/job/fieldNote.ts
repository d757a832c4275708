import * as z from 'zod/mini';
import type { FieldNote } from './field.ts';
import { jobSchema } from './jobSchema.ts';

/** A schema with its optional, default, nullable and transform layers, from the outside in. */
function layers(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  const { innerType, in: input } = schema._zod.def as { innerType?: z.core.$ZodType; in?: z.core.$ZodType };
  const inner = innerType ?? input;
  return inner === undefined ? [schema] : [schema, ...layers(inner)];
}

const shapeOf = (schema: z.core.$ZodType): Readonly<Record<string, z.core.$ZodType>> =>
  layers(schema).find((layer): layer is z.ZodMiniObject => layer instanceof z.ZodMiniObject)?.shape ?? {};

const noteOf = (schema: z.core.$ZodType): FieldNote | undefined =>
  layers(schema)
    .map((layer) => z.globalRegistry.get(layer))
    .find((meta) => meta?.title !== undefined) as FieldNote | undefined;

/**
 * Title, help, unit and range of the number field at a path of the job, from the schema itself.
 * @param path dotted, as `leather.outside.min_mm`
 * @throws Error where the schema has no field, or one without a title: a slip in the program, not in a job
 */
export function fieldNote(path: string): FieldNote {
  const note = findFieldNote(path);
  if (note === undefined) throw new Error(`No field of a job with a title lies at ${path}`);
  return note;
}

/** As `fieldNote`; undefined where there is no such field, or one without a title. */
export function findFieldNote(path: string): FieldNote | undefined {
  const schema = path
    .split('.')
    .reduce<z.core.$ZodType | undefined>((outer, key) => outer && shapeOf(outer)[key], jobSchema);
  return schema && noteOf(schema);
}

/** One number of the job: where it stands, and what its schema says of it. */
export interface NumberField {
  readonly path: string;
  readonly note: FieldNote;
}

/** Every number field in a part of the job, as `book`, in the order of the schema. */
export function numberFields(section: keyof typeof jobSchema.shape): readonly NumberField[] {
  return fieldsIn(jobSchema.shape[section], section);
}

function fieldsIn(schema: z.core.$ZodType, path: string): readonly NumberField[] {
  const note = noteOf(schema);
  if (note !== undefined && 'min' in note) return [{ path, note }];
  return Object.entries(shapeOf(schema)).flatMap(([key, inner]) => fieldsIn(inner, `${path}.${key}`));
}
