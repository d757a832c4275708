import { type CoverDesign, type Edge, edgeSection, RANGE_POINTS, type Vec2 } from '../../core/index.ts';

/** px of a millimetre at a magnification of 1, of the 96 px that CSS has to an inch. */
export const PX_PER_MM = 96 / 25.4;

/** How many times larger than it is a section may be shown, so that the figure is easily said. */
const MAGNIFICATIONS = [
  40, 30, 25, 20, 16, 12, 10, 8, 7, 6, 5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1,
] as const;

/** Board shown behind its edge or behind an overrun, and room beyond the last thing shown, mm. */
const SHOWN = { board: 1.2, beyond: 0.6 };

/** Share of the glass that a section may take along the board, and that stays free under it. */
const SHARE = { along: 0.86, under: 0.1 };

/** px for the dimension over the leather: its height with its words, and half the breadth of these. */
const DIMENSION = { height: 31, words: 44, figure: 22 };

/** Whether the glass, so many px across, has no room for the words of a gap but only for its figure. */
export const isSmallGlass = (size: number): boolean => size < 150;

/** How a section lies in the glass. */
export interface LoupeView {
  readonly magnification: number;
  /** px of a place of the section, from the upper left corner of the glass. */
  place(at: Vec2): Vec2;
}

/**
 * The largest view of an edge that holds its seam or turn, its stop and some of the board, of thin, middle and thick leather
 * alike: changing the leather moves what changes and nothing else.
 * @param size px across the glass
 */
export function loupeView(design: CoverDesign, edge: Edge, size: number): LoupeView {
  // In a pocket: near the fore-edge, where it is deepest.
  const sections = RANGE_POINTS.map((point) => edgeSection(design, edge, point, 1));
  const ends = sections.flatMap(({ gap, seam, reach }) => [gap ?? 0, seam === null ? reach : seam.at + seam.hole / 2]);
  const [left, right] = [Math.min(0, ...ends) - SHOWN.board, Math.max(0, ...ends) + SHOWN.beyond];
  const heights = sections.flatMap(({ outside, pocket }) => [...outside, ...(pocket ?? [])].map(([, v]) => v));
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const radius = size / 2;
  const half = isSmallGlass(size) ? DIMENSION.figure : DIMENSION.words;
  // What is said stands where the glass is as broad as it is.
  const top = radius - Math.sqrt(Math.max(0, radius ** 2 - half ** 2)) + DIMENSION.height;
  const bottom = (1 - SHARE.under) * size;
  const largest = Math.min((SHARE.along * size) / (right - left), (bottom - top) / (high - low)) / PX_PER_MM;
  const magnification = MAGNIFICATIONS.find((step) => step <= largest) ?? MAGNIFICATIONS.at(-1)!;
  const scale = magnification * PX_PER_MM;
  return {
    magnification,
    place: ([u, v]) => [radius + (u - (left + right) / 2) * scale, (top + bottom) / 2 - (v - (low + high) / 2) * scale],
  };
}
