import { bulgedLine, line, rectangle, type Segment } from '../../core/index.ts';
import { arc, type Figure } from './figure.ts';

/** The drawn book, mm on paper: not to scale, thick enough to show its parts. */
const BOOK = { width: 44, height: 44, front: 34, thickness: 17, board: 2.2, rise: 3.2, square: 2 } as const;

/** Distance of a measure from the book, and of its extension lines past it, mm. */
const OFF = 6;
const PAST = 1.2;

/** The front of the closed book, spine at the left. */
export function frontFigure(): Figure {
  const [x, y] = [6, OFF + 4];
  const [right, top] = [x + BOOK.front, y + BOOK.height];
  const joint = x + 3.5;
  return {
    caption: 'The front, book closed',
    width: right + OFF + 6,
    height: top,
    outline: rectangle([x, y], [right, top]),
    thin: [
      line([joint, y], [joint, top]),
      line([x, y - 1], [x, y - OFF - PAST]),
      line([right, y - 1], [right, y - OFF - PAST]),
      line([right + 1, y], [right + OFF + PAST, y]),
      line([right + 1, top], [right + OFF + PAST, top]),
    ],
    strip: [],
    measures: [
      { letter: 'A', from: [x, y - OFF], to: [right, y - OFF] },
      { letter: 'B', from: [right + OFF, y], to: [right + OFF, top] },
    ],
  };
}

/** Boards, rounded back and pages of the closed book seen from the tail, spine at the left, lower left board corner at x, y. */
function tailEnd(x: number, y: number): { outline: Segment[]; thin: Segment[] } {
  const { width, thickness, board, rise, square } = BOOK;
  const [right, top] = [x + width, y + thickness];
  const pages = Array.from({ length: 5 }, (_, i) => y + board + ((i + 1) * (thickness - 2 * board)) / 6);
  return {
    outline: [
      ...rectangle([x, y], [right, y + board]),
      ...rectangle([x, top - board], [right, top]),
      bulgedLine([x, top], [x, y], rise),
    ],
    thin: [
      bulgedLine([right - square, y + board], [right - square, top - board], -1.2),
      ...pages.map((at) => line([x + 1.5, at], [right - square - 1.2, at])),
    ],
  };
}

/** The closed book from the tail, with its measures. */
export function tailFigure(): Figure {
  const [x, y] = [18, OFF + 4];
  const { thickness, board, rise, width } = BOOK;
  const [right, top] = [x + width, y + thickness];
  const end = tailEnd(x, y);
  const far = 2 * OFF + 2;
  return {
    caption: 'From below, book closed',
    width: right + far + 6,
    height: top + OFF + 4,
    outline: end.outline,
    thin: [
      ...end.thin,
      line([x - 1, y], [x - OFF - 4 - PAST, y]),
      line([x - 1, top], [x - OFF - 4 - PAST, top]),
      line([right + 1, y], [right + far + PAST, y]),
      line([right + 1, top], [right + far + PAST, top]),
      line([right + 1, y + board], [right + OFF + PAST, y + board]),
      line([x, top + 1], [x, top + OFF + PAST]),
      line([x - rise, y + thickness / 2 + 3], [x - rise, top + OFF + PAST]),
    ],
    strip: [],
    measures: [
      { letter: 'C', from: [x - OFF - 4, y], to: [x - OFF - 4, top] },
      { letter: 'D', from: [right + far, y], to: [right + far, top] },
      { letter: 'E', from: [right + OFF, y + board], to: [right + OFF, y] },
      { letter: 'F', from: [x, top + OFF], to: [x - rise, top + OFF] },
    ],
  };
}

/** The paper strip round the closed book. */
export function wrapFigure(): Figure {
  const [x, y] = [14, 6];
  const { width, thickness, rise } = BOOK;
  const end = tailEnd(x, y);
  const gap = 1.3;
  const [left, right, low, top] = [x, x + width, y - gap, y + thickness + gap];
  return {
    caption: 'Paper strip round the closed book',
    width: right + 8,
    height: top + 10,
    outline: end.outline,
    thin: end.thin,
    strip: [
      line([right, top], [left, top]),
      bulgedLine([left, top], [left, low], rise + gap),
      line([left, low], [right, low]),
      line([right, top - gap], [right, top + 2.5]),
      line([right, low + gap], [right, low - 2.5]),
    ],
    measures: [],
    pointers: [{ letter: 'G', from: [x + width / 2, top + 8], to: [x + width / 2, top + 0.4] }],
  };
}

/** The book lying open, from the tail. */
export function openFigure(): Figure {
  const half = 33;
  const [x, y] = [4, OFF + 4];
  const [middle, right] = [x + half, x + 2 * half];
  const { board, square } = BOOK;
  const pile = BOOK.thickness / 2 - board;
  const leaf = (toward: 1 | -1): Segment[] => {
    const edge = middle + toward * (half - square);
    return [
      line([edge, y + board], [edge - toward * 1.5, y + board + pile]),
      line([edge - toward * 1.5, y + board + pile], [middle + toward * pile, y + board + pile]),
      arc([middle + toward * pile, y + board], pile, Math.PI / 2, (toward * Math.PI) / 2),
    ];
  };
  return {
    caption: 'Lying open, from below',
    width: right + 4,
    height: y + board + pile,
    outline: [...rectangle([x, y], [middle - 2, y + board]), ...rectangle([middle + 2, y], [right, y + board])],
    thin: [
      ...leaf(1),
      ...leaf(-1),
      line([x, y - 1], [x, y - OFF - PAST]),
      line([right, y - 1], [right, y - OFF - PAST]),
    ],
    strip: [line([x, y - 1.3], [right, y - 1.3])],
    measures: [{ letter: 'H', from: [x, y - OFF], to: [right, y - OFF] }],
  };
}
