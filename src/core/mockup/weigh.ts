import { type Estimate, estimate, type Observation, type Prior } from './estimate.ts';
import type { Explanation } from './explanations.ts';
import { priorOf } from './unknowns.ts';

/** An explanation with what the unknowns are if it is true. */
export interface Weighed {
  readonly explanation: Explanation;
  readonly prior: Prior;
  readonly result: Estimate;
  /** How likely it is after the readings, 0 to 1; all explanations together are 1. */
  readonly chance: number;
}

/**
 * Weighs explanations by readings, likeliest first (Bayes): chance ~ odds x density of the readings if it is true. An
 * explanation with more freedom fits better and spreads its density wider, so it gains nothing by freedom alone (Jeffreys,
 * Theory of Probability, 1939; MacKay 1992, Neural Computation 4, 415).
 */
export function weigh(explanations: readonly Explanation[], readings: readonly Observation[]): Weighed[] {
  const found = explanations.map((explanation) => {
    const prior = priorOf(explanation.expectation);
    const result = estimate(prior, readings);
    return { explanation, prior, result, weight: Math.log(explanation.odds) + result.logEvidence };
  });
  // Taken from the largest, since a density of readings that nothing explains is too small for a number.
  const most = Math.max(...found.map(({ weight }) => weight));
  const sum = found.reduce((total, { weight }) => total + Math.exp(weight - most), 0);
  return found
    .map(({ weight, ...rest }) => ({ ...rest, chance: Math.exp(weight - most) / sum }))
    .sort((a, b) => b.chance - a.chance);
}
