/** Where a mark stands at its letter. */
type Seat = 'above' | 'below' | 'through' | 'right';

/** A combining mark as strokes, x from the middle of the letter, y from where it stands; 662 is the height of a capital. */
interface StrokeMark {
  readonly seat: Seat;
  readonly strokes: readonly string[];
}

const dot = (x: number, y: number): string => [x, y + 30, x - 30, y, x, y - 30, x + 30, y, x, y + 30].join(' ');

const above = (...strokes: string[]): StrokeMark => ({ seat: 'above', strokes });
const below = (...strokes: string[]): StrokeMark => ({ seat: 'below', strokes });

/** Marks of Latin, Greek and Cyrillic by their combining characters (Unicode block 0300 to 036F). */
export const STROKE_MARKS: Readonly<Record<string, StrokeMark>> = {
  '\u0300': above('-70 130 50 0'),
  '\u0301': above('-50 0 70 130'),
  '\u0302': above('-110 0 0 120 110 0'),
  '\u0303': above('-140 20 -90 80 -30 80 30 30 90 30 140 90'),
  '\u0304': above('-120 50 120 50'),
  '\u0306': above('-110 120 -60 30 0 0 60 30 110 120'),
  '\u0307': above(dot(0, 40)),
  '\u0308': above(dot(-110, 40), dot(110, 40)),
  '\u0309': above('-60 130 0 160 60 120 50 70 0 40 0 0'),
  '\u030A': above('0 0 -45 20 -65 65 -45 110 0 130 45 110 65 65 45 20 0 0'),
  '\u030B': above('-110 0 -10 130', '30 0 130 130'),
  '\u030C': above('-110 120 0 0 110 120'),
  '\u031B': { seat: 'right', strokes: ['-20 -60 50 -30 80 30 70 90'] },
  '\u0323': below(dot(0, -40)),
  '\u0326': below('0 0 20 -40 -30 -110'),
  '\u0327': below('0 0 -10 -40 50 -60 60 -100 20 -140 -50 -140'),
  '\u0328': below('0 0 -50 -60 -40 -120 30 -130'),
  '\u0335': { seat: 'through', strokes: ['-150 0 150 0'] },
  '\u0337': { seat: 'through', strokes: ['-130 -70 130 70'] },
};
