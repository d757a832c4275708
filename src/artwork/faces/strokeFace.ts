import type { LetterFace, Vec2 } from '../../core/index.ts';
import { capitalOutline, lackedBy } from './letterLines.ts';
import { STROKE_MARKS } from './strokeMarks.ts';

/** Letters by their advance and their strokes: `567|378 662 126 0|220 220 536 220`, y up from the base line. */
export type StrokeLetters = Readonly<Record<string, string>>;

/** Letters and marks that a face of strokes draws by others of its own. Small final sigma is drawn as an s. */
const ALIKE: StrokeLetters = {
  '’': "'",
  '‘': '`',
  '\u00a0': ' ',
  '−': '-',
  '…': '...',
  ς: 's',
  І: 'I',
  і: 'i',
  Đ: 'Ð',
  đ: 'd\u0335',
  Ł: 'L\u0337',
  ł: 'l\u0337',
};

/** Between a letter and the mark above or below it, in units of the face. */
const MARK_GAP = 60;

/** Letters that lose their dot, the first of their strokes, under a mark. */
const DOTTED = new Set(['i', 'j']);

interface Drawn {
  readonly advance: number;
  readonly strokes: readonly (readonly Vec2[])[];
}

/**
 * A face of single strokes, as a stylus or a swivel knife goes. It has no kerning. A letter with marks that the face has not as
 * one is put together from its letter and `STROKE_MARKS`.
 */
export function strokeFace(id: string, title: string, letters: StrokeLetters): LetterFace {
  const own = (letter: string): Drawn | null => (letters[letter] === undefined ? null : strokes(letters[letter]));
  const found = (letter: string): Drawn | null => {
    const whole = own(letter);
    if (whole !== null) return whole;
    const parts = (ALIKE[letter] ?? letter).normalize('NFD').replace(/./gu, (part) => ALIKE[part] ?? part);
    let drawn: Drawn | null = null;
    for (const part of parts) {
      const mark = STROKE_MARKS[part];
      const next: Drawn | null = mark === undefined ? own(part) : drawn && marked(drawn, parts[0]!, mark);
      if (next === null) return null;
      drawn = drawn === null || mark !== undefined ? next : beside(drawn, next);
    }
    return drawn;
  };
  const capital = highest(own('H')?.strokes ?? []);
  return {
    id,
    title,
    isStroke: true,
    lacks: (text) => lackedBy(text.normalize('NFC'), (letter) => found(letter) !== null),
    outline: (text) => {
      const whole = [...text.normalize('NFC')].reduce<Drawn>(
        (before, letter) => beside(before, found(letter) ?? NOTHING),
        NOTHING,
      );
      return capitalOutline(whole.strokes, capital);
    },
  };
}

const NOTHING: Drawn = { advance: 0, strokes: [] };

const beside = (before: Drawn, next: Drawn): Drawn => ({
  advance: before.advance + next.advance,
  strokes: [...before.strokes, ...next.strokes.map((stroke) => shifted(stroke, [before.advance, 0]))],
});

/** A letter with one more mark; marks above stand on one another. */
function marked({ advance, strokes: drawn }: Drawn, letter: string, mark: (typeof STROKE_MARKS)[string]): Drawn {
  if (drawn.length === 0) return { advance, strokes: drawn };
  const base = mark.seat === 'above' && DOTTED.has(letter) && drawn.length === 2 ? drawn.slice(1) : drawn;
  const xs = base.flat().map(([x]) => x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [-highest(base.map((stroke) => stroke.map(([x, y]): Vec2 => [x, -y]))), highest(base)];
  const at: Record<typeof mark.seat, Vec2> = {
    above: [(left + right) / 2, high + MARK_GAP],
    below: [(left + right) / 2, low - MARK_GAP],
    through: [(left + right) / 2, (low + high) / 2],
    right: [right, high],
  };
  return { advance, strokes: [...base, ...mark.strokes.map((stroke) => shifted(points(stroke), at[mark.seat]))] };
}

const highest = (drawn: readonly (readonly Vec2[])[]): number => Math.max(...drawn.flat().map(([, y]) => y));

const shifted = (stroke: readonly Vec2[], [dx, dy]: Vec2): Vec2[] => stroke.map(([x, y]) => [x + dx, y + dy]);

function points(stroke: string): Vec2[] {
  const numbers = stroke.split(' ').map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i]!, numbers[2 * i + 1]!]);
}

function strokes(letter: string): Drawn {
  const [advance, ...lines] = letter.split('|');
  return { advance: Number(advance), strokes: lines.map(points) };
}
