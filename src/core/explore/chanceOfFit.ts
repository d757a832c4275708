import { needsAt } from '../allowance/needs.ts';
import type { CoverDesign } from '../fold/coverDesign.ts';
import { coverFit } from '../fold/coverFit.ts';
import type { Job } from '../job/jobSchema.ts';
import { normalDraw, randomDraws } from '../math/randomDraws.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { mm } from '../units/mm.ts';
import { type Measure, measuresOf } from './measure.ts';

/**
 * Distribution of an error: `even`, uniform within the stated error; `normal`, with the stated error as two standard
 * deviations, so that 1 measure in 22 is off by more.
 */
export type ErrorSpread = 'even' | 'normal';

export interface ChanceOptions {
  readonly spread: ErrorSpread;
  /** Books tried, 1 or more. */
  readonly draws?: number;
  readonly seed?: number;
  /** Measures that may be off; those of the job unless given. */
  readonly measures?: readonly Measure[];
}

/** How many of the books tried the cover fits. */
export interface ChanceOfFit {
  readonly draws: number;
  readonly closes: number;
  readonly liesOpen: number;
  readonly head: number;
  readonly tail: number;
  /** All of the above at once. */
  readonly all: number;
}

/**
 * Chance that the cover as cut fits, by random trials: each measure has an independent error, each leather a uniform
 * thickness in its weight range (the same for pocket and outside of one leather), and the pieces stay as they are.
 *
 * The count in n trials of chance p has a standard deviation of sqrt(p (1 - p) n).
 * @returns counts of gaps that are not negative; the same for the same job, options and seed
 */
export function chanceOfFit(
  { job, pieces }: CoverDesign,
  { spread, draws = 2000, seed = 1, measures = measuresOf(job) }: ChanceOptions,
): ChanceOfFit {
  const random = randomDraws(seed);
  const strayed = (error: number): number =>
    error * (spread === 'even' ? 2 * random() - 1 : normalDraw(random) / STANDARD_DEVIATIONS);
  const count = { draws, closes: 0, liesOpen: 0, head: 0, tail: 0, all: 0 };
  for (let i = 0; i < draws; i++) {
    const book = measures.reduce((b, { put, value, error }) => put(b, value + strayed(error)), job.book);
    const other = { ...job, book, leather: anyLeather(job.leather, random) };
    const fit = coverFit(other, pieces, needsAt(other, 'thick'));
    const fits = {
      closes: fit.closes,
      liesOpen: isRoom(fit.flatSlack),
      head: isRoom(fit.head),
      tail: isRoom(fit.tail),
    };
    for (const edge of EDGES_OF_FIT) if (fits[edge]) count[edge]++;
    if (EDGES_OF_FIT.every((edge) => fits[edge])) count.all++;
  }
  return count;
}

const EDGES_OF_FIT = ['closes', 'liesOpen', 'head', 'tail'] as const;

/** Standard deviations in the stated error. An assumption. */
const STANDARD_DEVIATIONS = 2;

const isRoom = (gap: number): boolean => gap >= -TOLERANCE.length;

type Leathers = Job['leather'];

function anyLeather({ outside, pocket, lining }: Leathers, random: () => number): Leathers {
  const cut = (piece: Leathers['outside'], share: number): Leathers['outside'] => {
    const thickness = mm(piece.min_mm + share * (piece.max_mm - piece.min_mm));
    return { ...piece, min_mm: thickness, max_mm: thickness };
  };
  const share = random();
  const isOneLeather = pocket.min_mm === outside.min_mm && pocket.max_mm === outside.max_mm;
  return {
    outside: cut(outside, share),
    pocket: cut(pocket, isOneLeather ? share : random()),
    lining: lining === null ? null : cut(lining, random()),
  };
}
