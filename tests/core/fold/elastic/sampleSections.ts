import type { SectionInput } from '../../../../src/core/fold/elastic/sectionInput.ts';
import { nth } from '../../../nth.ts';

export interface SampleBook {
  readonly width: number;
  readonly thickness: number;
  /** Rise of the back, 0 when flat. */
  readonly rise: number;
}

/** The tide ledger and the choir book. */
export const LEDGER: SampleBook = { width: 165, thickness: 28, rise: 0 };
export const CHOIR: SampleBook = { width: 150, thickness: 54, rise: 9 };

/** Outside of a book with both boards swung alike about the corners of its spine. */
export function outlineOf({ width, thickness, rise }: SampleBook, opening: number): number[] {
  const half = opening / 2;
  const tip = [width * Math.cos(half), thickness / 2 + width * Math.sin(half)] as const;
  const points = [tip[0], tip[1], 0, thickness / 2];
  if (rise > 0) {
    const radius = (thickness ** 2 / 4 + rise ** 2) / (2 * rise);
    const sweep = Math.asin(thickness / 2 / radius);
    for (let k = 1; k < 24; k++) {
      const angle = sweep * (1 - k / 12);
      points.push(radius * Math.cos(sweep) - radius * Math.cos(angle), radius * Math.sin(angle));
    }
  }
  points.push(0, -thickness / 2, tip[0], -tip[1]);
  return points;
}

/** Closed length along the neutral line (Steiner), plus `slack`. */
function closedLength(book: SampleBook, leather: number, neutral: number, offset: number, slack: number): number {
  const outline = outlineOf(book, 0);
  let sum = 0;
  for (let i = 2; i < outline.length; i += 2) {
    sum += Math.hypot(nth(outline, i) - nth(outline, i - 2), nth(outline, i + 1) - nth(outline, i - 1));
  }
  return sum + Math.PI * (offset + neutral * leather) + slack;
}

/** A cover of 1.8 mm leather, held two thirds of the way in from each fore-edge. */
export function sectionOf(book: SampleBook, opening: number, slack: number, thickness = 1.8): SectionInput {
  const neutral = 2 / Math.PI;
  const [before, after] = [outlineOf(book, opening - 1e-4), outlineOf(book, opening + 1e-4)];
  return {
    outline: outlineOf(book, opening),
    rate: after.map((v, i) => (v - nth(before, i)) / 2e-4),
    offset: 0,
    thickness,
    neutral,
    length: closedLength(book, thickness, neutral, 0, slack),
    held: { front: (2 / 3) * book.width, back: (2 / 3) * book.width },
    scale: book.thickness,
    height: 240,
    modulus: 60,
  };
}
