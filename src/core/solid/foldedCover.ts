import { type CoverDesign, lyingDesign, madeDesign } from '../fold/coverDesign.ts';
import type { Settle } from '../fold/elastic/settledCover.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { Vec3 } from '../math/vec3.ts';
import { boardTip } from './boardEdges.ts';
import { bookParts } from './bookParts.ts';
import { coverParts } from './coverParts.ts';
import { fitMarks } from './fitMarks.ts';
import { fittingParts } from './fittings/fittingParts.ts';
import { foldedSeam } from './foldedSeam.ts';
import type { CoverFilm, FoldedCover } from './meshData.ts';
import type { Pose } from './pose.ts';
import { seeThrough } from './seeThrough.ts';
import { type Staging, staging } from './staging.ts';
import { openingOf } from './standing.ts';

/**
 * Folds the cut pieces round the book: solids, seam holes and fit marks in one position.
 *
 * Every surface comes from the section curves of the model: the taut path for the outside, the reverse curves of the seats
 * for the pockets and for head and tail. Lengths on the neutral line are those of the flat pattern in every position.
 * @param asCut a job worked out
 * @param pose a place on the film, or an opening in radians; both are brought into their range. An opening below the smallest
 *   that the cover allows shows that one; a place beyond a jam shows the jam
 * @param point thin end, middle or thick end of the leathers
 * @param settle gives the inner face of the settled outside at an opening, or null where the strip found none; without it
 *   the cover is drawn taut
 * @returns the scene, mm; where the boards do not go in, every opening shows the place where the film stops
 */
export function foldedCover(
  asCut: CoverDesign,
  pose: Pose,
  point: RangePoint = 'nominal',
  settle?: Settle,
): FoldedCover {
  const made = madeDesign(asCut);
  const stage = staging(made, point, pose, settle);
  const { standing, range, bookShown, isLoaded } = stage;
  const opening = openingOf(standing);
  const design = stage.isSettled ? lyingDesign(made, point, opening) : made;
  const cover = coverParts(design, point, stage);
  const leafSwing = pose.kind === 'opening' && range ? (opening - range.forced) / 2 : 0;
  const book = bookShown > 0 ? bookParts(design, point, stage, leafSwing) : [];
  const { benchTurn } = standing;
  const place = { grid: cover.grid, opening, least: range?.least ?? null, benchTurn, book, bookPlace: standing.place };
  const fittings = fittingParts(design, point, place, stage.movements);
  return {
    origin: stage.origin,
    parts: [...cover.parts, ...book, ...fittings.parts],
    seam: foldedSeam(design, point, cover.grid),
    strapSeam: fittings.strapSeam,
    marks: fitMarks(design, point, { ...stage, grid: cover.grid, gaps: design.fitDoubt.gaps }),
    seeThrough: isLoaded ? seeThrough(design, point, standing, cover.grid, cover.fields) : [],
    benchTurn,
    opening,
    film: filmOf(design, point, stage),
    bookPresence: bookShown,
  };
}

/** What the film shows here, and the spot of a jam: the tip of the board that does not go in, or of one that does not close. */
function filmOf(design: CoverDesign, point: RangePoint, { movements, jam, standing }: Staging): CoverFilm {
  if (jam === null) return { movements, jam: null };
  const [x, y] = boardTip(design, point, standing, movements.bentBack === 0 ? 1 : -1, 0);
  const spot: Vec3 = [x, y, 0];
  return { movements, jam: { spot, jam } };
}
