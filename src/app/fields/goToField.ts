import { light, reach, type Whereabouts } from './reach.ts';

/** Where the fields of each part of the job are. */
const FIELD_PLACES: Readonly<Record<string, Whereabouts>> = {
  name: { place: 'cover' },
  book: { place: 'cover', card: 'book' },
  leather: { place: 'cover', card: 'leather' },
  making: { place: 'cover', card: 'leather' },
  finish: { place: 'cover', card: 'leather' },
  seam: { place: 'cover', card: 'seam' },
  pockets: { place: 'cover', card: 'seam' },
  seating: { place: 'cover', card: 'seam' },
  ease: { place: 'cover', card: 'cut' },
  loosest: { place: 'cover', card: 'cut' },
  pattern: { place: 'cover', card: 'cut' },
  work: { place: 'cover', card: 'cut' },
  doubts: { place: 'cover', card: 'sure' },
  construction: { place: 'workbench', part: 'construction' },
  tooling: { place: 'workbench', part: 'tooling' },
  mockup: { place: 'workbench', part: 'trial' },
  outcome: { place: 'workbench', part: 'outcome' },
  hides: { place: 'workbench', part: 'leather' },
  supplies: { place: 'workbench', part: 'supplies' },
  rates: { place: 'workbench', part: 'quote' },
  order: { place: 'workbench', part: 'work' },
  made: { place: 'workbench', part: 'work' },
};

/** Where the field of a path is; undefined for a path that no field writes. */
export const fieldPlace = (path: string): Whereabouts | undefined =>
  FIELD_PLACES[path.startsWith('seam.iron') ? 'construction' : (path.split('.', 1)[0] ?? '')];

const fieldAt = (path: string): HTMLElement | null => document.querySelector(`[data-path="${CSS.escape(path)}"]`);

/** Goes to the place of a field and focuses it, or the field of the part that holds it, or the heading where it would be. */
export function goToField(path: string): void {
  const at = fieldPlace(path) ?? null;
  const heading = at?.card === undefined ? '.workbench-panel > h2' : `#card-${at.card} > summary`;
  reach(
    at,
    () => fieldAt(path) ?? fieldAt(path.split('.').slice(0, -1).join('.')),
    light,
    () => document.querySelector<HTMLElement>(heading),
  );
}
