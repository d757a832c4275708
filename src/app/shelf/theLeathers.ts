import { LEATHERS } from './leatherKind.ts';
import { Shelf } from './shelf.ts';
import { theShelf } from './theShelf.ts';

/** The maker's leathers, in the same database as the jobs of this window. */
export const theLeathers = new Shelf({ kind: LEATHERS, connection: theShelf.connection });
