import type { Layer } from '../core/index.ts';

/** A layer on paper: line width and dashes in mm, ink. Dashes tell layers apart on a black printer. */
export interface LayerStyle {
  readonly width: number;
  readonly dash: readonly number[];
  /** Red, green, blue, 0 to 255. */
  readonly ink: readonly [number, number, number];
}

export const LAYER_STYLES: Readonly<Record<Layer, LayerStyle>> = {
  cut: { width: 0.3, dash: [], ink: [0, 0, 0] },
  fold: { width: 0.2, dash: [6, 2], ink: [20, 60, 110] },
  seam: { width: 0.1, dash: [1, 1], ink: [110, 80, 50] },
  hole: { width: 0.2, dash: [], ink: [110, 40, 90] },
  skive: { width: 0.1, dash: [], ink: [90, 110, 130] },
  book: { width: 0.15, dash: [3, 1.5], ink: [110, 110, 110] },
  centre: { width: 0.15, dash: [8, 1.5, 1, 1.5], ink: [60, 60, 60] },
  area: { width: 0.1, dash: [0.5, 1.5], ink: [110, 80, 50] },
  tooling: { width: 0.25, dash: [], ink: [110, 50, 20] },
  direction: { width: 0.2, dash: [], ink: [60, 60, 60] },
  mouth: { width: 0.3, dash: [12, 1.5], ink: [110, 40, 90] },
  lining: { width: 0.3, dash: [4, 1, 1, 1], ink: [50, 90, 40] },
  mark: { width: 0.2, dash: [], ink: [20, 60, 110] },
  text: { width: 0, dash: [], ink: [0, 0, 0] },
};
