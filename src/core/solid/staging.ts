import type { FilmJam, Movements } from '../film/filmStep.ts';
import { ALL_DONE, filmSteps, jamIn, movementsAt } from '../film/filmSteps.ts';
import { loadingAt } from '../film/loading.ts';
import { type CoverDesign, lyingDesign } from '../fold/coverDesign.ts';
import type { Settle } from '../fold/elastic/settledCover.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { ResultOrigin } from '../words/resultOrigin.ts';
import { loadingStanding, type PocketStand } from './loadingStanding.ts';
import { type OpeningRange, openingRange } from './openingRange.ts';
import type { Pose } from './pose.ts';
import { type Sides, type Standing, standingAt } from './standing.ts';

/** All that a pose says of cover and book. */
export interface Staging {
  readonly movements: Movements;
  /** What has stopped the making here. */
  readonly jam: FilmJam | null;
  /** Null where the book does not go in. */
  readonly range: OpeningRange | null;
  readonly standing: Standing;
  readonly pockets: Sides<PocketStand>;
  /** How far the book has come into view, 0 to 1. */
  readonly bookShown: number;
  /** Whether both boards are in their pockets, home. */
  readonly isLoaded: boolean;
  /** Whether the leather lies as the elastic strip found it. */
  readonly isSettled: boolean;
  readonly origin: ResultOrigin;
}

/** Part of closing in which the bow behind the spine forms, where boards sit at the spine. Free choice. */
const BOWED = 0.2;

/**
 * Works a pose out. A place on the film beyond a jam is that of the jam; an opening is brought into the range of the cover, and
 * where the book does not go in every opening shows the place where the film stops.
 */
export function staging(design: CoverDesign, point: RangePoint, pose: Pose, settle?: Settle): Staging {
  const range = openingRange(design, point);
  const steps = pose.kind === 'sequence' || range === null ? filmSteps(design, point) : [];
  const stop = jamIn(steps);
  const asked = pose.kind === 'sequence' ? pose.at : 1;
  const at = Math.min(asked, stop?.at ?? 1);
  const movements = steps.length > 0 ? movementsAt(steps, at) : ALL_DONE;
  const common = { movements, jam: stop !== null && asked >= stop.at ? stop : null, range };
  if (range === null || movements.secondIn < 1)
    return {
      ...common,
      ...loadingStanding(design, point, range, movements),
      bookShown: loadingAt(movements).arrived,
      isLoaded: false,
      isSettled: false,
      origin: 'quick model',
    };
  const opening = pose.kind === 'opening' ? pose.angle : openingOnFilm(range, movements, pose.rest?.opening);
  const within = Math.max(range.least, Math.min(range.most, opening));
  const settled = settle?.(within) ?? undefined;
  const bow = Math.min(1, movements.closed / BOWED);
  const { board } = design.needs[point].book;
  const home: PocketStand = { rise: board, lead: 0 };
  return {
    ...common,
    standing: standingAt(settled ? lyingDesign(design, point, within) : design, point, within, settled, bow),
    pockets: { front: home, back: home },
    bookShown: 1,
    isLoaded: true,
    isSettled: settled !== undefined,
    origin: settled !== undefined ? 'springy model' : settle !== undefined ? 'not known' : 'quick model',
  };
}

/** From the widest opening to closed, and from there to where the cover comes to rest, radians. */
function openingOnFilm({ most, least }: OpeningRange, { closed, rested }: Movements, rest = least): number {
  const closing = most * (1 - closed);
  return closed < 1 ? closing : least + (Math.max(least, rest) - least) * rested;
}
