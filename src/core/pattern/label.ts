import type { PatternSource } from './seam.ts';

/** Which face of a piece is seen: card has no grain. */
export const faceUp = ({ isCard = false }: PatternSource): string => (isCard ? 'outside face up' : 'grain side up');

/** How often a piece is cut, and which of its faces is seen. */
export const cutWords = (count: number, source: PatternSource): string => `cut ${count}, ${faceUp(source)}`;
