import type { Drawing } from '../../core/index.ts';

/** One block of a bench sheet. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string; readonly startsPage: boolean }
  /** A heading under a heading: a piece, a step. `aside` stands at the far end of its line, and a box to tick after it. */
  | { readonly kind: 'item'; readonly text: string; readonly aside: string; readonly box: 'none' | 'open' | 'ticked' }
  | { readonly kind: 'text'; readonly text: string }
  /** `number` stands in its sign. */
  | { readonly kind: 'caution'; readonly number: number; readonly text: string };

/** A bench sheet before layout. */
export interface BenchSheet {
  /** The expected fit in a sentence. */
  readonly headline: string;
  readonly drawing: Drawing;
  readonly blocks: readonly Block[];
}

export const text = (words: string): Block => ({ kind: 'text', text: words });
export const heading = (words: string, startsPage = false): Block => ({ kind: 'heading', text: words, startsPage });
export const item = (words: string, aside = '', box: 'none' | 'open' | 'ticked' = 'none'): Block => ({
  kind: 'item',
  text: words,
  aside,
  box,
});
