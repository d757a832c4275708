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

const noteOf = (schema: z.core.$ZodType): FieldNote | undefined =>
  layers(schema)
    .map((layer) => z.globalRegistry.get(layer))
    .find((meta) => meta?.title !== undefined) as FieldNote | undefined;

/** A note with the help of its field; empty where it has none. */
export interface DescribedNote extends FieldNote {
  readonly description: string;
}

const described = (note: FieldNote | undefined, path: string): DescribedNote | undefined =>
  note && { ...note, description: fieldHelp(path) };

type Entry = readonly [path: string, note: FieldNote | undefined];

/** Every field and part inside an object, in the order of its schema. */
function entriesIn(schema: z.core.$ZodType, prefix: string): readonly Entry[] {
  const shape = layers(schema).find((layer): layer is z.ZodMiniObject => layer instanceof z.ZodMiniObject)?.shape ?? {};
  return Object.entries(shape).flatMap(([key, inner]): readonly Entry[] => {
    const path = `${prefix}${key}`;
    return [[path, noteOf(inner)], ...entriesIn(inner, `${path}.`)];
  });
}

const NOTES: ReadonlyMap<string, DescribedNote | undefined> = new Map(
  entriesIn(jobSchema, '').map(([path, note]) => [path, described(note, path)]),
);

/** Whether a text from outside names a field or a part of the job. */
export const isJobPath = (path: string): path is JobPath => NOTES.has(path);

/** Every path of the job, in the order of the schema. */
export const JOB_PATHS: readonly JobPath[] = [...NOTES.keys()].filter(isJobPath);

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
export const findFieldNote = (path: string): DescribedNote | undefined => NOTES.get(path);

const DESIGN_NOTES: ReadonlyMap<string, DescribedNote | undefined> = new Map(
  designSchema._zod.def.options
    .flatMap((option) => entriesIn(option, ''))
    .map(([path, note]) => [path, described(note, `tooling.designs.*.${path}`)]),
);

/** As `fieldNote`, of a field within a design of the tooling, as `height_mm` or `repeat.rows`; all kinds share their names. */
export function designNote(path: string): DescribedNote {
  const note = DESIGN_NOTES.get(path);
  if (note === undefined) throw new Error(`No field of a design with a title lies at ${path}`);
  return note;
}

/** One number of the job: where it stands, and what its schema says of it. */
export interface NumberField {
  readonly path: JobPath;
  readonly note: DescribedNote;
}

/** Every number field in a part of the job, as `book`, in the order of the schema. */
export const numberFields = (section: keyof typeof jobSchema.shape): readonly NumberField[] =>
  JOB_PATHS.flatMap((path) => {
    const note = path.startsWith(`${section}.`) ? NOTES.get(path) : undefined;
    return note !== undefined && 'min' in note ? [{ path, note }] : [];
  });
