import type { FieldFacts } from './exploreMessage.ts';

/** Heading of a field, and the word that tells it from a field of the same title under another. */
const GROUPS: readonly { readonly starts: string; readonly heading: string; readonly name: string }[] = [
  { starts: 'leather.outside', heading: 'Outside leather', name: 'Outside' },
  { starts: 'leather.pocket', heading: 'Pocket leather', name: 'Pocket leather' },
  { starts: 'leather.lining', heading: 'Lining', name: 'Lining' },
  { starts: 'making', heading: 'Making', name: '' },
  { starts: 'book', heading: 'The book', name: '' },
  { starts: 'seam', heading: 'Seam and pockets', name: '' },
  { starts: 'pockets', heading: 'Seam and pockets', name: 'Pocket' },
  { starts: 'ease', heading: 'Ease and cut size', name: '' },
  { starts: 'pattern', heading: 'Ease and cut size', name: '' },
];

const groupOf = (id: string) => GROUPS.find(({ starts }) => id.startsWith(starts))!;

export const fieldHeading = ({ id }: Pick<FieldFacts, 'id'>): string => groupOf(id).heading;

/** The field's full name: `Outside weight`, `Pocket depth`, `Thickness`. */
export function fieldName({ id, note }: Pick<FieldFacts, 'id' | 'note'>): string {
  const { name } = groupOf(id);
  return name === '' ? note.title : `${name} ${note.title.charAt(0).toLowerCase()}${note.title.slice(1)}`;
}
