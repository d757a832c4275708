import * as z from 'zod/mini';
import type { FieldNote } from '../job/field.ts';
import { jobSchema } from '../job/jobSchema.ts';

/** One number of the job: where it stands, and what its schema says of it. */
export interface JobFigure {
  readonly path: string;
  readonly note: FieldNote;
}

/** Parts of the job that the pattern and its fit are worked out from. */
const SECTIONS = ['book', 'leather', 'seam', 'pockets', 'ease', 'pattern'];

/**
 * Numbers in those parts that no closed-form result or limit comes from: stiffness, crease set and density serve the
 * elastic strip and the weight, the pitch and the corners the drawing, the two wraps only the cross-check of the measures.
 * No fold is judged in a pocket, and no seat in a lining.
 */
const WITHOUT_RESULT =
  /^book\.square_mm$|^book\.measured\.(closedWrap|rolledHalf)_mm$|^seam\.(pitch|cornerRadius)_mm$|\.(modulus_MPa|creaseSet|density_kg_m3)$|^leather\.pocket\.(neutral|foldThickness_mm|strainLimit)$|^leather\.lining\.(bendRatio|strainLimit)$/;

/** Every number of the job that some result or limit may come from, in the order of the schema. */
export const JOB_FIGURES: readonly JobFigure[] = SECTIONS.flatMap((section) =>
  figuresIn(jobSchema.shape[section as keyof typeof jobSchema.shape], section),
).filter(({ path }) => !WITHOUT_RESULT.test(path));

function figuresIn(schema: z.core.$ZodType, path: string): readonly JobFigure[] {
  const wrapped = layers(schema);
  const note = wrapped.map((layer) => z.globalRegistry.get(layer)).find((each) => each?.title !== undefined);
  if (note !== undefined && 'min' in note) return [{ path, note: note as unknown as FieldNote }];
  const object = wrapped.find((layer): layer is z.ZodMiniObject => layer instanceof z.ZodMiniObject);
  return Object.entries(object?.shape ?? {}).flatMap(([key, inner]) => figuresIn(inner, `${path}.${key}`));
}

/** A schema with its optional, default, nullable and transform layers, from the outside in. */
function layers(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  const { innerType, in: input } = schema._zod.def as { innerType?: z.core.$ZodType; in?: z.core.$ZodType };
  const inner = innerType ?? input;
  return inner === undefined ? [schema] : [schema, ...layers(inner)];
}
