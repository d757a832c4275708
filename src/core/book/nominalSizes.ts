import { MM_PER_INCH } from '../units/mm.ts';

/** A page size that books are trimmed to by name. Nominal: what a book on the bench measures is another matter. */
export interface NominalSize {
  readonly name: string;
  readonly width_mm: number;
  readonly height_mm: number;
}

export interface NominalSeries {
  readonly title: string;
  /** Where the figures come from, as it may be shown. */
  readonly source: string;
  readonly sizes: readonly NominalSize[];
}

const size = (name: string, width_mm: number, height_mm: number): NominalSize => ({ name, width_mm, height_mm });

/** In inches, named by them. */
const inches = (words: string, width: number, height: number): NominalSize =>
  size(words, width * MM_PER_INCH, height * MM_PER_INCH);

/** Sizes of the trimmed page, upright. */
export const NOMINAL_SERIES: readonly NominalSeries[] = [
  {
    title: 'ISO A',
    source: 'ISO 216',
    sizes: [
      size('A3', 297, 420),
      size('A4', 210, 297),
      size('A5', 148, 210),
      size('A6', 105, 148),
      size('A7', 74, 105),
    ],
  },
  {
    title: 'ISO B',
    source: 'ISO 216',
    sizes: [size('B4', 250, 353), size('B5', 176, 250), size('B6', 125, 176), size('B7', 88, 125)],
  },
  {
    title: 'Trims in inches',
    source: 'common practice, no source',
    sizes: [
      inches('4 1/4 × 6 7/8 in', 4.25, 6.875),
      inches('5 × 8 in', 5, 8),
      inches('5 1/2 × 8 1/2 in', 5.5, 8.5),
      inches('6 × 9 in', 6, 9),
      inches('7 × 10 in', 7, 10),
      inches('8 1/2 × 11 in', 8.5, 11),
    ],
  },
  {
    title: 'Trims in mm',
    source: 'common practice, no source',
    sizes: [
      size('A format', 110, 178),
      size('B format', 129, 198),
      size('Crown octavo', 123, 186),
      size('Demy octavo', 138, 216),
      size('Royal octavo', 156, 234),
      size('Crown quarto', 189, 246),
    ],
  },
];

/**
 * Board size of a book whose pages are trimmed to a nominal size: one square beyond the page at the fore-edge, at head and
 * at tail.
 * @param square margin of the board beyond the page, mm; 0 for a cover cut flush with its pages
 */
export function nominalBoard({ width_mm, height_mm }: NominalSize, square: number): Omit<NominalSize, 'name'> {
  return { width_mm: width_mm + square, height_mm: height_mm + 2 * square };
}
