import * as z from 'zod/mini';
import { mm } from '../units/mm.ts';

/** What an error needs to know of one number field, kept in zod's own metadata. Its help is in `words/fieldHelp.ts`. */
export interface FieldNote {
  readonly title: string;
  /** '' for a ratio, '%' for a share of one: it is kept as a share, and shown and typed in percent. */
  readonly unit: 'mm' | 'deg' | 'MPa' | 'kg/m3' | '%' | '';
  readonly min: number;
  readonly max: number;
}

/** A length field in millimetres, branded on the way out. `min` and `max` are inclusive. */
export const lengthField = (title: string, min: number, max: number) =>
  z
    .pipe(z.number().check(z.minimum(min), z.maximum(max)), z.transform(mm))
    .check(z.meta({ title, unit: 'mm', min, max } satisfies FieldNote));

/** Title, unit and range of any number field that is not branded. */
export const plainField = (note: FieldNote) =>
  z.number().check(z.minimum(note.min), z.maximum(note.max), z.meta({ ...note }));

/** A field in any unit but millimetres; `unit` is '' for a ratio. */
export const numberField = (title: string, unit: Exclude<FieldNote['unit'], 'mm'>, min: number, max: number) =>
  plainField({ title, unit, min, max });
