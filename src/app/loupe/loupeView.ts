import { type CoverDesign, type Edge, edgeSection, RANGE_POINTS, type Vec2 } from '../../core/index.ts';

/** px of a millimetre at a magnification of 1, of the 96 px that CSS has to an inch. */
export const PX_PER_MM = 96 / 25.4;

/** How many times larger than it is a section may be shown, so that the figure is easily said. */
const MAGNIFICATIONS = [
  40, 30, 25, 20, 16, 12, 10, 8, 6, 5, 4, 3, 2, 1.5, 1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1,
] as const;

/** Board shown behind its edge or behind an overrun, and room beyond the last thing shown, mm. */
const SHOWN = { board: 1.2, beyond: 0.6 };

/** Share of the glass that a section may take, along the board and across it: a circle leaves no more beside its marks. */
const FILLED = { along: 0.86, across: 0.48 };

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
  const largest = Math.min((FILLED.along * size) / (right - left), (FILLED.across * size) / (high - low)) / PX_PER_MM;
  const magnification = MAGNIFICATIONS.find((step) => step <= largest) ?? MAGNIFICATIONS.at(-1)!;
  const scale = magnification * PX_PER_MM;
  return {
    magnification,
    place: ([u, v]) => [size / 2 + (u - (left + right) / 2) * scale, size / 2 - (v - (low + high) / 2) * scale],
  };
}
