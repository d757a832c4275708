import { ALL_DONE, filmSteps, movementsAt } from '../film/filmSteps.ts';
import { type CoverDesign, lyingDesign, madeDesign } from '../fold/coverDesign.ts';
import type { Settle } from '../fold/elastic/settledCover.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { bookParts } from './bookParts.ts';
import { coverParts } from './coverParts.ts';
import { fitMarks } from './fitMarks.ts';
import { fittingParts } from './fittings/fittingParts.ts';
import { foldedSeam } from './foldedSeam.ts';
import type { FoldedCover } from './meshData.ts';
import { openingRange } from './openingRange.ts';
import type { Pose } from './pose.ts';
import { seeThrough } from './seeThrough.ts';
import { staging } from './staging.ts';
import { standingAt, standingFlat } from './standing.ts';

/**
 * Folds the cut pieces round the book: solids, seam holes and fit marks in one position.
 *
 * Every surface comes from the section curves of the model: the taut path for the outside, the reverse curves of the seats
 * for the pockets and for head and tail. Lengths on the neutral line are those of the flat pattern in every position.
 * @param asCut a job worked out
 * @param pose a place in the sequence of making, or an opening in radians; both are brought into their range. An opening
 *   below the smallest that the cover allows shows that one
 * @param point thin end, middle or thick end of the leathers
 * @param settle gives the inner face of the settled outside at an opening, or null where the strip found none; without it
 *   the cover is drawn taut
 * @returns the scene, mm; where the boards do not go in, the book hovers over the open cover for every opening
 */
export function foldedCover(
  asCut: CoverDesign,
  pose: Pose,
  point: RangePoint = 'nominal',
  settle?: Settle,
): FoldedCover {
  const made = madeDesign(asCut);
  const range = openingRange(made, point);
  const stage = staging(pose, range !== null);
  const opening =
    range === null
      ? Math.PI
      : pose.kind === 'opening'
        ? Math.max(range.least, Math.min(range.most, pose.angle))
        : range.most + (range.least - range.most) * stage.folded;
  const settled = stage.wrapped === 1 ? (settle?.(opening) ?? undefined) : undefined;
  const design = settled ? lyingDesign(made, point, opening) : made;
  const standing = range === null ? standingFlat(design, point) : standingAt(design, point, opening, settled);
  const cover = coverParts(design, point, stage, standing);
  const leaves = range && {
    leafSwing: pose.kind === 'opening' ? (opening - range.forced) / 2 : 0,
    forced: range.forced,
  };
  const book = stage.bookShown > 0 ? bookParts(design, point, stage, standing, leaves) : null;
  const benchTurn = stage.wrapped * (standing.direction - standing.benchTilt) + (1 - stage.wrapped) * (Math.PI / 2);
  const movements = pose.kind === 'opening' ? ALL_DONE : movementsAt(filmSteps(design, point), pose.at);
  const place = { grid: cover.grid, opening, least: range?.least ?? null, benchTurn, book: book?.parts ?? [] };
  const fittings = fittingParts(design, point, place, movements);
  return {
    parts: [...cover.parts, ...(book?.parts ?? []), ...fittings.parts],
    seam: foldedSeam(design, point, cover.grid),
    strapSeam: fittings.strapSeam,
    marks:
      book === null
        ? []
        : fitMarks(design, point, {
            grid: cover.grid,
            standing,
            stage,
            range,
            lift: book.lift,
            isSettled: settled !== undefined,
            gaps: design.fitDoubt.gaps,
          }),
    seeThrough:
      range !== null && stage.letDown === 1 ? seeThrough(design, point, standing, cover.grid, cover.fields) : [],
    benchTurn,
    opening,
    film: { movements, jam: null },
    bookPresence: stage.bookShown,
  };
}
