import type { Job } from '../job/jobSchema.ts';
import { boxProbability } from '../math/boxProbability.ts';
import { bilinear } from '../math/linear.ts';
import { normalDistribution } from '../math/normal.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import type { CoverDoubt, Quantity } from './coverDoubt.ts';

/** An outside as it is cut, mm; the depth of turned ends is not in its width. */
export interface CutSize {
  readonly width: number;
  readonly height: number;
}

/** A length with its doubt to first order, mm. */
export interface Doubted {
  readonly mean: number;
  readonly u: number;
  /** d length / d input, in the order of `CoverDoubt.inputs`. */
  readonly slopes: readonly number[];
}

/** Spare room of a cut, mm: of the closed wrap, of the flat wrap, and of the height, head and tail together. */
export interface Spare {
  readonly closed: Doubted;
  readonly flat: Doubted;
  readonly height: Doubted;
}

/** A weighted sum of quantities, with its doubt. */
export function doubted(
  { means, slopes, covariance }: CoverDoubt,
  weights: Partial<Record<Quantity, number>>,
  constant = 0,
): Doubted {
  const terms = Object.entries(weights).map(([name, weight]) => ({
    weight,
    mean: means[name as Quantity],
    of: slopes[name as Quantity],
  }));
  const sum = slopes.wrap.map((_, i) => terms.reduce((all, { weight, of }) => all + weight * of[i]!, 0));
  return {
    mean: terms.reduce((all, { weight, mean }) => all + weight * mean, constant),
    u: uncertainty(sum, covariance),
    slopes: sum,
  };
}

/** Standard uncertainty of a length with these slopes. */
export const uncertainty = (slopes: readonly number[], covariance: CoverDoubt['covariance']): number =>
  Math.sqrt(Math.max(0, bilinear(slopes, covariance, slopes)));

/** Spare room that a cut leaves: its size once made, less what is needed. */
export function spareOf(doubt: CoverDoubt, cut: CutSize): Spare {
  // Size once made = cut (1 + change): linear in the change.
  const made = { widthChange: cut.width, widthAdds: 1 };
  return {
    closed: doubted(doubt, { ...made, closed: -1 }, cut.width),
    flat: doubted(doubt, { ...made, flat: -1 }, cut.width),
    height: doubted(doubt, { heightChange: cut.height, heightAdds: 1, height: -1 }, cut.height),
  };
}

/** Chance that a length is not negative. */
export const chanceOf = ({ mean, u }: Pick<Doubted, 'mean' | 'u'>): number =>
  u > 0 ? normalDistribution(mean / u) : mean >= -TOLERANCE.length ? 1 : 0;

/** Largest spare room at which no edge is looser than wished, mm: of the wrap, and of the height. */
export interface Loosest {
  readonly wrap: number;
  readonly height: number;
}

/** @param lean half of what the head's ease is more than the tail's, mm: head and tail share the height so */
export function loosestOf({ loosest }: Job, lean: number): Loosest {
  return {
    wrap: 2 * loosest.foreEdge_mm,
    height: 2 * Math.max(0, Math.min(loosest.head_mm - lean, loosest.tail_mm + lean)),
  };
}

/** Dimensions that a chance may be asked of. */
export type Dimension = 'width' | 'height';

/** Chances of a cut by first order, its spare room taken as jointly normal. */
export class CutChances {
  private readonly mean: readonly number[];
  private readonly joint: readonly (readonly number[])[];
  private readonly least: readonly number[];
  private readonly most: readonly number[];
  /** Once it was asked for. */
  private whole: number | undefined;

  constructor({ covariance }: Pick<CoverDoubt, 'covariance'>, { closed, flat, height }: Spare, loosest: Loosest) {
    const parts = [closed, flat, height];
    this.mean = parts.map((part) => part.mean);
    this.joint = parts.map((a) => parts.map((b) => bilinear(a.slopes, covariance, b.slopes)));
    // Rounding must not make a cover that just fits, without any doubt, one that does not.
    const noise = parts.map(({ u }) => (u > 0 ? 0 : TOLERANCE.length));
    this.least = noise.map((each) => -each);
    this.most = [loosest.wrap, Number.POSITIVE_INFINITY, loosest.height].map((limit, i) => limit + noise[i]!);
  }

  /** All conditions at once: large enough, and no edge looser than wished; of one dimension alone if it is named. */
  fits(of?: Dimension): number {
    if (of !== undefined) return this.within(this.least, this.most, of);
    this.whole ??= this.within(this.least, this.most);
    return this.whole;
  }

  /** Large enough at every edge, closed and flat. */
  goesOn(): number {
    return this.within(
      this.least,
      this.most.map(() => Number.POSITIVE_INFINITY),
    );
  }

  /** Looser than wished at some edge. */
  loose(): number {
    return (
      1 -
      this.within(
        this.least.map(() => Number.NEGATIVE_INFINITY),
        this.most,
      )
    );
  }

  private within(least: readonly number[], most: readonly number[], of?: Dimension): number {
    const counts = (i: number): boolean => of === undefined || (of === 'height') === (i === 2);
    return boxProbability(this.mean, this.joint, {
      low: least.map((bound, i) => (counts(i) ? bound : Number.NEGATIVE_INFINITY)),
      high: most.map((bound, i) => (counts(i) ? bound : Number.POSITIVE_INFINITY)),
    });
  }
}
