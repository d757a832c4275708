import { Shelf } from './shelf.ts';

/** This window's shelf. */
export const theShelf = new Shelf();
