import { printer } from '../../core/index.ts';
import { fitToPage, type Paper } from './paper.ts';

/** What the two check bars measured on a first print, mm; both were meant to be `BAR_LENGTH`. */
export interface MeasuredBars {
  readonly x_mm: number;
  readonly y_mm: number;
}

/** True length of both check bars, mm. */
export const BAR_LENGTH = 150;

/** Largest error that is corrected; beyond it the print was scaled in the print dialog. */
const MOST_OFF = 0.1;

export interface PrinterScale {
  readonly x: number;
  readonly y: number;
}

/**
 * Factors that correct the printer: true length over measured length of each bar.
 *
 * Throws RangeError for a bar more than a tenth off.
 */
export function printerScale(bars: MeasuredBars | undefined): PrinterScale {
  if (bars === undefined) return { x: 1, y: 1 };
  const factor = (name: string, measured: number): number => {
    const off = measured / BAR_LENGTH - 1;
    if (!(Math.abs(off) <= MOST_OFF))
      throw new RangeError(
        `The check bar ${name} measures ${measured} mm; ${BAR_LENGTH * (1 - MOST_OFF)} to ${BAR_LENGTH * (1 + MOST_OFF)} mm can be corrected. Print at actual size, 100 %, and measure again.`,
      );
    return BAR_LENGTH / measured;
  };
  return { x: factor('across', bars.x_mm), y: factor('upright', bars.y_mm) };
}

/** Tolerance within which a measured bar shows a share: half a millimetre on the bar. */
const NEAR = 0.5 / BAR_LENGTH;

/**
 * Warns where both bars show the share of "fit to page". That is no fault of the printer, and correcting it would spoil
 * the next print at actual size.
 * @returns a sentence, or null
 */
export function fitToPageSuspicion(bars: MeasuredBars, paper: Paper): string | null {
  const fitted = fitToPage(paper);
  if (fitted === null) return null;
  const shares = [bars.x_mm / BAR_LENGTH, bars.y_mm / BAR_LENGTH];
  if (!shares.every((share) => Math.abs(share - fitted.share) <= NEAR)) return null;
  return `Both bars are at ${percent(fitted.share)}: the print was fitted to ${fitted.onto} paper. Print at actual size, 100 %, instead of correcting.`;
}

export const percent = (share: number): string => printer('mm').share(share, 1);
