import type { Clearance, Hide, Layout, PieceOutline } from '../../../core/index.ts';

export interface LayoutQuestion {
  readonly outlines: readonly PieceOutline[];
  readonly hide: Hide;
  readonly clearance: Clearance;
}

export interface LayoutAnswer {
  readonly layout: Layout;
  /** Rules that the layout breaks; none for a sound one. */
  readonly faults: readonly string[];
}
