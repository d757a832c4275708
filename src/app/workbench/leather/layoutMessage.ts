import type { Clearance, Hide } from '../../../core/materials/layout/hide.ts';
import type { Layout } from '../../../core/materials/layout/layout.ts';
import type { PieceOutline } from '../../../core/materials/pieceOutline.ts';

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
