import * as z from 'zod/mini';
import { fieldHelp } from '../words/fieldHelp.ts';
import type { FieldNote } from './field.ts';
import type { JobPath } from './jobPath.ts';
import { jobSchema } from './jobSchema.ts';
import { designSchema } from './toolingSchema.ts';

/** A schema with its optional, default, nullable and transform layers, from the outside in. */
function layers(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  const { innerType, in: input } = schema._zod.def as { innerType?: z.core.$ZodType; in?: z.core.$ZodType };
  const inner = innerType ?? input;
  return inner === undefined ? [schema] : [schema, ...layers(inner)];
}

/** Title, unit and range that a schema carries, in whichever of its layers. */
export const noteOf = (schema: z.core.$ZodType): FieldNote | undefined =>
  layers(schema)
    .map((layer) => z.globalRegistry.get(layer))
    .find((meta) => meta?.title !== undefined) as FieldNote | undefined;

/** A note with the help of its field; empty where it has none. */
export interface DescribedNote extends FieldNote {
  readonly description: string;
}

const described = (note: FieldNote | undefined, path: string): DescribedNote | undefined =>
  note && { ...note, description: fieldHelp(path) };

/** The fields and parts right inside a part of the job. */
export const shapeOf = (schema: z.core.$ZodType): Readonly<Record<string, z.core.$ZodType>> =>
  layers(schema).find((layer): layer is z.ZodMiniObject => layer instanceof z.ZodMiniObject)?.shape ?? {};

/** The schema at a path inside another; undefined where there is none. A key may hold dots itself. */
function schemaAt(schema: z.core.$ZodType, path: string): z.core.$ZodType | undefined {
  for (const [key, inner] of Object.entries(shapeOf(schema))) {
    if (path === key) return inner;
    const found = path.startsWith(`${key}.`) ? schemaAt(inner, path.slice(key.length + 1)) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Looks notes up as they are asked for: a page that starts asks for few. */
function notebook(schemas: readonly z.core.$ZodType[], helpPath: string): (path: string) => DescribedNote | undefined {
  const known = new Map<string, DescribedNote | undefined>();
  return (path) => {
    if (!known.has(path)) {
      const found = schemas.map((schema) => schemaAt(schema, path)).findLast((schema) => schema !== undefined);
      known.set(path, found && described(noteOf(found), `${helpPath}${path}`));
    }
    return known.get(path);
  };
}

/** Whether a text from outside names a field or a part of the job. */
export const isJobPath = (path: string): path is JobPath => schemaAt(jobSchema, path) !== undefined;

/**
 * Title, help, unit and range of the number field at a path of the job, from the schema itself.
 * @throws Error where the field has no title: a slip in the program, not in a job
 */
export function fieldNote(path: JobPath): DescribedNote {
  const note = findFieldNote(path);
  if (note === undefined) throw new Error(`No field of a job with a title lies at ${path}`);
  return note;
}

/** As `fieldNote`; undefined where there is no such field, or one without a title. */
export const findFieldNote = notebook([jobSchema], '');

const findDesignNote = notebook(designSchema._zod.def.options, 'tooling.designs.*.');

/** As `fieldNote`, of a field within a design of the tooling, as `height_mm` or `repeat.rows`; all kinds share their names. */
export function designNote(path: string): DescribedNote {
  const note = findDesignNote(path);
  if (note === undefined) throw new Error(`No field of a design with a title lies at ${path}`);
  return note;
}
