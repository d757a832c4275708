import type * as z from 'zod/mini';
import { type DescribedNote, findFieldNote, isJobPath, shapeOf } from './fieldNote.ts';
import type { JobPath } from './jobPath.ts';
import { jobSchema } from './jobSchema.ts';

const pathsIn = (schema: z.core.$ZodType, prefix: string): readonly string[] =>
  Object.entries(shapeOf(schema)).flatMap(([key, inner]) => [`${prefix}${key}`, ...pathsIn(inner, `${prefix}${key}.`)]);

/** Every path of the job, in the order of the schema: fields, and the parts that hold them. */
export const JOB_PATHS: readonly JobPath[] = pathsIn(jobSchema, '').filter(isJobPath);

/** One number of the job: where it stands, and what its schema says of it. */
export interface NumberField {
  readonly path: JobPath;
  readonly note: DescribedNote;
}

/** Every number field in a part of the job, as `book`, in the order of the schema. */
export const numberFields = (section: keyof typeof jobSchema.shape): readonly NumberField[] =>
  JOB_PATHS.flatMap((path) => {
    const note = path.startsWith(`${section}.`) ? findFieldNote(path) : undefined;
    return note !== undefined && 'min' in note ? [{ path, note }] : [];
  });
