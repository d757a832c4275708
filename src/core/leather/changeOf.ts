import type { Job } from '../job/jobSchema.ts';
import { usualChange } from './usualChange.ts';

/** Change of size in making as shares, along and across the hide's backbone: as tested, else what is usual for the route. */
export function changeOnHide({ making }: Pick<Job, 'making'>): { readonly along: number; readonly across: number } {
  const { mean } = usualChange(making);
  return { along: making.changeAlong ?? mean, across: making.changeAcross ?? mean };
}

/** The same of a cut piece: its height lies along the backbone, or across it where the piece is turned. */
export function changeOf(job: Pick<Job, 'making'>): { readonly width: number; readonly height: number } {
  const { along, across } = changeOnHide(job);
  return job.making.backbone === 'upright' ? { width: across, height: along } : { width: along, height: across };
}

/** The smaller of both: by it a small piece is sized that may be cut either way, so that it is long enough. */
export function leastChange(job: Pick<Job, 'making'>): number {
  const { along, across } = changeOnHide(job);
  return Math.min(along, across);
}

const IN_STATE: Readonly<Record<Job['making']['state'], string>> = {
  dry: 'making',
  cased: 'casing',
  dyed: 'dyeing',
  'wet-formed': 'wet forming',
};

/** A change of size with its cause, as "shrinks 1.0 % in casing". */
export function changeWords({ making: { state, dressing } }: Pick<Job, 'making'>, change: number): string {
  if (change === 0) return 'keeps its size';
  const cause = state === 'dry' && dressing !== 'nothing' ? 'finishing' : IN_STATE[state];
  return `${change < 0 ? 'shrinks' : 'grows'} ${(100 * Math.abs(change)).toFixed(1)} % in ${cause}`;
}

/** Whether a test of the leather says how its size changes; worked dry and left undressed it needs none. */
export const isChangeTested = ({ making }: Pick<Job, 'making'>): boolean =>
  (making.state === 'dry' && making.dressing === 'nothing') ||
  (making.changeAlong !== null && making.changeAcross !== null);

/** The caution that goes with a change of size that is only assumed. */
export const TEST_FIRST = 'This is assumed: test an offcut first, treated as the cover will be.';

/** The making route in words, as "worked cased, finished with oil or wax". */
export const routeWords = ({ making: { state, dressing } }: Pick<Job, 'making'>): string =>
  `worked ${state}${dressing === 'nothing' ? '' : `, finished with ${dressing.replace(/^water|^spirit/, 'a $&')}`}`;
