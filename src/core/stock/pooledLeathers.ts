import type { Gaussian } from '../doubt/condition.ts';
import { inverse } from '../math/inverse.ts';
import { bilinear, inner } from '../math/linear.ts';
import type { LeatherReading } from './leatherReadings.ts';
import { LEATHER_COUNT, PRIOR } from './leatherUnknowns.ts';

type Matrix = readonly (readonly number[])[];

/** Readings of one leather, and its kind. Leathers of one kind teach each other, and all of them the hand. */
export interface ReadLeather {
  readonly kind: string;
  readonly readings: readonly LeatherReading[];
}

/** What all readings together say, as what leather and hand have more than is usual, in the order of `UNKNOWNS`. */
export interface Pooled<L extends ReadLeather> {
  readonly hand: Gaussian;
  /** One of the leathers that were pooled; one of which nothing is read by its kind, or else by what is usual. */
  of(leather: L): Gaussian;
  /** Readings that contradict all the others, which nothing here is taken from. */
  readonly refused: ReadonlyMap<L, readonly Refused[]>;
}

/** A reading, and how far it lies from what all else says, in standard deviations of the difference. */
interface Refused {
  readonly reading: LeatherReading;
  readonly deviation: number;
}

/** Standard deviations from what all else says, beyond which a reading is refused: 1 in 370 good ones is. */
const BEYOND_CHANCE = 3;

/** Of the largest deviation of all, what the largest of a leather must have to be refused in the same round. */
const SAME_ROUND = 0.7;

const MOST_ROUNDS = 200;

/** Readings as far off as each other to this share are refused together, in whatever order they come. */
const ALIKE = 1e-9;

const ALL = LEATHER_COUNT + 2;
const range = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);
const LEATHER = range(0, LEATHER_COUNT);
const HAND = range(LEATHER_COUNT, ALL);
const EVERY = range(0, ALL);

/** What readings say, as information: precision J and J times the mean. It adds up in any order. */
interface Information {
  readonly precision: number[][];
  readonly weighted: number[];
}

const nothing = (size: number): Information => ({
  precision: range(0, size).map(() => new Array<number>(size).fill(0)),
  weighted: new Array<number>(size).fill(0),
});

function add(sum: Information, { precision, weighted }: Information): void {
  weighted.forEach((one, i) => {
    sum.weighted[i]! += one;
    const row = sum.precision[i]!;
    const other = precision[i]!;
    for (let k = 0; k < row.length; k++) row[k]! += other[k]!;
  });
}

/** Covariances of what a kind has more than is usual, and a leather more than its kind; standard uncertainties of the hand. */
interface Prior {
  readonly kind: Matrix;
  readonly own: Matrix;
  readonly hand: readonly number[];
}

const plus = (matrix: Matrix, other: Matrix): number[][] =>
  matrix.map((row, i) => row.map((one, k) => one + other[i]![k]!));

/** One leather with what is its own eliminated. */
interface Eliminated {
  /** Covariance of its own part once kind and hand are known; its mean is then `shift` - `gain` (kind, hand). */
  readonly covariance: Matrix;
  readonly shift: readonly number[];
  readonly gain: Matrix;
  /** What its readings say of kind and hand. */
  readonly told: Information;
}

/**
 * Eliminates a leather's own part d from readings y = H (m + d) + A h + e with d ~ N(0, D), m of the kind, h the hand: with G = [H A] and
 * R the variances of e, M = G' R^-1 G and b = G' R^-1 y, P = (D^-1 + M_dd)^-1, what is left of m and h is
 * J = M - M_.d P M_d. and j = b - M_.d P b_d (Schur complement); d is then P b_d - P M_d. (m, h) with covariance P.
 */
function eliminated(readings: readonly LeatherReading[], ownPrecision: Matrix): Eliminated {
  const told = nothing(ALL);
  for (const { slopes, value, u } of readings) {
    const weight = 1 / (u * u);
    for (const i of EVERY) {
      const slope = slopes[i]! * weight;
      if (slope === 0) continue;
      told.weighted[i]! += slope * value;
      const row = told.precision[i]!;
      for (const k of EVERY) row[k]! += slope * slopes[k]!;
    }
  }
  const covariance = inverse(plus(ownPrecision, told.precision));
  const shift = covariance.map((row) => inner(row, told.weighted));
  const gain = covariance.map((row) =>
    EVERY.map((k) => LEATHER.reduce((sum, i) => sum + row[i]! * told.precision[i]![k]!, 0)),
  );
  const before = told.precision.map((row) => [...row]);
  for (const i of EVERY) {
    for (const d of LEATHER) {
      const one = before[d]![i]!;
      if (one === 0) continue;
      told.weighted[i]! -= one * shift[d]!;
      for (const k of EVERY) told.precision[i]![k]! -= one * gain[d]![k]!;
    }
  }
  return { covariance, shift, gain, told };
}

/** A kind with its own part eliminated: m is `mean` - `slope` h with covariance `covariance`. */
interface Kind {
  readonly covariance: Matrix;
  readonly mean: readonly number[];
  readonly slope: Matrix;
}

/** What the leathers of one kind say, eliminated down to the hand. */
function kindOf(sum: Information, kindPrecision: Matrix): { readonly kind: Kind; readonly told: Information } {
  const covariance = inverse(plus(kindPrecision, sum.precision));
  const mean = covariance.map((row) => inner(row, sum.weighted));
  const slope = covariance.map((row) =>
    HAND.map((h) => LEATHER.reduce((all, i) => all + row[i]! * sum.precision[i]![h]!, 0)),
  );
  const told = {
    precision: HAND.map((a) =>
      HAND.map(
        (b, k) => sum.precision[a]![b]! - LEATHER.reduce((all, i) => all + sum.precision[a]![i]! * slope[i]![k]!, 0),
      ),
    ),
    weighted: HAND.map((a) => sum.weighted[a]! - LEATHER.reduce((all, i) => all + sum.precision[a]![i]! * mean[i]!, 0)),
  };
  return { kind: { covariance, mean, slope }, told };
}

/** Kind and hand together, in the order of `UNKNOWNS`. */
function withHand({ covariance, mean, slope }: Kind, hand: Gaussian): Gaussian {
  const joint = EVERY.map(() => new Array<number>(ALL).fill(0));
  const across = slope.map((row) =>
    HAND.map((_, k) => -HAND.reduce((sum, __, j) => sum + row[j]! * hand.covariance[j]![k]!, 0)),
  );
  for (const i of LEATHER) {
    for (const k of LEATHER) joint[i]![k] = covariance[i]![k]! - inner(across[i]!, slope[k]!);
    HAND.forEach((h, k) => {
      joint[i]![h] = across[i]![k]!;
      joint[h]![i] = across[i]![k]!;
    });
  }
  HAND.forEach((a, i) => {
    HAND.forEach((b, k) => {
      joint[a]![b] = hand.covariance[i]![k]!;
    });
  });
  return { mean: [...mean.map((one, i) => one - inner(slope[i]!, hand.mean)), ...hand.mean], covariance: joint };
}

/** A leather and the hand, from kind and hand: x = m + d. `own` is null for one of which nothing is read. */
function leatherOf(own: Eliminated | null, both: Gaussian, ownPrior: Matrix): Gaussian {
  // x = turned (m, h) + shift + rest, and the hand below it.
  const turned = EVERY.map((i) =>
    EVERY.map((k) => (i === k ? 1 : 0) - (i < LEATHER_COUNT ? (own === null ? 0 : own.gain[i]![k]!) : 0)),
  );
  const rest = own?.covariance ?? ownPrior;
  const through = turned.map((row) => both.covariance.map((line) => inner(row, line)));
  return {
    mean: turned.map((row, i) => inner(row, both.mean) + (own?.shift[i] ?? 0)),
    covariance: through.map((line, i) =>
      turned.map((row, k) => inner(line, row) + (i < LEATHER_COUNT && k < LEATHER_COUNT ? rest[i]![k]! : 0)),
    ),
  };
}

/** Mean and variance of a sum of the unknowns of a leather and the hand. */
interface Told {
  readonly mean: number;
  readonly variance: number;
}

/** All leathers solved at once. */
class Solved<L extends ReadLeather> {
  readonly hand: Gaussian;
  private readonly kinds = new Map<string, Kind>();

  constructor(
    private readonly parts: ReadonlyMap<L, Eliminated>,
    private readonly prior: Prior,
  ) {
    const kindPrecision = inverse(prior.kind);
    const sums = new Map<string, Information>();
    for (const [{ kind }, { told }] of parts) {
      const sum = sums.get(kind) ?? nothing(ALL);
      add(sum, told);
      sums.set(kind, sum);
    }
    const hand = nothing(HAND.length);
    prior.hand.forEach((u, i) => {
      hand.precision[i]![i]! += 1 / (u * u);
    });
    for (const [name, sum] of sums) {
      const { kind, told } = kindOf(sum, kindPrecision);
      this.kinds.set(name, kind);
      add(hand, told);
    }
    const covariance = inverse(hand.precision);
    this.hand = { mean: covariance.map((row) => inner(row, hand.weighted)), covariance };
  }

  private readonly both = new Map<string, Gaussian>();

  private kindAndHand(name: string): Gaussian {
    const known = this.both.get(name) ?? withHand(this.kinds.get(name) ?? this.unreadKind(), this.hand);
    this.both.set(name, known);
    return known;
  }

  private unreadKind(): Kind {
    const { kind: covariance } = this.prior;
    return { covariance, mean: LEATHER.map(() => 0), slope: LEATHER.map(() => HAND.map(() => 0)) };
  }

  /** What a reading of a leather should be; as `of`, without all that the reading does not hang on. */
  told(leather: L, { slopes }: LeatherReading): Told {
    const { mean, covariance } = this.kindAndHand(leather.kind);
    const own = this.parts.get(leather)!;
    const through = EVERY.map((k) =>
      LEATHER.reduce((sum, d) => sum - (slopes[d] === 0 ? 0 : slopes[d]! * own.gain[d]![k]!), slopes[k]!),
    );
    return {
      mean: inner(through, mean) + inner(own.shift, slopes),
      variance:
        bilinear(through, covariance, through) + bilinear(slopes.slice(0, LEATHER_COUNT), own.covariance, slopes),
    };
  }

  of(leather: L): Gaussian {
    return leatherOf(this.parts.get(leather) ?? null, this.kindAndHand(leather.kind), this.prior.own);
  }
}

/**
 * How far a reading lies from what all else says, over the standard deviation of that. With residual r and h = a' C a from a solution that has the
 * reading in it: r / sqrt(u^2 - h), its deletion residual; from one that has not: r / sqrt(u^2 + h).
 * @param told mean a' x and variance h of the reading's sum by the solution
 */
function deviationOf({ value, u }: LeatherReading, told: Told, isIn: boolean): number {
  const variance = isIn ? u * u - told.variance : u * u + told.variance;
  // Nothing but rounding is left where the reading alone decides its figure.
  return variance > 1e-12 * u * u ? (value - told.mean) / Math.sqrt(variance) : 0;
}

/**
 * Pools leathers: a normal hierarchy, leather ~ its kind ~ what is usual, with one hand for all (partial pooling; Lindley and Smith 1972,
 * J. R. Stat. Soc. B 34, 1), solved exactly by eliminating leather by leather, then kind by kind, down to the hand. So the order of
 * readings does not matter, and one taken out leaves what there would be without it.
 *
 * One gross blunder must not mislead: while any reading lies further than `BEYOND_CHANCE` from what all else says, the furthest one of each
 * leather is refused, the worst leathers first; at the end those that then agree are taken back.
 */
export function pooledLeathers<L extends ReadLeather>(leathers: readonly L[], prior: Prior = PRIOR): Pooled<L> {
  const ownPrecision = inverse(prior.own);
  const read = leathers.filter(({ readings }) => readings.length > 0);
  const kept = new Map(read.map((leather) => [leather, new Set(leather.readings)]));
  const parts = new Map(read.map((leather) => [leather, eliminated(leather.readings, ownPrecision)]));
  const change = (leather: L): void => {
    parts.set(
      leather,
      eliminated(
        leather.readings.filter((reading) => kept.get(leather)!.has(reading)),
        ownPrecision,
      ),
    );
  };
  let solved = new Solved(parts, prior);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const worst = read.map((leather) => {
      const far = [...kept.get(leather)!].map((reading) => ({
        reading,
        far: Math.abs(deviationOf(reading, solved.told(leather, reading), true)),
      }));
      return { leather, far, most: Math.max(0, ...far.map((each) => each.far)) };
    });
    const most = Math.max(0, ...worst.map((each) => each.most));
    if (most <= BEYOND_CHANCE) break;
    const least = Math.max(BEYOND_CHANCE, SAME_ROUND * most);
    for (const { leather, far, most: here } of worst) {
      if (here <= least && here < most) continue;
      for (const each of far) if (each.far >= here * (1 - ALIKE)) kept.get(leather)!.delete(each.reading);
      change(leather);
    }
    solved = new Solved(parts, prior);
  }
  const outside = (): Map<L, readonly Refused[]> =>
    new Map(
      read.flatMap((leather) => {
        const refused = leather.readings
          .filter((reading) => !kept.get(leather)!.has(reading))
          .map((reading) => ({ reading, deviation: deviationOf(reading, solved.told(leather, reading), false) }));
        return refused.length > 0 ? [[leather, refused] as const] : [];
      }),
    );
  let refused = outside();
  const agree = [...refused].flatMap(([leather, list]) =>
    list.filter(({ deviation }) => Math.abs(deviation) <= BEYOND_CHANCE).map(({ reading }) => ({ leather, reading })),
  );
  if (agree.length > 0) {
    for (const { leather, reading } of agree) kept.get(leather)!.add(reading);
    for (const leather of new Set(agree.map((each) => each.leather))) change(leather);
    solved = new Solved(parts, prior);
    refused = outside();
  }
  return { hand: solved.hand, of: (leather) => solved.of(leather), refused };
}
