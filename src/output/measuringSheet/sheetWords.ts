/** What the customer is asked, in words that need no knowledge of the trade. The letters are those of the figures. */
export const ASKED: readonly { readonly letter: string; readonly name: string; readonly how: string }[] = [
  { letter: 'A', name: 'Width', how: 'From the spine edge of the front board to the fore-edge.' },
  { letter: 'B', name: 'Height', how: 'On the front, over the board, top to bottom.' },
  { letter: 'C', name: 'Thickness, spine', how: 'Over both boards, book closed but not squeezed.' },
  { letter: 'D', name: 'Thickness, fore-edge', how: 'The same on the opposite side, where the pages open.' },
  { letter: 'E', name: 'One board', how: 'One board alone; of a paperback, its cover.' },
  { letter: 'F', name: 'Rise of the spine', how: 'How far a rounded spine stands out past the boards; 0 if flat.' },
  {
    letter: 'G',
    name: 'Round the closed book',
    how: 'Draw a strip of paper tight from the front fore-edge round the spine to the other. Mark both, lay it flat, measure.',
  },
  {
    letter: 'H',
    name: 'Open width',
    how: 'The same along the outside of the book lying open, from fore-edge to fore-edge.',
  },
];

export const TITLE = 'Measuring a book for a leather cover';

export const INTRODUCTION = {
  mm: 'Please measure the closed book to the nearest half millimetre, each length twice, and write down what the ruler shows. Add nothing for the cover: that is worked out from your measures. G and H check the others, so do not leave them out.',
  in: 'Please measure the closed book to the nearest 1/32 in, each length twice, and write down what the ruler shows. Add nothing for the cover: that is worked out from your measures. G and H check the others, so do not leave them out.',
} as const;

export const TICKS = [
  ['The cover of the book is', 'hard boards', 'paper or card', 'soft, without boards'],
  ['The spine is', 'flat', 'rounded'],
] as const;

export const RULER_NOTE =
  'Printed ruler. Print this page at actual size (100 %). Lay a bank card (85.6 mm long) on its line, its left edge at the left mark. Its right edge must end between the two lines at the right. If it does not, use another ruler.';
