import { formatFraction, signed } from '../../core/index.ts';
import type { Figure } from './figure.ts';

export interface AxisTick {
  /** In model units: mm, degrees. */
  readonly at: number;
  readonly text: string;
}

/**
 * Round divisions of an axis: 1, 2 or 5 times a power of ten, or, in fractions, the unit halved repeatedly, as on an
 * inch ruler.
 * @param most ticks at most, 2 or more
 */
export function axisTicks(from: number, to: number, figure: Figure, most: number): readonly AxisTick[] {
  const [low, high] = [from / figure.size, to / figure.size];
  const step = tickStep((high - low) / most, figure.denominator);
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  return Array.from({ length: Math.max(0, count) }, (_, i) => {
    const value = (first + i) * step || 0;
    const isFraction = figure.denominator !== null && step < 1;
    const text = isFraction
      ? formatFraction(Math.round(value / step), Math.round(1 / step))
      : signed(value.toFixed(decimals));
    return { at: value * figure.size, text };
  });
}

function tickStep(least: number, denominator: number | null): number {
  if (denominator !== null && least < 1) return 2 ** Math.ceil(Math.log2(Math.max(least, 1 / denominator)) - 1e-9);
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 5, 10].find((times) => times * power >= least - 1e-12) ?? 10);
}
