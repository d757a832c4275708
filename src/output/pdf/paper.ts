/** Sheets by name, upright, mm, with the sheet that a print is fitted to by mistake. ISO 216 and ANSI/ASME Y14.1. */
export const SHEETS = {
  A4: { width: 210, height: 297, pair: 'Letter' },
  Letter: { width: 215.9, height: 279.4, pair: 'A4' },
  A3: { width: 297, height: 420, pair: 'Tabloid' },
  Tabloid: { width: 279.4, height: 431.8, pair: 'A3' },
  A2: { width: 420, height: 594, pair: null },
  A1: { width: 594, height: 841, pair: null },
  A0: { width: 841, height: 1189, pair: null },
} as const;

export type SheetName = keyof typeof SHEETS;

/** A sheet, or a roll of a width from which each piece is cut as long as it needs. */
export type Paper = SheetName | { readonly roll_mm: number };

export interface Page {
  readonly width: number;
  readonly height: number;
}

/** Rolls that printers and plotters take, mm. */
const ROLL = { least: 200, most: 1700 } as const;

/** Longest page that a PDF may have, 14,400 points (ISO 32000-1, annex C), less a little. */
export const LONGEST_PAGE = 5000;

export function checkPaper(paper: Paper): void {
  if (typeof paper === 'string') {
    if (!Object.hasOwn(SHEETS, paper))
      throw new RangeError(
        `Got paper "${paper}"; allowed: ${Object.keys(SHEETS).join(', ')} or a roll. Choose one of these.`,
      );
    return;
  }
  if (!(paper.roll_mm >= ROLL.least && paper.roll_mm <= ROLL.most))
    throw new RangeError(
      `A roll ${paper.roll_mm} mm wide cannot be used: ${ROLL.least} to ${ROLL.most} mm is allowed. Measure the roll across.`,
    );
}

/**
 * Scale that the print dialog's "fit to page" gives a sheet on the other paper of its pair:
 * min(w'/w, h'/h). 94.1 % for A4 on Letter, 97.3 % for Letter on A4, and the same for A3 and Tabloid.
 * @returns the share and the other paper; null for a roll, and for a sheet without a pair
 */
export function fitToPage(paper: Paper): { readonly share: number; readonly onto: SheetName } | null {
  if (typeof paper !== 'string') return null;
  const sheet = SHEETS[paper];
  if (sheet.pair === null) return null;
  const other = SHEETS[sheet.pair];
  return { share: Math.min(other.width / sheet.width, other.height / sheet.height), onto: sheet.pair };
}
