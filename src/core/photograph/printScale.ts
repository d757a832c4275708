import type { Prior } from './adjust.ts';
import { type MarkedPaper, markedPage, PLAIN_PAPERS, type PlainPaper } from './markedSheet.ts';
import type { PrintScale } from './scene.ts';

/** What a ruler said of two lengths of a sheet, mm; null for one that was not measured. */
export interface SheetReadings {
  readonly across: number | null;
  readonly along: number | null;
}

/**
 * How far an unchecked print may be off, as a share, and how much its two directions may differ. Assumptions of this project, no
 * source: a print "fitted to the page" is 3 to 6 % too small, and nothing here covers that.
 */
export const PRINT_DOUBTS = { unchecked: 0.01, difference: 0.002 } as const;

/** Largest share by which a reading is believed. */
export const MOST_PRINT_OFF = 0.1;

/**
 * Scale of a printed sheet by the readings of its two bars.
 *
 * @param u standard uncertainty of a reading, mm
 * @throws RangeError for a reading more than a tenth off
 */
export function printScale(paper: MarkedPaper, readings: SheetReadings, u: number): PrintScale {
  const { bars } = markedPage(paper, 0);
  const read = readAs({ across: bars.across.length, along: bars.along.length }, readings, u);
  const one = read.along ?? read.across;
  return {
    // A print that was measured may be of any size.
    size: one === null ? { value: 1, u: PRINT_DOUBTS.unchecked } : { value: one.value, u: MOST_PRINT_OFF },
    difference: PRINT_DOUBTS.difference,
    ...read,
  };
}

/**
 * Scale of a plain paper that stands in for the sheet, by the readings of its sides; by the tolerance of its standard where none
 * was read (ISO 216: 1.5 mm up to 150 mm, 2 mm up to 600 mm, evenly spread and in each direction by itself).
 *
 * @param u standard uncertainty of a reading, mm
 * @throws RangeError for a reading more than a tenth off
 */
export function paperScale(paper: PlainPaper, readings: SheetReadings, u: number): PrintScale {
  const { width, height } = PLAIN_PAPERS[paper];
  const each = (width <= 150 ? 1.5 : 2) / Math.sqrt(3) / width;
  return {
    size: { value: 1, u: each / Math.SQRT2 },
    difference: each * Math.SQRT2,
    ...readAs({ across: width, along: height }, readings, u),
  };
}

function readAs(
  meant: { readonly across: number; readonly along: number },
  readings: SheetReadings,
  u: number,
): Pick<PrintScale, 'across' | 'along'> {
  const read = (way: 'across' | 'along'): Prior | null => {
    const reading = readings[way];
    if (reading === null) return null;
    const value = reading / meant[way];
    if (!(Math.abs(value - 1) <= MOST_PRINT_OFF))
      throw new RangeError(
        `The length ${way} the sheet measures ${reading} mm; it was meant to be ${meant[way]} mm. Measure it again, or print the sheet again at actual size, 100 %.`,
      );
    return { value, u: u / meant[way] };
  };
  return { across: read('across'), along: read('along') };
}
