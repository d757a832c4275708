import type { Segment, Vec2 } from '../../core/index.ts';
import type { LayerStyle } from '../layerStyle.ts';
import type { PdfCanvas } from './pdfCanvas.ts';

/**
 * Long side of a bank card, mm, and the two lines between which it must end: ISO/IEC 7810, size ID-1, 85.60 (85.47 to 85.72 with
 * its tolerance, from memory). Every such card ends between the lines of a print in true size, and none does where the print is
 * off by 0.5 % or more: too large, it ends before both; too small, it covers both.
 */
export const CARD_ENDS = { least: 85.35, most: 85.85 } as const;

const STOP: LayerStyle = { width: 0.22, dash: [], ink: [0, 0, 0] };
const GAP: LayerStyle = { width: 0.1, dash: [], ink: [0, 0, 0] };
const HEIGHT = 6.5;
const TEXT = 3;

/**
 * Draws the line that a card is laid on, with its stop at the left and the gap at the right in which it must end.
 * @param scale factor that corrects the printer across
 */
export function drawCardGap(canvas: PdfCanvas, [x, y]: Vec2, scale = 1): void {
  const [first, second] = [x + scale * CARD_ENDS.least, x + scale * CARD_ENDS.most];
  const upright = (at: number): Segment => ({ kind: 'line', from: [at, y], to: [at, y + HEIGHT] });
  canvas.lines([upright(x), { kind: 'line', from: [x, y], to: [first, y] }], STOP);
  canvas.lines([upright(first), upright(second)], GAP);
  const base = y + 2.3;
  canvas.words('bank card', [x + 2, base], TEXT);
  const large = 'ends before both lines: print too large';
  canvas.words(large, [first - 1.5 - canvas.widthOf(large, TEXT), base], TEXT);
  canvas.words('covers both lines: print too small', [second + 1.5, base], TEXT);
}
