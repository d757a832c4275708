import { goTo, type PlaceId } from '../state/place.ts';
import { type CardId, openCard } from './Card.tsx';

/** Where something is on the page. */
export interface Whereabouts {
  readonly place: PlaceId;
  readonly part?: string;
  readonly card?: CardId;
}

/** Longest wait for something whose part is still being fetched, ms. */
const LONGEST_WAIT = 8000;

/** After this, ms, a part that stands there without what is sought in it is taken not to have it. */
const PATIENCE = 1500;

/** Ends the search that is under way. */
let giveUp = new AbortController();

/**
 * Goes to where something is and waits until it stands there; then opens what hides it and hands it on. Whatever the maker
 * does meanwhile ends the wait.
 * @param at null for what is on every place
 * @param instead lit where the job at hand does not have what is sought
 */
export function reach(
  at: Whereabouts | null,
  find: () => HTMLElement | null | undefined,
  then: (found: HTMLElement) => void = light,
  instead: () => HTMLElement | null = () => null,
): void {
  giveUp.abort();
  giveUp = new AbortController();
  const { signal } = giveUp;
  // Not by the press that began it.
  setTimeout(() => {
    for (const act of ['keydown', 'pointerdown'])
      window.addEventListener(act, () => giveUp.abort(), { once: true, signal });
  });
  if (at !== null) goTo(at.place, at.part);
  const start = performance.now();
  let isOpen = at?.card === undefined;
  const look = (): void => {
    if (signal.aborted || performance.now() > start + LONGEST_WAIT) return;
    if (!isOpen) isOpen = !isAway(document.getElementById(`card-${at!.card}`)) && openCard(at!.card!) !== null;
    const found = find() ?? (performance.now() > start + PATIENCE ? instead() : null);
    if (found === null || isAway(found)) {
      requestAnimationFrame(look);
      return;
    }
    giveUp.abort();
    for (let fold = found.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    found.closest<HTMLElement>('[popover]')?.showPopover();
    then(found);
  };
  look();
}

/** The cover stays drawn, out of reach, while the maker is elsewhere. */
const isAway = (element: HTMLElement | null): boolean => element === null || element.closest('[inert]') !== null;

/** Brings something into view and puts it in focus, and in light until it loses that; of a group what is chosen. */
export function light(found: HTMLElement): void {
  const target = found.querySelector<HTMLElement>(':scope input:checked') ?? found;
  if (!target.matches('a, button, input, select, textarea, summary')) target.tabIndex = -1;
  found.dataset.found = '';
  target.addEventListener('blur', () => delete found.dataset.found, { once: true });
  target.focus({ preventScroll: true });
  found.scrollIntoView({ block: 'center' });
}
