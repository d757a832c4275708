import {
  DOUBTS,
  type LengthUnit,
  type MarkedPaper,
  markedPage,
  PLAIN_PAPERS,
  type PrintScale,
  paperScale,
  parseLength,
  printScale,
  type SheetReadings,
} from '../../core/index.ts';
import { barLength } from '../../output/photographSheet/sheetWords.ts';
import type { Photographs, TypedEntry } from './photographs.ts';

/** Name of the ruler where none is typed: that of all lengths typed into the job. */
const USUAL_RULER = 'ruler A';

export interface Readings {
  readonly print: PrintScale;
  /** Lengths that the sheet is meant to have, mm. */
  readonly meant: { readonly across: number; readonly along: number };
  /** The ruler with which the sheet was checked; '' for a sheet that was not. */
  readonly ruler: string;
  readonly thickness: number | null;
  readonly issues: Readonly<Partial<Record<TypedEntry, string>>>;
}

/** The printed paper that the photographs show; by the units where they show none yet. */
function printedPaper({ shots }: Pick<Photographs, 'shots'>, units: LengthUnit): MarkedPaper {
  const pages = shots.flatMap(({ picture }) => picture?.marks.map(({ page }) => page) ?? []);
  if (pages.length === 0) return units === 'in' ? 'Letter' : 'A4';
  return pages.filter((page) => page.startsWith('Letter')).length > pages.length / 2 ? 'Letter' : 'A4';
}

/** What was typed about the sheet and the book, as lengths, and what is wrong with it. */
export function readingsOf(state: Pick<Photographs, 'shots' | 'paper' | 'typed'>, units: LengthUnit): Readings {
  const issues: Partial<Record<TypedEntry, string>> = {};
  const read = (entry: TypedEntry): number | null => {
    const text = state.typed[entry];
    if (text.trim() === '') return null;
    const length = parseLength(text, { defaultUnit: units });
    if (length.ok) return length.value;
    issues[entry] = length.message;
    return null;
  };
  const { paper } = state;
  const marked = printedPaper(state, units);
  const { bars } = markedPage(marked, 0);
  const meant =
    paper === null
      ? { across: bars.across.length, along: bars.along.length }
      : { across: PLAIN_PAPERS[paper].width, along: PLAIN_PAPERS[paper].height };
  const scale = (readings: SheetReadings): PrintScale =>
    paper === null ? printScale(marked, readings, DOUBTS.reading_mm) : paperScale(paper, readings, DOUBTS.reading_mm);
  const sides = { across: read('across'), along: read('along') };
  for (const side of ['across', 'along'] as const)
    try {
      scale({ across: null, along: null, [side]: sides[side] });
    } catch {
      issues[side] =
        `That is too far off: it was meant to be ${barLength({ length: meant[side] }, units)}. Measure again, or print again at actual size, 100 %.`;
      sides[side] = null;
    }
  const isRead = sides.across !== null || sides.along !== null;
  return {
    print: scale(sides),
    meant,
    ruler: isRead ? state.typed.ruler.trim() || USUAL_RULER : '',
    thickness: read('thickness'),
    issues,
  };
}
