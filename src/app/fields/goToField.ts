import { goTo, type PlaceId } from '../state/place.ts';
import { type CardId, openCard } from './Card.tsx';

interface FieldPlace {
  readonly place: PlaceId;
  readonly part?: string;
  readonly card?: CardId;
}

/** Where the fields of each part of the job are. */
const FIELD_PLACES: Readonly<Record<string, FieldPlace>> = {
  name: { place: 'cover' },
  book: { place: 'cover', card: 'book' },
  leather: { place: 'cover', card: 'leather' },
  making: { place: 'cover', card: 'leather' },
  seam: { place: 'cover', card: 'seam' },
  pockets: { place: 'cover', card: 'seam' },
  seating: { place: 'cover', card: 'seam' },
  ease: { place: 'cover', card: 'cut' },
  loosest: { place: 'cover', card: 'cut' },
  pattern: { place: 'cover', card: 'cut' },
  work: { place: 'cover', card: 'cut' },
  doubts: { place: 'cover', card: 'sure' },
  construction: { place: 'workbench', part: 'construction' },
  mockup: { place: 'workbench', part: 'trial' },
  hides: { place: 'workbench', part: 'leather' },
  supplies: { place: 'workbench', part: 'supplies' },
  rates: { place: 'workbench', part: 'quote' },
};

/** Where the field of a path is; undefined for a path that no field writes. */
export const fieldPlace = (path: string): FieldPlace | undefined => FIELD_PLACES[path.split('.', 1)[0] ?? ''];

/** Longest wait for a field whose part is still being fetched, ms. */
const LONGEST_WAIT = 8000;

const fieldAt = (path: string): HTMLElement | null => document.querySelector(`[data-path="${CSS.escape(path)}"]`);

/** Goes to the place of a field, opens what hides it, and focuses it, or the field of the part that holds it. */
export function goToField(path: string): void {
  const at = fieldPlace(path);
  if (at !== undefined) goTo(at.place, at.part);
  const until = performance.now() + LONGEST_WAIT;
  const look = (): void => {
    if (at?.card !== undefined) openCard(at.card);
    const field = fieldAt(path) ?? fieldAt(path.split('.').slice(0, -1).join('.'));
    if (field === null) {
      if (performance.now() < until) requestAnimationFrame(look);
      return;
    }
    for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    field.closest<HTMLElement>('[popover]')?.showPopover();
    field.focus();
    field.scrollIntoView({ block: 'nearest' });
  };
  look();
}
