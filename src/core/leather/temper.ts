import type { Patch } from '../job/jobDocument.ts';
import type { LeatherName } from '../job/jobSchema.ts';

/** How readily a material takes a fold, in one word and in the numbers of the model. */
export interface Temper {
  readonly name: 'soft' | 'medium' | 'firm' | 'card';
  /** What the word is used for. */
  readonly feel: string;
  /** Inside radius over thickness where it is pressed along a seam. */
  readonly bendRatio: number;
  /** K, depth of the neutral line in a fold over the thickness. */
  readonly neutral: number;
  readonly modulus_MPa: number;
}

/**
 * Temper words and the numbers taken for them. Assumptions: the words are common practice, no source gives their numbers.
 * A firm leather turns wider at a seam, and its grain side hardly stretches, so that the neutral line of a fold lies further
 * out; a soft one gives on both sides. So the firmer leather, which forgives least, is cut the larger. Medium holds the
 * model's defaults: one thickness a fold, pressed. A test fold of the leather itself is better than any of them.
 */
export const TEMPERS: readonly Temper[] = [
  { name: 'soft', feel: 'drapes over the hand', bendRatio: 0.1, neutral: 0.58, modulus_MPa: 30 },
  { name: 'medium', feel: 'bends and springs back', bendRatio: 0.2, neutral: 2 / Math.PI, modulus_MPa: 60 },
  { name: 'firm', feel: 'stands by itself, worked dry', bendRatio: 0.5, neutral: 0.7, modulus_MPa: 120 },
];

/**
 * Card in place of leather: scored, it folds about its middle, and its thickness is known. Card is many times stiffer than a
 * job's leather may be; it is taken at that bound, which alters forces and no size. Assumptions, as for the card mock-up.
 */
export const CARD: Temper & { readonly thickness_mm: number; readonly density_kg_m3: number } = {
  name: 'card',
  feel: 'scored',
  bendRatio: 0.5,
  neutral: 0.5,
  modulus_MPa: 200,
  thickness_mm: 0.5,
  // 400 g/m2 over 0.5 mm.
  density_kg_m3: 800,
};

/** Closeness at which two numbers are the same word: finer than any that is typed. */
const SAME = 1e-3;

/** The temper whose fold a leather has, or null where its numbers are its own. */
export function temperOf(leather: { readonly bendRatio: number; readonly neutral: number }): Temper | null {
  const isSame = ({ bendRatio, neutral }: Temper): boolean =>
    Math.abs(bendRatio - leather.bendRatio) < SAME && Math.abs(neutral - leather.neutral) < SAME;
  return [...TEMPERS, CARD].find(isSame) ?? null;
}

/**
 * The changes that a temper makes to one leather. Card brings its thickness and density too and is not skived; a leather
 * after card takes the usual density again.
 */
export function temperPatches(piece: LeatherName, temper: Temper, before: Temper | null): readonly Patch[] {
  const { bendRatio, neutral, modulus_MPa } = temper;
  const sheet =
    temper.name === CARD.name
      ? {
          min_mm: CARD.thickness_mm,
          max_mm: CARD.thickness_mm,
          foldThickness_mm: undefined,
          density_kg_m3: CARD.density_kg_m3,
        }
      : before?.name === CARD.name
        ? { density_kg_m3: undefined }
        : {};
  const put = { bendRatio, neutral, modulus_MPa, ...sheet };
  return (Object.keys(put) as (keyof typeof put)[]).map((key) => ({
    path: `leather.${piece}.${key}`,
    value: put[key],
  }));
}
