import * as z from 'zod/mini';
import type { FieldNote } from '../job/field.ts';
import { noteOf, shapeOf } from '../job/fieldNote.ts';
import { READING_SCHEMAS, type ReadingList } from './testSchema.ts';

export interface ReadingNote extends FieldNote {
  /** What stands where nothing is entered; null where nothing does. */
  readonly usual: number | null;
}

/**
 * Title, unit, range and usual value of a figure that is read in a test, from the schema itself.
 * @throws Error where the test has no such figure: a slip in the program
 */
export function readingNote(list: ReadingList, field: string): ReadingNote {
  const schema = shapeOf(READING_SCHEMAS[list])[field];
  const note = schema && noteOf(schema);
  if (note === undefined) throw new Error(`No figure ${field} is read in ${list}`);
  const { data } = z.safeParse(schema!, undefined);
  return { ...note, usual: typeof data === 'number' ? data : null };
}
