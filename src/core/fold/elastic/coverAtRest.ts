import type { Needs } from '../../allowance/needs.ts';
import type { Job } from '../../job/jobSchema.ts';
import type { RangePoint } from '../../leather/leatherModel.ts';
import type { StripSolver } from '../../strip/solveStrip.ts';
import type { StripStatus } from '../../strip/stripSolution.ts';
import type { CoverDesign } from '../coverDesign.ts';
import { type ReleasedLeather, type ReleasedOpening, type Rest, releasedOpening } from './releasedOpening.ts';
import { sectionInputAt } from './sectionInputAt.ts';

/** How a released cover comes to rest: in the leather as the job has it, and over all that is not known of it. */
export interface CoverAtRest extends Rest {
  /** Of the leather as the job has it; `least` and `most` each say for themselves whether they were found. */
  readonly status: StripStatus;
  readonly message: string;
  readonly least: Rest;
  readonly most: Rest;
  /** Moment on the closed book in the leather as the job has it, N mm, positive if it opens. */
  readonly closedMoment: number;
}

/** The three states of a cover: folded round the book for the first time, creased as the job says, pressed for a day. */
export interface RestStates {
  readonly newCover: CoverAtRest;
  readonly creased: CoverAtRest;
  readonly pressedDay: CoverAtRest;
}

/** Stiffness of untested leather about the job's own, as multiples: 20 to 200 MPa about 60. Assumption, no source. */
const STIFFNESS = { least: 1 / 3, most: 10 / 3 };

/** Crease set of untested leather about the job's own: 0.5 to 1 about 0.8. Assumption, no source. */
const SET = { less: 0.3, more: 0.2 };

/**
 * Share of what a crease has left to set that a day under weights sets. Leather gives way with the logarithm of time, most of
 * it in the first hours. Assumption, no source: a strip folded, loaded and let go tells (crease recovery, ISO 2313).
 */
const DAY_SETS = 0.5;

/** Density of boards, kg/m^3. From memory: millboard about 800. An assumption. */
const BOOK_DENSITY = 800;

/** Standard gravity, m/s^2 (ISO 80000-3, exact). */
const GRAVITY = 9.80665;

/** Turns mm^3 times kg/m^3 into kg. */
const KG_PER_MM3 = 1e-9;

/**
 * Finds where a released cover rests, new, creased and pressed for a day, each over stiffness, crease set and friction.
 *
 * Least: softest, best creased, with friction; most: stiffest, worst creased, without. At a crease set of 1 the leather is at
 * rest in the pressed shape, so that it stays shut.
 * @param pressed tangent angles that the crease was set to (pressedCrease)
 */
export function coverAtRest(
  design: CoverDesign,
  point: RangePoint,
  pressed: ArrayLike<number>,
  solver: StripSolver,
): RestStates {
  const { job, fits } = design;
  const needs = design.needs[point];
  const closed = fits[point].staysOpen ?? Math.PI;
  const { book, leathers } = needs;
  // Leather on the book's side of a bend is longer than the bend by its neutral depth, and so slides; a joint slides too.
  const depth = (leathers.lining?.foldThickness ?? 0) + leathers.outside.neutralDepth;
  const release = (set: number, asked: readonly ReleasedLeather[]): ReleasedOpening =>
    releasedOpening(
      {
        sectionAt: (opening) => sectionInputAt(design, point, closed + opening, { angles: pressed, set }),
        closingMoment: (opening) => boardMoment(job, needs, closed + opening),
        most: Math.max(0.05, (fits[point].opensTo ?? Math.PI) - closed),
        lever: book.width,
        slip: depth / 2 + book.jointDip / Math.PI,
      },
      asked,
      solver,
    );
  const { creaseSet } = job.leather.outside;
  const { friction } = job.leather.lining ?? job.leather.outside;
  const own = { stiffness: 1, friction: 0 };
  const soft = { stiffness: STIFFNESS.least, friction };
  const stiff = { stiffness: STIFFNESS.most, friction: 0 };

  const state = (aged: (set: number) => number): CoverAtRest => {
    const best = aged(Math.min(1, creaseSet + SET.more));
    const worst = aged(Math.max(0, creaseSet - SET.less));
    return together(release(aged(creaseSet), [own]), best < 1 ? release(best, [soft]) : SHUT, release(worst, [stiff]));
  };
  const fresh = release(0, [own, soft, stiff]);
  const only = (i: number): ReleasedOpening => ({ ...fresh, rests: fresh.rests.slice(i, i + 1) });
  return {
    newCover: together(only(0), only(1), only(2)),
    creased: state((set) => set),
    pressedDay: state((set) => set + DAY_SETS * (1 - set)),
  };
}

const REST: Rest = { opening: 0, force: 0, isFound: true };

/** A cover in leather that is at rest shut. */
const SHUT: ReleasedOpening = { status: 'converged', message: '', rests: [REST], closedMoment: 0, solves: 0 };

/** One state of three answers. Of a range whose end was not found it is known that it begins at 0 up and ends at `own` or beyond. */
function together(own: ReleasedOpening, least: ReleasedOpening, most: ReleasedOpening): CoverAtRest {
  const rest = own.rests[0] ?? { ...REST, isFound: false };
  return {
    ...rest,
    status: rest.isFound ? 'converged' : own.status,
    message: rest.isFound ? '' : own.message,
    closedMoment: own.closedMoment,
    least: least.rests[0] ?? { ...REST, isFound: false },
    most: most.rests[0] ?? { ...rest, isFound: false },
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
