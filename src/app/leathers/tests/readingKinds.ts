import type { LeatherTests, Printer, ReadingList } from '../../../core/index.ts';

export type AnyReading = LeatherTests[ReadingList][number];

/** A figure of a reading as it is entered. */
export interface Entry {
  readonly field: string;
  readonly help: string;
  /** May be left empty: it is read later, or the usual stands for it. */
  readonly isOpen?: boolean;
}

/** How one kind of reading is entered and said. */
export interface ReadingKind {
  /** Of its form, where a card has two. */
  readonly title: string;
  readonly entries: readonly Entry[];
  /** Whether the side that is outside matters. */
  readonly isBent: boolean;
}

const CALLIPERS: Entry = {
  field: 'callipers_mm',
  isOpen: true,
  help: 'Callipers are good to about 0.1 mm on leather.',
};
const THICKNESS: Entry = { field: 'thickness_mm', help: 'By callipers, where it bends. Read it anew for each strip.' };

export const READING_KINDS: Readonly<Record<ReadingList, ReadingKind>> = {
  bends: {
    title: 'Round a block',
    isBent: true,
    entries: [
      THICKNESS,
      { field: 'radius_mm', help: 'Half the rod, or the edge of the block; 0 for a sharp edge.' },
      { field: 'angle_deg', help: '90 over the edge of a block, 180 round a rod.' },
      { field: 'length_mm', help: 'From where the bend begins to where it ends, laid flat again.' },
      { field: 'error_mm', isOpen: true, help: 'How far a reading of the rule may be off: 1 in 20 is further off.' },
      CALLIPERS,
    ],
  },
  folds: {
    title: 'Hard fold',
    isBent: true,
    entries: [
      THICKNESS,
      { field: 'fold_mm', help: 'Over both layers, on the fold itself, pressed as at a seam.' },
      { field: 'error_mm', isOpen: true, help: 'Callipers are good to about 0.1 mm on leather.' },
    ],
  },
  droops: {
    title: 'Droop',
    isBent: true,
    entries: [
      {
        ...THICKNESS,
        help: 'By callipers, the mean of three places. It decides: 2.5 % of it are 7.5 % of the stiffness.',
      },
      { field: 'overhang_mm', help: 'From the edge of the table to the tip, along the strip: 200 mm on the template.' },
      { field: 'droop_mm', help: 'From the level of the table straight down to the under side of the tip.' },
      { field: 'length_mm', help: 'The whole strip, end to end.' },
      { field: 'width_mm', help: 'Across it, the mean of three places.' },
      { field: 'weight_g', help: 'On letter or kitchen scales. Weigh several of one size together, and divide.' },
      { field: 'error_mm', isOpen: true, help: 'How far a reading of the rule may be off: 1 in 20 is further off.' },
      CALLIPERS,
      { field: 'scales_g', isOpen: true, help: 'Half the last figure that they show, or more.' },
    ],
  },
  changes: {
    title: 'Change of size',
    isBent: false,
    entries: [
      { field: 'before_mm', help: 'From cross to cross, before anything is done to the strip.' },
      { field: 'after_mm', isOpen: true, help: 'Leave it empty until the strip is dry; then change the reading.' },
      { field: 'error_mm', isOpen: true, help: 'How far each of the two may be off: 1 in 20 is further off.' },
    ],
  },
  creases: {
    title: 'Crease',
    isBent: true,
    entries: [
      { field: 'fiveMinutes_deg', isOpen: true, help: 'Between the legs: 0 stays folded, 180 springs flat.' },
      { field: 'day_deg', isOpen: true, help: 'Leave it empty today; then change the reading.' },
      { field: 'error_deg', isOpen: true, help: 'How far an angle may be off: 1 in 20 is further off.' },
    ],
  },
};

type Lengths = Pick<Printer, 'size' | 'number' | 'degrees'>;

const degrees = (angle: number | null): string => (angle === null ? 'not read yet' : `${angle}°`);

/** A reading as one line of its list. */
export const SAID: { readonly [L in ReadingList]: (reading: LeatherTests[L][number], print: Lengths) => string } = {
  folds: (reading, { size }) => `${size(reading.thickness_mm)} thick, ${size(reading.fold_mm)} over the fold`,
  bends: (reading, { size }) =>
    `${size(reading.thickness_mm)} thick, ${size(reading.length_mm)} round ${size(reading.radius_mm)} by ${degrees(reading.angle_deg)}`,
  droops: (reading, { size }) =>
    `${size(reading.thickness_mm)} thick, hangs ${size(reading.droop_mm)} down at ${size(reading.overhang_mm)}`,
  changes: (reading, { size }) =>
    `${size(reading.before_mm)} before, ${reading.after_mm === null ? 'not read again yet' : `${size(reading.after_mm)} dried`}`,
  creases: (reading) =>
    `after five minutes ${degrees(reading.fiveMinutes_deg)}, after a day ${degrees(reading.day_deg)}`,
};
