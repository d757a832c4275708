import type { Job } from '../job/jobSchema.ts';
import { capital } from '../words/capital.ts';

/** A closure's fastening and what it is made up of. */
export interface Fastening {
  /** As `Brass stud`, `Magnet`. */
  readonly name: string;
  readonly parts: readonly { readonly name: string; readonly count: number }[];
}

type Kind = NonNullable<Job['construction']['strap']>['fastening'];

/** Parts as they are sold. Common practice, no source. */
const PARTS: Readonly<Record<Kind, Fastening['parts']>> = {
  stud: [
    { name: 'stud head', count: 1 },
    { name: 'screw', count: 1 },
  ],
  snap: [
    { name: 'cap', count: 1 },
    { name: 'socket', count: 1 },
    { name: 'stud', count: 1 },
    { name: 'post', count: 1 },
  ],
  buckle: [
    { name: 'buckle', count: 1 },
    { name: 'keeper', count: 1 },
  ],
  magnet: [
    { name: 'disc magnet', count: 2 },
    { name: 'thin leather cover', count: 2 },
  ],
};

/** The fastening of a closure; null for a cover without one. A magnet is hidden: its metal is not chosen. */
export function fasteningOf({ construction: { strap }, finish }: Job): Fastening | null {
  if (strap === null) return null;
  const words = strap.fastening === 'magnet' ? 'magnet' : `${finish.metal} ${strap.fastening}`;
  return { name: capital(words), parts: PARTS[strap.fastening] };
}
