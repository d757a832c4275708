import { DRESSING, DYE, KNIFE, type ReadingList, type StripTest } from '../../../core/index.ts';

/** A test of a leather as it is shown. */
export interface TestCardSpec {
  readonly test: StripTest;
  readonly title: string;
  /** What it tells, and when it is needed. */
  readonly purpose: string;
  readonly lists: readonly ReadingList[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

const WATER = 'Water no warmer than the hand: hotter water scalds, and shrinks leather for good.';
const WEIGHT = 'Set the weight well back from the edge of the table, clear of feet.';

export const TEST_CARDS: readonly TestCardSpec[] = [
  {
    test: 'fold',
    title: 'Fold it, and bend it',
    purpose: 'Tells how much leather the folds take. It decides most of a fit.',
    lists: ['bends', 'folds'],
    steps: [
      'Case the strip first if the cover will be cased.',
      'Bend it round a rod or the edge of a block, at the line marked block, grain outside.',
      'Mark on its edge where the bend begins and ends. Lay it flat and measure from mark to mark.',
      'Fold it hard at the dashed line, grain outside. Press the fold as you press a seam.',
      'Measure over both layers, on the fold itself.',
    ],
    cautions: [KNIFE, WATER],
  },
  {
    test: 'droop',
    title: 'Let it hang',
    purpose: 'Tells how stiff the leather is: how far a cover springs open.',
    lists: ['droops'],
    steps: [
      'Weigh the strip, and measure its length, width and thickness.',
      'Lay it on a table, grain up, its line at the edge. A board and a weight hold the rest.',
      'Wait a minute. Measure from the level of the table straight down to the tip.',
      'A strip that curls by itself reads wrong. Press it flat overnight, and read it grain down as well.',
    ],
    cautions: [KNIFE, WEIGHT],
  },
  {
    test: 'change',
    title: 'Treat it, and let it dry',
    purpose: 'Tells how much larger to cut: leather that was wet or dyed shrinks.',
    lists: ['changes'],
    steps: [
      'Prick both crosses through with an awl. Measure from hole to hole, 100 or 200 mm apart.',
      'Treat the strip just as the cover will be: case, dye or wet-form it, and finish it.',
      'Let it dry flat for two days, without stretching it.',
      'Measure again with the same rule, and change the reading.',
    ],
    cautions: ['Awl: work over a board, never toward the palm.', WATER, DYE, DRESSING],
  },
  {
    test: 'crease',
    title: 'Crease it, and let go',
    purpose: 'Tells how well a pressed fold stays, and how much of it is lost in a week.',
    lists: ['creases'],
    steps: [
      'Case the strip first if the cover will be cased.',
      'Fold it at the dashed line, grain outside. Press it under a board and a weight as long as a cover is pressed.',
      'Let go, and stand it on its long edge. After five minutes read the angle between its legs.',
      'Leave it standing. Read it again after a day, and change the reading.',
    ],
    cautions: [KNIFE, WATER, WEIGHT],
  },
];
