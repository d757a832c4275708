import encodeQR from 'qr';
import { rectangle, segmentStart, type Vec2 } from '../../core/index.ts';

/** Side of a module, mm: five dots of a print at 300 dpi, and ten pixels of a 12-megapixel photograph that is 17 cm wide. */
const LEAST_MODULE = (5 * 25.4) / 300;
const MOST_MODULE = 0.6;

/** White border, in modules (ISO/IEC 18004:2024, 5.3.8). */
const QUIET = 4;

/** Largest side with its border, mm. */
const LARGEST_SQUARE = 46;
const USUAL_SQUARE = 30;

/** A square code by rows from the top, dark modules true, with its white border. */
export interface SquareCode {
  readonly modules: readonly (readonly boolean[])[];
  /** Side of a module, mm. */
  readonly module: number;
}

/**
 * Writes a text as a QR code (ISO/IEC 18004:2024) that a telephone reads from paper. It mends 15 % of damage, 7 % where a longer
 * text leaves no room for more.
 * @returns null where its modules would be smaller than `LEAST_MODULE` within `LARGEST_SQUARE`: over some 850 letters
 */
export function squareCode(text: string): SquareCode | null {
  for (const ecc of ['medium', 'low'] as const) {
    const modules = encoded(text, ecc);
    if (modules === null) return null;
    const module = Math.min(MOST_MODULE, Math.max(LEAST_MODULE, USUAL_SQUARE / modules.length));
    if (module * modules.length <= LARGEST_SQUARE) return { modules, module };
  }
  return null;
}

/** Outlines of the dark modules, those that lie side by side in a row as one; `left` and `top` are of the square's upper left corner. */
export function darkParts({ modules, module }: SquareCode, [left, top]: Vec2): Vec2[][] {
  return modules.flatMap((row, i) => {
    const starts = row.flatMap((isDark, k) => (isDark && row[k - 1] !== true ? [k] : []));
    return starts.map((from) => {
      const end = row.indexOf(false, from);
      const low: Vec2 = [left + from * module, top - (i + 1) * module];
      return rectangle(low, [left + (end === -1 ? row.length : end) * module, top - i * module]).map(segmentStart);
    });
  });
}

/** Null for a text that no code of the standard holds: over 2,953 bytes. */
function encoded(text: string, ecc: 'medium' | 'low'): boolean[][] | null {
  try {
    return encodeQR(text, 'raw', { ecc, border: QUIET });
  } catch {
    return null;
  }
}
