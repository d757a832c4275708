import type { Layer } from '../core/index.ts';

/** A layer on paper: line width and dashes in mm, ink. Dashes tell layers apart on a black printer. */
export interface LayerStyle {
  readonly width: number;
  readonly dash: readonly number[];
  /** Red, green, blue, 0 to 255. */
  readonly ink: readonly [number, number, number];
}

/** Lines are two dots of a print at 300 dpi wide or more, and their ink is dark: lighter ink is printed as scattered dots. */
export const LAYER_STYLES: Readonly<Record<Layer, LayerStyle>> = {
  cut: { width: 0.3, dash: [], ink: [0, 0, 0] },
  fold: { width: 0.2, dash: [6, 2], ink: [0, 30, 60] },
  seam: { width: 0.18, dash: [1, 1], ink: [60, 40, 20] },
  hole: { width: 0.2, dash: [], ink: [60, 0, 50] },
  skive: { width: 0.18, dash: [], ink: [40, 50, 60] },
  book: { width: 0.18, dash: [3, 1.5], ink: [60, 60, 60] },
  centre: { width: 0.18, dash: [8, 1.5, 1, 1.5], ink: [40, 40, 40] },
  area: { width: 0.18, dash: [0.5, 1.5], ink: [60, 40, 20] },
  tooling: { width: 0.25, dash: [], ink: [60, 30, 0] },
  direction: { width: 0.2, dash: [], ink: [40, 40, 40] },
  mouth: { width: 0.3, dash: [12, 1.5], ink: [60, 0, 50] },
  lining: { width: 0.3, dash: [4, 1, 1, 1], ink: [20, 60, 10] },
  mark: { width: 0.2, dash: [], ink: [0, 30, 60] },
  text: { width: 0, dash: [], ink: [0, 0, 0] },
};
