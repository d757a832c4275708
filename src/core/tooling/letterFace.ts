import type { Vec2 } from '../math/vec2.ts';

/** The lines of a text in units of its capital height: base line at y = 0, y up, x from 0 at the leftmost point. */
export interface LetterOutline {
  /** Closed where the last point is the first; curves are flattened to 0.002 of the capital height. */
  readonly polylines: readonly (readonly Vec2[])[];
  /** From the leftmost to the rightmost point of the lines; 0 for a text that draws nothing. */
  readonly width: number;
}

/** A face that titles are tooled in. Faces are loaded outside core, which knows no font files. */
export interface LetterFace {
  readonly id: string;
  /** As the maker chooses it. */
  readonly title: string;
  /** Whether each letter is drawn by single strokes, as a stylus or swivel knife goes, and not by its outline. */
  readonly isStroke: boolean;
  /** The characters of a text that the face has no letter for, each once; `outline` leaves them out. */
  lacks(text: string): string[];
  /** The lines of one line of text, kerned where the face has kerning. */
  outline(text: string): LetterOutline;
}
