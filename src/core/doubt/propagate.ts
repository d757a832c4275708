import { inner } from '../math/linear.ts';
import { covarianceOf, type Uncertain } from './uncertain.ts';

/** Outputs as a function of the inputs; always the same number of outputs. */
export type Model = (inputs: readonly number[]) => readonly number[];

/** Outputs of a model with one input, by its index, at another value, and the others at theirs. */
type Moved = (input: number, value: number) => readonly number[];

export interface Propagated {
  /** Outputs at the values of the inputs. */
  readonly values: readonly number[];
  /** [output][input]: change of the output for one unit of the input, as the mean over one u to each side. */
  readonly sensitivities: readonly (readonly number[])[];
  /** [output][input]: f(x + u) - 2 f(x) + f(x - u), the second derivative by u^2: 0 where the output is straight over +-u. */
  readonly curvature: readonly (readonly number[])[];
  /** Covariance of the outputs. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard uncertainty of each output. */
  readonly u: readonly number[];
}

/** Step of an input without doubt in its unit, or as a share of a value over 1: the cube root of the spacing of numbers. */
const SMALL_STEP = 6e-6;

/** Outputs one step above and below the value of an input. */
interface Moves {
  readonly step: number;
  readonly up: readonly number[];
  readonly down: readonly number[];
}

const movesOf = (moved: Moved, inputs: readonly Uncertain[]): Moves[] =>
  inputs.map(({ value, u }, i) => {
    const step = u > 0 ? u : SMALL_STEP * Math.max(1, Math.abs(value));
    return { step, up: moved(i, value + step), down: moved(i, value - step) };
  });

const slopesOf = (outputs: number, moves: readonly Moves[]): number[][] =>
  Array.from({ length: outputs }, (_, k) => moves.map(({ step, up, down }) => (up[k]! - down[k]!) / (2 * step)));

/**
 * Sensitivities of a model, [output][input]: (f(x + u) - f(x - u)) / 2u (JCGM 100:2008 5.1.3, note 2), so that a kink within u
 * counts by its mean. An input without doubt is moved by a small step. The model is called 2 n times for n inputs.
 */
export const sensitivitiesOf = (outputs: number, moved: Moved, inputs: readonly Uncertain[]): number[][] =>
  slopesOf(outputs, movesOf(moved, inputs));

/**
 * Propagates uncertainty by first order: the outputs have covariance C S C', with S the covariance of the inputs and C the
 * sensitivities (JCGM 100:2008 5.1.2 and 5.2.2, equations 10 and 13; several outputs by JCGM 102:2011 6.2).
 */
export function propagate(
  model: Model,
  inputs: readonly Uncertain[],
  covariance: readonly (readonly number[])[] = covarianceOf(inputs),
): Propagated {
  const at = inputs.map(({ value }) => value);
  const values = model(at);
  const moves = movesOf((i, value) => model(at.with(i, value)), inputs);
  const sensitivities = slopesOf(values.length, moves);
  const outputs = sensitivities.map((a) => {
    const sa = covariance.map((row) => inner(row, a));
    return sensitivities.map((b) => inner(b, sa));
  });
  return {
    values,
    sensitivities,
    curvature: values.map((value, k) =>
      moves.map(({ up, down }, i) => (inputs[i]!.u > 0 ? up[k]! - 2 * value + down[k]! : 0)),
    ),
    covariance: outputs,
    u: outputs.map((row, k) => Math.sqrt(Math.max(0, row[k]!))),
  };
}

/**
 * Share of each input in the variance of one output with sensitivities c: c_i (S c)_i / (c' S c). Shares add up to 1; an input
 * that is correlated with others takes half of each covariance, so that its share can be negative. All are 0 where the
 * output has no variance.
 */
export function budgetOf(
  sensitivities: readonly number[],
  covariance: readonly (readonly number[])[],
): readonly number[] {
  const parts = covariance.map((row, i) => sensitivities[i]! * inner(row, sensitivities));
  const variance = parts.reduce((sum, part) => sum + part, 0);
  return parts.map((part) => (variance > 0 ? part / variance : 0));
}
