import type { Allowances } from '../allowance/allowances.ts';
import type { Mm } from '../units/mm.ts';

export interface Piece {
  readonly width: Mm;
  readonly height: Mm;
}

/** The cut pieces of a cover, and the pocket depth they were cut for. */
export interface Pieces {
  readonly outside: Piece;
  readonly pocket: Piece & { readonly count: 0 | 2 };
  readonly lining: Piece | null;
  /** Fore-edge seam (or turn) to pocket mouth on the assembled cover. */
  readonly pocketDepth: Mm;
  /** What the tool would allow, whether or not a size was given by the maker. */
  readonly allowances: Allowances;
}
