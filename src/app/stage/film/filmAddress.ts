import { addressOf } from '../../state/place.ts';

const BEGINNING = 'film-';

/** The address that leads to a step of the film, as `#cover/film-stitch`. */
export const filmAddress = (step: string): string => addressOf('cover', `${BEGINNING}${step}`);

/** The step that the part of an address asks for; null where it asks for none. */
export const filmStepIn = (part: string): string | null =>
  part.startsWith(BEGINNING) ? part.slice(BEGINNING.length) : null;
