import type { JobRecord } from '../../core/index.ts';
import { shareFragment } from '../shareLink/shareLink.ts';

/**
 * Address that the square code of the sheet holds: it opens the job, so that the maker finds it by a photograph. The sheet goes to the
 * customer, who is not sent the rates nor what leather is owned.
 *
 * @param address of the page without its fragment; null for none
 * @returns null where there is no address, or the job is too long for one
 */
export function sheetLink(document: JobRecord, address: string | null): string | null {
  const { rates: _rates, hides: _hides, ...sent } = document;
  const fragment = address === null ? null : shareFragment(sent);
  return fragment === null ? null : `${address}${fragment}`;
}
