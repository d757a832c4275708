import { useSyncExternalStore } from 'react';

/** The places of the page. Each has its own address in the fragment, so that it can be linked to and gone back from. */
export const PLACES = [
  { id: 'cover', title: 'Cover' },
  { id: 'strips', title: 'Strips' },
  { id: 'explore', title: 'Explore' },
  { id: 'workbench', title: 'Workbench' },
  { id: 'customer', title: 'Customer' },
  { id: 'shelf', title: 'Shelf' },
  { id: 'leathers', title: 'Leathers' },
  { id: 'photograph', title: 'By photograph' },
  { id: 'words', title: 'Words' },
] as const;

/** The places in the row of the header; the others stand in the menu of the job. */
export const PLACES_IN_ROW = PLACES.slice(0, 5);

export type PlaceId = (typeof PLACES)[number]['id'];

/** Where the maker is: a place, and the part of it where it has parts; '' for none. */
export interface Place {
  readonly id: PlaceId;
  readonly part: string;
}

/** The address of a place, such as `#workbench/template`. */
export const addressOf = (id: PlaceId, part = ''): string => (part === '' ? `#${id}` : `#${id}/${part}`);

/**
 * The place that a fragment names; the cover for an empty or an unknown one, such as that of a shared link. A link for a customer,
 * `#customer=`, leads to the customer's page.
 */
export function placeAt(fragment: string): Place {
  const [name, part = ''] = fragment.slice(1).split(/[/=]/);
  const id = PLACES.find((place) => place.id === name)?.id;
  return id === undefined ? { id: 'cover', part: '' } : { id, part };
}

export function goTo(id: PlaceId, part = ''): void {
  window.location.hash = addressOf(id, part);
}

function subscribe(onChange: () => void): () => void {
  window.addEventListener('hashchange', onChange);
  return () => window.removeEventListener('hashchange', onChange);
}

/** The place in the page's address, now and as it changes. */
export function usePlace(): Place {
  const fragment = useSyncExternalStore(subscribe, () => window.location.hash);
  return placeAt(fragment);
}
