import { behind, type FaceSide, foundSide, movedSide, type Seer } from './faceSides.ts';

/** Agreement from which on photographs show the edge of a board, and from which on a line is taken for it; share of the best one that is as good. By rendered scenes of this project. */
const AGREED = { shown: 0.33, taken: 0.38 } as const;
const NEARLY = 0.85;
/** Two photographs look at a side from unlike angles if the places on the sheet that they see beyond it are so far apart, mm. */
const UNLIKE = 4;
/** Lines that are tried at the spine: the outermost and the distance between them, mm, and how many. */
const AT_SPINE = { outermost: 0.8, step: 0.4, count: 13 } as const;

/**
 * The edge of the board at the spine. A rounded spine stands out over it, and its outline is the rim of the face to photographs from within;
 * but each sees that elsewhere, and those from without not at all. So it is the line at the height of the face on which they agree.
 *
 * @param rim where the ground begins beyond the spine
 * @returns the edge and how far within the rim it is, mm; null where there is none, or more than one
 */
export function boardEdge(
  seers: readonly Seer[],
  rim: FaceSide,
): { readonly side: FaceSide; readonly within: number } | null {
  const { outermost, step, count } = AT_SPINE;
  const tried = Array.from({ length: count }, (_, i) => {
    const within = step * i - outermost;
    const side = movedSide(rim, { at: -within, tilt: 0 });
    return { i, side, within, agreed: agreement(seers, side) };
  });
  const best = tried.reduce((a, b) => (b.agreed > a.agreed ? b : a));
  const near = tried.filter(({ agreed }) => agreed > NEARLY * best.agreed);
  const isOne = near.every(({ i }, k) => k === 0 || i === near[k - 1]!.i + 1);
  return best.agreed > AGREED.taken && isOne ? best : null;
}

/** Whether a side is the edge of a board, and not the outline of a rounded spine. */
export const isBoardEdge = (seers: readonly Seer[], side: FaceSide): boolean => agreement(seers, side) > AGREED.shown;

/**
 * How far photographs show one line there that look at a side from unlike angles, 0 to 1: then it is at the height of the face. It is the lesser
 * support of two, of the best such pair; that which sees most from without is unlike any.
 */
function agreement(seers: readonly Seer[], side: FaceSide): number {
  const each = seers
    .map((seer) => ({ lean: behind(seer, side), support: foundSide([seer], side, 0.5)?.support ?? 0 }))
    .sort((a, b) => a.lean - b.lean);
  let most = 0;
  each.forEach((a, i) => {
    for (const b of each.slice(i + 1))
      if (i === 0 || b.lean - a.lean > UNLIKE) most = Math.max(most, Math.min(a.support, b.support));
  });
  return most;
}
