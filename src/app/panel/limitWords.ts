import type { Check } from '../../core/report/check.ts';
import type { LengthText } from '../state/lengthText.ts';

type Judged = Pick<Check, 'verdict' | 'value' | 'limit' | 'bound' | 'unit'>;

const BOUND_WORDS = { atLeast: 'at least', atMost: 'at most', within: 'within ±' } as const;

/**
 * A check's number with its limit and the side of it that is asked for, as `2.1 mm` and `at least 0.0 mm`; null where it
 * has none. Past a limit that does not fail the cover stands `better at most 30°`. A number that breaks its limit
 * never reads as if it kept it.
 */
export function limitWords(check: Judged, lengths: LengthText): { value: string; limit: string } | null {
  const { verdict, value, limit, bound, unit } = check;
  if (bound === null) return null;
  const isKept = keeps(check);
  const whole = isKept ? Math.floor : Math.ceil;
  const length = (): string => {
    // Spare room is never overstated, nor is it where there is too much of it: one gap has one figure everywhere.
    if (bound === 'within') return lengths.fine(value);
    const gap = lengths.gap(value);
    return bound === 'atMost' && !isKept && gap === lengths.size(limit) ? `over ${gap}` : gap;
  };
  const figure = { mm: length, deg: () => `${whole(value)}°`, '': () => `${whole(100 * value)} %` }[unit];
  const limitFigure = {
    mm: () => lengths.size(limit),
    deg: () => `${Number(limit.toFixed(1))}°`,
    '': () => `${Math.round(100 * limit)} %`,
  }[unit];
  const better = verdict === 'tight' && !isKept ? 'better ' : '';
  return {
    value: figure().replace('-', '−'),
    limit: `${better}${BOUND_WORDS[bound]} ${limitFigure()}`.replace('± ', '±'),
  };
}

/** Whether the number lies on the side of its limit that is asked for. */
function keeps({ value, limit, bound }: Judged): boolean {
  if (bound === 'atLeast') return value >= limit;
  return (bound === 'within' ? Math.abs(value) : value) <= limit;
}
