import type { RangePoint } from '../leather/leatherModel.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import type { CoverDesign } from './coverDesign.ts';

/**
 * How far leather may be asked to stretch. Assumptions, no source: a firm pull by hand, N, and a strain that leather gives
 * back when the pull ends.
 */
export const STRETCH_LIMITS = Object.freeze({ pull: 100, strain: 0.02 });

/** What a pull does to a wrap that is cut short. */
export interface StretchTake {
  /** Length that the closed wrap is short by, mm; 0 where it is long enough. */
  readonly short: Mm;
  /** Tension that stretches the outside by it, N over the whole height. */
  readonly pull: number;
  /** Mean strain from seat to seat, and strain where the leather is skived at the folds. */
  readonly strain: number;
  readonly foldStrain: number;
  /** The most that the limits let the pull take up, mm. */
  readonly most: Mm;
  /** Which of the limits decides that. */
  readonly limitedBy: 'pull' | 'strain';
  /** The shortfall is within it. */
  readonly takes: boolean;
}

/**
 * Finds the pull that stretches a short outside until the closed book fits.
 *
 * Leather in series: F = E H s / (L/t), with skived folds F = E H s / ((L - L_f)/t + L_f/t_f); strain s/L on the whole,
 * F / (E H t_f) at the folds. Friction is ignored, so all of the leather between the two seats stretches alike: where the
 * boards hold it back, less of it does, and the pull is larger. Bending is left to the strip.
 *
 * E, and with it every force here, is the job's assumption; strain does not depend on it.
 *
 * @param design H is the cut height of the outside, L its length between the seats, L_f the neutral length of the two folds
 * @param point end or middle of the leather's range, which gives t
 * @returns null where the outside is so narrow that nothing is left between the seats
 */
export function stretchTake(design: CoverDesign, point: RangePoint): StretchTake | null {
  const { job, pieces } = design;
  const needs = design.needs[point];
  const { thickness, foldThickness, neutralDepth } = needs.leathers.outside;
  const length = seatToSeat(pieces, needs);
  if (length <= 0) return null;
  const short = Math.max(0, -design.fits[point].closedSlack);

  const folds = needs.closed.path.pieces.reduce(
    (sum, piece) =>
      piece.kind === 'bend' && piece.zone !== 'spine' ? sum + piece.angle * (piece.radius + neutralDepth) : sum,
    0,
  );
  const skived = Math.min(folds, length);
  const perNewton =
    ((length - skived) / thickness + skived / foldThickness) /
    (job.leather.outside.modulus_MPa * pieces.outside.height);
  const stiff = job.leather.outside.modulus_MPa * pieces.outside.height * foldThickness;

  const byPull = STRETCH_LIMITS.pull * perNewton;
  const byStrain = STRETCH_LIMITS.strain * stiff * perNewton;
  const most = Math.min(byPull, byStrain);
  const pull = short / perNewton;
  return {
    short: mm(short),
    pull,
    strain: short / length,
    foldStrain: pull / stiff,
    most: mm(most),
    limitedBy: byPull <= byStrain ? 'pull' : 'strain',
    takes: short <= most,
  };
}
