import type { SceneTrouble } from '../../core/index.ts';
import type { Position } from './photographs.ts';

/** Names of the corners, in the order of the core's lists of points. */
export const CORNER_NAMES: Readonly<Record<Position, readonly string[]>> = {
  lying: ['Head, spine', 'Head, fore-edge', 'Tail, fore-edge', 'Tail, spine'],
  standing: [
    'Front board, spine',
    'Front board, fore-edge',
    'Back board, fore-edge',
    'Back board, spine',
    'Top of the rounded spine',
    'Inside of the front board',
  ],
};

/** Corners of the face; the points after them may be left out. */
export const CORNERS = 4;

export const FACE_WORDS: Readonly<Record<Position, { readonly title: string; readonly asks: string }>> = {
  lying: {
    title: 'The book’s upper cover',
    asks: 'Each corner of the upper board, where its edges meet. Rounded corners: where the edges would meet.',
  },
  standing: {
    title: 'The book’s upper end',
    asks: 'The corners of the boards at the head, seen from above. The front board is upward in the picture, the spine to the right.',
  },
};

export const SHOT_WORDS: Readonly<Record<Position, { readonly title: string; readonly asks: string }>> = {
  lying: {
    title: 'Photographs of the book lying',
    asks: 'Closed, in the middle of the sheet, its spine to the left. Three from about 70 cm: one straight down, two slanted from different sides. Without zoom, the whole sheet in each.',
  },
  standing: {
    title: 'Photographs of the book standing',
    asks: 'On its tail, in the middle of the sheet, from above. Two or three, slanted a little from different sides. They show thickness, the rounded spine and a board.',
  },
};

export const TROUBLE_WORDS: Readonly<Record<SceneTrouble['code'], string>> = {
  noMarks: 'No photograph shows a mark of the sheet.',
  fewMarks: 'The photographs show too few marks to measure by. Take them again with the whole sheet in sight.',
  unsolved:
    'The photographs do not fit together. Take out one that shows another sheet, or whose pages have moved, or take them again.',
};
