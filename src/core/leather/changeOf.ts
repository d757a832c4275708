import type { Job } from '../job/jobSchema.ts';

/** Mean change of size of leather that is wetted or dyed and was not tested. Assumption. */
export const USUAL_CHANGE = -0.01;

/** Change of size in making as shares, along and across the backbone: as typed, else what is usual for how it is worked. */
export function changeOf({ making }: Pick<Job, 'making'>): { readonly along: number; readonly across: number } {
  const usual = making.state === 'dry' ? 0 : USUAL_CHANGE;
  return { along: making.changeAlong ?? usual, across: making.changeAcross ?? usual };
}
