import type { RangePoint } from '../../leather/leatherModel.ts';
import { createStripSolver, type StripSolver } from '../../strip/solveStrip.ts';
import { stripSettings } from '../../strip/stripSettings.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { type StretchTake, stretchTake } from '../stretch.ts';
import { coverAtRest, type RestStates } from './coverAtRest.ts';
import { pressedCrease } from './pressedCrease.ts';
import { createSeatSolver, FIRM_PULL, type SeatEdge, type SeatStrip, seatStrip } from './seatStrip.ts';
import { sectionInputAt } from './sectionInputAt.ts';
import { type StripSection, solveSection } from './solveSection.ts';
import { type SpareAsItLies, spareAsItLies } from './spareAsItLies.ts';

/** What the elastic strip alone says about a cover in leather of one thickness. */
export interface ElasticFit {
  /** The leather round the closed book (or the least opening that the wrap allows), creased as the job says. */
  readonly closed: StripSection;
  /** Where a released cover comes to rest. */
  readonly rest: RestStates;
  /** Seats at the seams, creased as the job says and pressed by hand; the fore-edge's is null where the end is turned. */
  readonly seats: { readonly foreEdge: SeatStrip | null; readonly headTail: SeatStrip | null };
  /** Where the spare wrap lies by itself. */
  readonly spare: SpareAsItLies;
  /** How much of a short wrap a pull takes up; null where nothing is left to pull. */
  readonly stretch: StretchTake | null;
}

/** Working memory for the strip, across the spine and at the seams; made once, used for one job after another. */
export interface ElasticSolvers {
  readonly section: StripSolver;
  /** Coarser, since its moments count and not its shape: they differ by a few percent, and stiffness is known to a third. */
  readonly spring: StripSolver;
  readonly seat: StripSolver;
}

export const createElasticSolvers = (): ElasticSolvers => ({
  section: createStripSolver(),
  spring: createStripSolver({ ...stripSettings, segments: 100, gap: 1e-5, residual: 1e-4 }),
  seat: createSeatSolver(),
});

/**
 * Solves the shape of the closed cover, the openings at which released boards come to rest, and the seats.
 *
 * The crease is set to the shape pressed round the closed book. A result that did not converge says so in its status, and
 * the closed form stands in for it.
 */
export function elasticFit(design: CoverDesign, point: RangePoint, solvers: ElasticSolvers): ElasticFit {
  const least = design.fits[point].staysOpen ?? Math.PI;
  const crease = { angles: pressedCrease(design, point, least), set: design.job.leather.outside.creaseSet };
  const pressed = { press: FIRM_PULL, creased: true };
  const seat = (edge: SeatEdge) => seatStrip(design.job, design.needs[point], edge, pressed, solvers.seat);
  const closed = solveSection(sectionInputAt(design, point, least, crease), solvers.section);
  return {
    closed,
    rest: coverAtRest(design, point, crease.angles, solvers.spring),
    seats: { foreEdge: seat('foreEdge'), headTail: seat('headTail') },
    spare: spareAsItLies(design, point, closed, crease, solvers.spring),
    stretch: stretchTake(design, point),
  };
}
