import { line, type Segment, type Vec2 } from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import type { LayerStyle } from '../layerStyle.ts';
import type { PdfCanvas } from './pdfCanvas.ts';
import type { PrinterScale } from './printerScale.ts';

/**
 * Sides of a bank card, mm, each with the two lines between which it must end: ISO/IEC 7810, size ID-1, 85.60 by 53.98 (85.47 to
 * 85.72 by 53.92 to 54.03 with its tolerance, from memory). Every such card ends between the lines of a print in true size, and
 * none does where the print is off by 0.5 % or more: too large, it ends before both; too small, it covers both.
 */
const CARD_ENDS = { long: { least: 85.35, most: 85.85 }, short: { least: 53.79, most: 54.16 } } as const;

const STOP: LayerStyle = { width: 0.22, dash: [], ink: [0, 0, 0] };
const GAP: LayerStyle = { width: 0.1, dash: [], ink: [0, 0, 0] };
const HEIGHT = 6.5;
/** Length of the lines beside the corner of a card, mm: past its rounding of 3.18 mm. */
const LONG = 12;
const TEXT = 3;
const SMALL = { height: 2.7, leading: 3.8 } as const;

/** Draws the line that a card is laid on, with its stop at the left and the gap at the right in which it must end. */
export function drawCardGap(canvas: PdfCanvas, [x, y]: Vec2): void {
  const [first, second] = [x + CARD_ENDS.long.least, x + CARD_ENDS.long.most];
  const upright = (at: number): Segment => line([at, y], [at, y + HEIGHT]);
  canvas.lines([upright(x), line([x, y], [first, y])], STOP);
  canvas.lines([upright(first), upright(second)], GAP);
  const base = y + 2.3;
  canvas.words('bank card', [x + 2, base], TEXT);
  const large = 'ends before both lines: print too large';
  canvas.words(large, [first - 1.5 - canvas.widthOf(large, TEXT), base], TEXT);
  canvas.words('covers both lines: print too small', [second + 1.5, base], TEXT);
}

/** What the card is laid on takes across and upright at most, mm. */
export const CARD_CORNER = { width: 88, height: 56 } as const;

/**
 * Draws the corner that a card is laid in, with the gaps in which its right and its upper edge must end: both scales of a printer
 * are tested.
 * @param said words that the card covers, after its own
 */
export function drawCardCorner(canvas: PdfCanvas, [x, y]: Vec2, scale: PrinterScale, said: readonly string[]): void {
  const { long, short } = CARD_ENDS;
  const across = [x + scale.x * long.least, x + scale.x * long.most] as const;
  const upright = [y + scale.y * short.least, y + scale.y * short.most] as const;
  canvas.lines([line([x, y], [across[0], y]), line([x, y], [x, upright[0]])], STOP);
  canvas.lines(
    [...across.map((at) => line([at, y], [at, y + LONG])), ...upright.map((at) => line([x, at], [x + LONG, at]))],
    GAP,
  );
  const room = across[0] - x - 4;
  const paragraphs = [
    'Bank card: lay it here, into the corner of the two thick lines. Its right edge and its upper edge must each end between two thin lines.',
    'An edge that ends before both lines: print too large. One that covers both: print too small.',
    ...said,
  ];
  let base = upright[0] - 2 - SMALL.height;
  for (const paragraph of paragraphs)
    canvas.tagged('P', () => {
      for (const words of brokenLines(paragraph, room, (part) => canvas.widthOf(part, SMALL.height))) {
        canvas.words(words, [x + 2, base], SMALL.height);
        base -= SMALL.leading;
      }
    });
}
