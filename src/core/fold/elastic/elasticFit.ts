import type { Needs } from '../../allowance/needs.ts';
import { bookOutline, type Opening, symmetricOpening } from '../../book/bookOutline.ts';
import type { Job } from '../../job/jobSchema.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import { distance } from '../../math/vec2.ts';
import { seatToSeat } from '../../pattern/pieces.ts';
import { createStripSolver, type StripSolver } from '../../strip/solveStrip.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { type StretchTake, stretchTake } from '../stretch.ts';
import { type ReleasedOpening, releasedOpening } from './releasedOpening.ts';
import { createSeatSolver, FIRM_PULL, type SeatEdge, type SeatStrip, seatStrip } from './seatStrip.ts';
import type { SectionInput } from './sectionInput.ts';
import { type StripSection, solveSection } from './solveSection.ts';

/** What the elastic strip alone says about a cover in leather of one thickness. */
export interface ElasticFit {
  /** The leather round the closed book (or the least opening that the wrap allows), creased as the job says. */
  readonly closed: StripSection;
  /** Where a new cover comes to rest, and one creased as the job says, boards free. */
  readonly newCover: ReleasedOpening;
  readonly creased: ReleasedOpening;
  /** Seats at the seams, creased as the job says and pressed by hand; the fore-edge's is null where the end is turned. */
  readonly seats: { readonly foreEdge: SeatStrip | null; readonly headTail: SeatStrip | null };
  /** How much of a short wrap a pull takes up; null where nothing is left to pull. */
  readonly stretch: StretchTake | null;
}

/** Working memory for the strip, across the spine and at the seams; made once, used for one job after another. */
export interface ElasticSolvers {
  readonly section: StripSolver;
  readonly seat: StripSolver;
}

export const createElasticSolvers = (): ElasticSolvers => ({ section: createStripSolver(), seat: createSeatSolver() });

/** Standard gravity, m/s^2 (ISO 80000-3, exact). */
const GRAVITY = 9.80665;

/** Density of boards, kg/m^3. From memory: millboard about 800. An assumption. */
const BOOK_DENSITY = 800;

/** Turns mm^3 times kg/m^3 into kg. */
const KG_PER_MM3 = 1e-9;

/** Least leather between the held places, as a share of the book's thickness: the strip needs room to bend in. */
const FREE_SHARE = 0.25;

/**
 * Sets a cover up for the strip at one opening.
 *
 * The strip is held flat to each board as far as the pocket covers it, and slides there up to its seat; seating other
 * than centred poses the fore-edge gaps instead.
 * @param opening swing of both boards together, radians, or of each board on its own
 * @param crease shape that the folds were set to, and how much of it stayed; none for new leather
 */
export function sectionInputAt(
  design: CoverDesign,
  point: RangePoint,
  opening: number | Opening,
  crease?: SectionInput['crease'],
): SectionInput {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const { book, leathers } = needs;
  const outline = bookOutline(book, typeof opening === 'number' ? symmetricOpening(opening) : opening);
  const length = seatToSeat(pieces, needs);
  const points = outline.points;
  const boards = [distance(points[0]!, points[1]!), distance(points.at(-1)!, points.at(-2)!)];
  const held = heldLength(needs, pieces.pocketDepth, Math.min(...boards));
  return {
    outline: points.flat(),
    offset: outline.radius + (leathers.lining?.foldThickness ?? 0),
    thickness: leathers.outside.foldThickness,
    neutral: leathers.outside.neutral,
    length,
    held: { front: held, back: held },
    crease,
    scale: book.thickness,
    height: pieces.outside.height,
    modulus: job.leather.outside.modulus_MPa,
  };
}

/** How far from its fore-edge each board's leather is held flat: to the pocket mouth, with room left to bend at the spine. `board` is its straight part. */
function heldLength({ book, foreEdge }: Needs, pocketDepth: number, board: number): number {
  const longest = board - Math.min(FREE_SHARE * book.thickness, board / 2);
  return Math.max(board / 100, Math.min(pocketDepth - foreEdge.seat, longest));
}

/**
 * Solves the shape of the closed cover and the openings at which released boards come to rest.
 *
 * The crease is set to the new leather's closed shape, `creaseSet` of it stays. A result that did not converge says so in
 * its status, and the closed form stands in for it.
 */
export function elasticFit(design: CoverDesign, point: RangePoint, solvers: ElasticSolvers): ElasticFit {
  const solver = solvers.section;
  const fit = design.fits[point];
  const least = fit.staysOpen ?? Math.PI;
  const posed = solveSection(sectionInputAt(design, point, least), solver);
  const set = design.job.leather.outside.creaseSet;
  const crease = posed.status === 'converged' ? { angles: posed.angles, set } : undefined;
  const closed = crease && set > 0 ? solveSection(sectionInputAt(design, point, least, crease), solver) : posed;
  const release = (withCrease?: SectionInput['crease']): ReleasedOpening =>
    releasedOpening(
      {
        sectionAt: (opening) => sectionInputAt(design, point, least + opening, withCrease),
        closingMoment: (opening) => boardMoment(design.job, design.needs[point], least + opening),
        most: Math.max(0.05, (fit.opensTo ?? Math.PI) - least),
        lever: design.needs[point].book.width,
      },
      solver,
    );
  const pressed = { press: FIRM_PULL, creased: true };
  const seat = (edge: SeatEdge) => seatStrip(design.job, design.needs[point], edge, pressed, solvers.seat);
  return {
    closed,
    newCover: release(),
    creased: release(crease),
    seats: { foreEdge: seat('foreEdge'), headTail: seat('headTail') },
    stretch: stretchTake(design, point),
  };
}

/**
 * Moment that closes the book, N mm: the front board with its leather, lying over the back board and swinging on the
 * spine. m g (W / 2) cos(opening) up to upright; past it the weight opens the book; that is left out, so that it does not hide the spring.
 */
function boardMoment({ leather }: Job, { book, leathers }: Needs, opening: number): number {
  const face = book.width * book.height;
  const outside = leathers.outside.thickness * leather.outside.density_kg_m3;
  const pocket = (leathers.pocket.thickness * leather.pocket.density_kg_m3) / 2;
  const mass = face * (book.board * BOOK_DENSITY + outside + pocket) * KG_PER_MM3;
  return mass * GRAVITY * (book.width / 2) * Math.max(0, Math.cos(opening));
}
