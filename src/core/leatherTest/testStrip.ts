import type { Way } from './testSchema.ts';

/** The four tests of a leather, each with a strip of its own. */
export type StripTest = 'fold' | 'droop' | 'change' | 'crease';

/** A strip that is cut from the hide for a test, as it is drawn in true size; lengths in mm from its left end. */
export interface TestStrip {
  readonly letter: 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H';
  readonly test: StripTest;
  /** How its length lies on the hide. */
  readonly way: Way;
  readonly length: number;
  readonly width: number;
  /** Lines across it: where it is folded, bent round the block, or lies over the edge of the table. */
  readonly folds: readonly number[];
  readonly bends: readonly number[];
  readonly edges: readonly number[];
  /** Marks on its middle line, whose distances are read. */
  readonly marks: readonly number[];
}

const bare = { folds: [], bends: [], edges: [], marks: [] };

/** Sizes by test: common practice, no source; the droop's overhang suits leather from 1 to 3 mm. */
const SHAPES: Readonly<Record<StripTest, Pick<TestStrip, 'length' | 'width' | keyof typeof bare>>> = {
  fold: { ...bare, length: 150, width: 18, folds: [30], bends: [100] },
  droop: { ...bare, length: 240, width: 30, edges: [200] },
  change: { ...bare, length: 230, width: 24, marks: [15, 115, 215] },
  crease: { ...bare, length: 100, width: 24, folds: [50] },
};

const LETTERS = [
  ['A', 'fold', 'along'],
  ['B', 'fold', 'across'],
  ['C', 'droop', 'along'],
  ['D', 'droop', 'across'],
  ['E', 'change', 'along'],
  ['F', 'change', 'across'],
  ['G', 'crease', 'along'],
  ['H', 'crease', 'across'],
] as const;

/** One strip along and one across the hide's backbone for each test. */
export const TEST_STRIPS: readonly TestStrip[] = LETTERS.map(([letter, test, way]) => ({
  letter,
  test,
  way,
  ...SHAPES[test],
}));
