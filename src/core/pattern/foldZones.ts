import { neutralOffset } from '../allowance/wrap.ts';
import { pathLength } from '../book/tautPath.ts';
import type { PatternSource } from './seam.ts';

/** A stretch of the outside that bends round the spine, mm from its front cut edge. */
interface FoldZone {
  readonly from: number;
  readonly to: number;
}

/** Where the outside lies over the closed book. */
export interface WrapPlaces {
  /** Fore-edges of the two boards, equally far from the cut edges. */
  readonly frontBoard: number;
  readonly backBoard: number;
  /** Bends between board and back; none where a back rounded to a half circle runs on into the boards. */
  readonly folds: readonly FoldZone[];
  /** From the first bend to the last. */
  readonly spine: FoldZone;
}

/** Places of the closed book on the outside, from its taut path, for the thick end of the leather and centred boards. */
export function wrapPlaces({ pieces, needs }: PatternSource): WrapPlaces {
  const { closed, leathers } = needs.thick;
  const z = neutralOffset(leathers);
  // On these pieces, which change their size when the cover is made.
  const cut = (made: number): number => made / pieces.growth;
  const frontBoard = (pieces.outside.width - cut(closed.length)) / 2;
  let at = frontBoard;
  const stretches = closed.path.pieces.map((piece) => {
    const from = at;
    at += cut(pathLength([piece], z));
    return { zone: piece.zone, from, to: at };
  });
  const folds = stretches.filter(({ zone }) => zone === 'frontFold' || zone === 'backFold');
  const over = [...folds, ...stretches.filter(({ zone }) => zone === 'spine')];
  return {
    frontBoard,
    backBoard: at,
    folds: folds.map(({ from, to }) => ({ from, to })),
    spine: { from: Math.min(...over.map(({ from }) => from)), to: Math.max(...over.map(({ to }) => to)) },
  };
}

/** How much longer the outside's path round the closed spine is than the lining's, mm; 0 without a lining. */
export function liningDifference({ needs }: PatternSource): number {
  const { closed, leathers } = needs.thick;
  if (leathers.lining === null) return 0;
  return (
    pathLength(closed.path.pieces, neutralOffset(leathers)) -
    pathLength(closed.path.pieces, leathers.lining.neutralDepth)
  );
}
