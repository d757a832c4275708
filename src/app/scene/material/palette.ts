/** Inside of a hole. */
export const HOLE_COLOUR = '#22140c';

/** Tones of the cut faces, light enough for the hatching to show. */
export const SECTION_TONE = {
  outside: '#c98a58',
  pocket: '#e3bd8d',
  lining: '#f0dcb4',
  board: '#93a3b0',
  pages: '#f6efdd',
  band: '#d9cba8',
} as const;

/** Bench, rules and light for the page's light and dark scheme. */
export const SCHEMES = {
  light: { bench: '#d6cdbd', rule: 0.1, sky: '#ffffff', ground: '#b7a68d', daylight: 1 },
  dark: { bench: '#474441', rule: 0.022, sky: '#d7dde4', ground: '#a39480', daylight: 0.9 },
} as const;

export type Scheme = keyof typeof SCHEMES;

/** What is drawn in the bands along the edges: blue for a gap, aubergine for an overrun; the hatching differs too. */
export const CHALK = {
  gapWash: '#e3eef8',
  gapInk: '#1f4a7d',
  overrunWash: '#ffdcea',
  overrunInk: '#8a1660',
} as const;
