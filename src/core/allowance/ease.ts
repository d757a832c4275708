import type { Mm } from '../units/mm.ts';

/** Edges that may be given ease. */
type Edge = 'foreEdge' | 'head' | 'tail';

/** The ease of every edge at the thick end of the leather: as typed, or sized by the doubt where it is left open. */
export interface Ease {
  readonly foreEdge_mm: Mm;
  readonly head_mm: Mm;
  readonly tail_mm: Mm;
  /** The edges whose ease was left open. */
  readonly sized: readonly Edge[];
  /** Whether the cover reaches the wished share as it is cut; true where nothing was left open. */
  readonly reaches: boolean;
}
