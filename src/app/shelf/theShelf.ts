import type { KeptCopies } from '../state/keptJob.ts';
import { type OpenedJournal, openJournal } from './openJournal.ts';
import { Shelf } from './shelf.ts';

export { chooseLate, chooseStart } from './chooseStart.ts';

/** This window's shelf. */
export const theShelf = new Shelf();

/** Opens this window's journal, beside the shelf. */
export const openTheJournal = (copies: KeptCopies): Promise<OpenedJournal | null> =>
  openJournal(theShelf.connection, navigator.locks, copies);
