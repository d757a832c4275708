import type { Prior } from './estimate.ts';

/**
 * What a trial in card does not know, in the order of the vectors: the book's measures and how far its spine is swollen
 * beyond the thickness typed, mm; the card's neutral fraction and bend ratio; how much too wide a gap was read at each
 * fore-edge, and at head and tail, because the stop of the board edge cannot be seen, mm; how much too long the strip
 * round the book was read, mm.
 */
export const UNKNOWNS = [
  'width',
  'thickness',
  'rise',
  'height',
  'swell',
  'neutral',
  'bendRatio',
  'foreEdgeStop',
  'headTailStop',
  'strip',
] as const;

export type Unknown = (typeof UNKNOWNS)[number];

/** Values of the unknowns, in their order. */
export type Values = readonly number[];

/** What is expected of an unknown: mean and standard deviation, in its unit. */
export interface Expected {
  readonly mean: number;
  readonly error: number;
}

/** What is expected of all unknowns, each independent of the others. */
export type Expectation = Readonly<Record<Unknown, Expected>>;

/** The value of one unknown. */
export const valueIn = (values: Values, name: Unknown): number => values[UNKNOWNS.indexOf(name)]!;

export const priorOf = (expectation: Expectation): Prior => ({
  mean: UNKNOWNS.map((name) => expectation[name].mean),
  error: UNKNOWNS.map((name) => expectation[name].error),
});
