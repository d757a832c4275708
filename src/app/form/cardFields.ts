// What the cards beside the cover unfold to, as one file to fetch.
export { BookFields } from './BookFields.tsx';
export { DoubtFields } from './DoubtFields.tsx';
export { LeatherCard } from './LeatherCard.tsx';
export { PatternFields } from './PatternFields.tsx';
export { SeamFields } from './SeamFields.tsx';
