import * as z from 'zod/mini';
import { type Iron, ironSchema } from '../../../core/index.ts';
import { keptChoice } from '../../state/keptChoice.ts';

/** The maker's own irons: kept in the browser, because they belong to the bench. A job has the one that it is made with. */
const listSchema = z.object({ irons: z._default(z.array(ironSchema).check(z.maxLength(60)), []) });

export const { read: keptIrons, keep: keepIrons } = keptChoice('coverwright.irons.v1', listSchema);

/** Whether two irons make the same holes; their names are the maker's own affair. */
export const isSameIron = (a: Iron, b: Iron): boolean =>
  JSON.stringify({ ...a, name: '' }) === JSON.stringify({ ...b, name: '' });
