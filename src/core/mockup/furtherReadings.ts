import { normalDensity } from '../math/normal.ts';
import { covarianceOf, type Observation, onceKnown, slopesAt } from './estimate.ts';
import type { Reading } from './readings.ts';
import type { Weighed } from './weigh.ts';

/** A reading that was not taken, and what it is expected to say. */
export interface FurtherReading {
  readonly name: Reading['name'];
  readonly path: Reading['path'];
  /** Expected information on which explanation is true and on the lengths asked for, in nats. */
  readonly information: number;
  /** Standard deviation that it is expected to leave in the first of these lengths, mm (root of the mean variance). */
  readonly leaves: number;
}

/** What one explanation expects of a reading: mean and variance, and that variance with the lengths known. */
interface Forecast {
  readonly chance: number;
  readonly mean: number;
  readonly variance: number;
  readonly varianceGiven: number;
  readonly length: { readonly mean: number; readonly variance: number; readonly covariance: number };
}

/**
 * Ranks further readings by how much each is expected to tell, most first.
 *
 * A reading y is forecast by a mixture of normal distributions, one an explanation H. Its information on H and on the lengths
 * L (wrap, height) is what it is expected to take from the entropy of both (Lindley 1956, Ann. Math. Stat. 27, 986):
 *
 *   I = h(y) - sum over H of chance(H) ln(2 pi e var(y | H, L)) / 2,   h(y) = -E[ln density(y)].
 *
 * @param lengths what is asked for, the first of which `leaves` is about
 */
export function furtherReadings(
  weighed: readonly Weighed[],
  readings: readonly Reading[],
  lengths: readonly [Observation['predict'], ...Observation['predict'][]],
): FurtherReading[] {
  const likely = weighed.filter(({ chance }) => chance > NEGLIGIBLE);
  const knowing = likely.map(({ prior, result: { mean, covariance } }) => {
    const slopesOf = slopesAt(prior, mean);
    const known = lengths.reduce((left, length) => onceKnown(left, slopesOf(length)), covariance);
    return { slopesOf, known, along: slopesOf(lengths[0]) };
  });
  const forecast = ({ predict, error }: Reading): Forecast[] =>
    likely.map(({ chance, result: { mean, covariance } }, i) => {
      const { slopesOf, known, along } = knowing[i]!;
      const slopes = slopesOf(predict);
      return {
        chance,
        mean: predict(mean),
        variance: covarianceOf(slopes, covariance, slopes) + error * error,
        varianceGiven: covarianceOf(slopes, known, slopes) + error * error,
        length: {
          mean: lengths[0](mean),
          variance: covarianceOf(along, covariance, along),
          covariance: covarianceOf(slopes, covariance, along),
        },
      };
    });
  return readings
    .map((reading) => ({ name: reading.name, path: reading.path, ...expectedOf(forecast(reading)) }))
    .sort((a, b) => b.information - a.information);
}

/** Chance below which an explanation changes no ranking. */
const NEGLIGIBLE = 1e-4;

/** Standard deviations to either side, and their step, of the sums over a normal distribution: good to 1e-12. */
const SUMMED = 7;
const STEP = 0.25;

function expectedOf(forecasts: readonly Forecast[]): Pick<FurtherReading, 'information' | 'leaves'> {
  let [entropy, variance] = [0, 0];
  for (const { chance, mean, variance: spread } of forecasts)
    for (let z = -SUMMED; z <= SUMMED; z += STEP) {
      const weight = chance * STEP * normalDensity(z);
      const { density, left } = afterReading(forecasts, mean + z * Math.sqrt(spread));
      entropy -= weight * Math.log(density);
      variance += weight * left;
    }
  const known = forecasts.reduce(
    (sum, { chance, varianceGiven }) => sum + (chance * Math.log(2 * Math.PI * Math.E * varianceGiven)) / 2,
    0,
  );
  return { information: entropy - known, leaves: Math.sqrt(variance) };
}

/** Density of a value of the reading, and the variance of the length once it is read. */
function afterReading(forecasts: readonly Forecast[], value: number): { density: number; left: number } {
  let [density, first, second] = [0, 0, 0];
  for (const { chance, mean, variance, length } of forecasts) {
    const off = value - mean;
    const weight = (chance * normalDensity(off / Math.sqrt(variance))) / Math.sqrt(variance);
    const centre = length.mean + (length.covariance * off) / variance;
    density += weight;
    first += weight * centre;
    second += weight * (centre * centre + length.variance - length.covariance ** 2 / variance);
  }
  return { density, left: second / density - (first / density) ** 2 };
}
