import type { PathPiece } from '../book/tautPath.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { seatToSeat } from '../pattern/pieces.ts';
import { type Mm, mm } from '../units/mm.ts';
import type { CoverDesign } from './coverDesign.ts';
import { frictionOnBook } from './spareWrap.ts';

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
 * Leather in series, pulled at both fore-edges by F: s = F/(E H) sum (l g / t) over the stretches l of the wrap, skived folds with
 * their own thickness t_f; strain s/L on the whole, F / (E H t_f) at the first fold. Round each fold friction holds back part of
 * the pull, g = exp(-mu theta) where the wrap has turned by theta from the nearer fore-edge (capstan equation,
 * Euler 1762, Eytelwein 1808). That holds for leather pulled taut and for no other. Bending is left to the strip.
 *
 * E, and with it every force here, is the job's assumption; strain does not depend on it.
 *
 * @param design H is the cut height of the outside, L its length between the seats, L_f the neutral length of the two folds
 * @param point end or middle of the leather's range, which gives t
 * @returns null where the outside is so narrow that nothing is left between the seats
 */
export function stretchTake(design: CoverDesign, point: RangePoint): StretchTake | null {
  const { job, made: pieces } = design;
  const needs = design.needs[point];
  const { thickness, foldThickness, neutralDepth } = needs.leathers.outside;
  const length = seatToSeat(pieces, needs);
  if (length <= 0) return null;
  const short = Math.max(0, -design.fits[point].closedSlack);

  const share = pullShares(needs.closed.path.pieces, neutralDepth, frictionOnBook(job));
  const skived = Math.min(share.foldLength, length);
  const perNewton =
    (((length - skived) * share.body) / thickness + (skived * share.folds) / foldThickness) /
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

/**
 * Tension that is left of a pull where taut leather has slid round an angle: exp(-mu theta), the capstan equation.
 * @param friction mu, 0 up
 * @param angle theta, radians, 0 up
 */
export const capstan = (friction: number, angle: number): number => Math.exp(-friction * angle);

/**
 * Mean share of a pull at both fore-edges that reaches the two folds, and that reaches the rest, by length; and the neutral
 * length of the folds.
 */
function pullShares(pieces: readonly PathPiece[], depth: number, friction: number) {
  const turning = pieces.reduce((sum, piece) => sum + (piece.kind === 'bend' ? piece.angle : 0), 0);
  const sums = { body: { length: 0, reached: 0 }, folds: { length: 0, reached: 0 } };
  let turned = 0;
  for (const piece of pieces) {
    const angle = piece.kind === 'bend' ? piece.angle : 0;
    const length = piece.kind === 'bend' ? angle * (piece.radius + depth) : piece.length;
    const sum = piece.kind === 'bend' && piece.zone !== 'spine' ? sums.folds : sums.body;
    sum.length += length;
    sum.reached += length * meanShare(friction, turned, turned + angle, turning);
    turned += angle;
  }
  const mean = ({ length, reached }: typeof sums.body): number => (length > 0 ? reached / length : 1);
  return { body: mean(sums.body), folds: mean(sums.folds), foldLength: sums.folds.length };
}

/** Mean of the capstan's share between two angles of a turning pulled at both ends. */
function meanShare(friction: number, from: number, to: number, turning: number): number {
  const middle = turning / 2;
  if (from < middle && to > middle) {
    const before = (middle - from) / (to - from);
    return (
      before * meanShare(friction, from, middle, turning) + (1 - before) * meanShare(friction, middle, to, turning)
    );
  }
  const [near, far] = to <= middle ? [from, to] : [turning - to, turning - from];
  const fall = friction * (far - near);
  return fall > 0 ? (capstan(friction, near) * (1 - capstan(friction, far - near))) / fall : capstan(friction, near);
}
