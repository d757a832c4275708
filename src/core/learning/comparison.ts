import { normalQuantile } from '../math/normal.ts';
import type { CoverLesson } from '../stock/coverLessonSchema.ts';

/** Dimensions in which finished covers are compared: the gaps read there together, or the size that was cut. */
const COMPARED = ['fore-edges', 'head and tail', 'cut width', 'cut height'] as const;

/** One length of a finished cover, measured and predicted, mm. */
export interface Compared {
  readonly cover: string;
  /** Name of its leather; empty where none is given. */
  readonly leather: string;
  readonly of: (typeof COMPARED)[number];
  readonly measured: number;
  readonly predicted: number;
  /** Standard uncertainty stated of the difference. */
  readonly u: number;
}

/** How well lengths agree, mm: all measured less predicted. */
interface Agreement {
  readonly count: number;
  /** Mean of the differences. */
  readonly bias: number;
  /** Root of their mean square. */
  readonly rms: number;
  /** How many lie within what was stated at 95 in 100. */
  readonly within: number;
}

const STATED = 0.95;

/** Half width of the interval that was stated at 95 in 100, mm: normal, 1.96 u. */
export const statedReach = ({ u }: Pick<Compared, 'u'>): number => normalQuantile((1 + STATED) / 2) * u;

/** Whether a length lies within what was stated of it. */
export const isWithin = (each: Compared): boolean => Math.abs(each.measured - each.predicted) <= statedReach(each);

/** @param lengths one or more */
export function agreement(lengths: readonly Compared[]): Agreement {
  const count = lengths.length;
  const off = lengths.map(({ measured, predicted }) => measured - predicted);
  return {
    count,
    bias: off.reduce((sum, each) => sum + each, 0) / count,
    rms: Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / count),
    within: lengths.filter(isWithin).length,
  };
}

/** The readings of a finished cover, beside what its job foretold. */
export const comparedCover = (
  { name, evidence }: Pick<CoverLesson, 'name' | 'evidence'>,
  leather: string,
): Compared[] =>
  evidence.map(({ of, read_mm: measured, expected_mm: predicted, foretold_mm: u }) => ({
    cover: name,
    leather,
    of: of === 'wrap' ? 'fore-edges' : 'head and tail',
    measured,
    predicted,
    u,
  }));

/** Lengths in groups by what they have in common, in the order of their first. */
export function grouped(
  lengths: readonly Compared[],
  by: 'of' | 'leather',
): readonly (readonly [string, readonly Compared[]])[] {
  const groups = new Map<string, Compared[]>();
  for (const each of lengths) groups.set(each[by], [...(groups.get(each[by]) ?? []), each]);
  return [...groups];
}
