import type { LetterFace, Vec2 } from '../../core/index.ts';
import { capitalOutline, lackedBy } from './letterLines.ts';

/** Letters by their advance and their strokes: `567|378 662 126 0|220 220 536 220`, y up from the base line. */
export type StrokeLetters = Readonly<Record<string, string>>;

/** Typed marks that a face of strokes draws by another letter of its own. */
const ALIKE: StrokeLetters = { '’': "'", '‘': '`', '\u00a0': ' ' };

/** A face of single strokes, as a stylus or a swivel knife goes. It has no kerning. */
export function strokeFace(id: string, title: string, letters: StrokeLetters): LetterFace {
  const found = (letter: string): string | undefined => letters[letter] ?? letters[ALIKE[letter] ?? ''];
  const capital = Math.max(
    ...strokes(letters.H ?? '')
      .strokes.flat()
      .map(([, y]) => y),
  );
  return {
    id,
    title,
    isStroke: true,
    lacks: (text) => lackedBy(text, (letter) => found(letter) !== undefined),
    outline: (text) => {
      const lines: Vec2[][] = [];
      let pen = 0;
      for (const letter of text) {
        const drawn = strokes(found(letter) ?? '0');
        for (const stroke of drawn.strokes) lines.push(stroke.map(([x, y]) => [pen + x, y]));
        pen += drawn.advance;
      }
      return capitalOutline(lines, capital);
    },
  };
}

function strokes(letter: string): { readonly advance: number; readonly strokes: Vec2[][] } {
  const [advance, ...lines] = letter.split('|');
  return {
    advance: Number(advance),
    strokes: lines.map((line) => {
      const numbers = line.split(' ').map(Number);
      return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i]!, numbers[2 * i + 1]!]);
    }),
  };
}
