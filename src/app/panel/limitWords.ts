import type { Check } from '../../core/report/check.ts';
import type { Printer } from '../../core/units/printer.ts';

type Judged = Pick<Check, 'id' | 'verdict' | 'value' | 'limit' | 'bound' | 'unit'>;

const BOUND_WORDS = { atLeast: 'at least', atMost: 'at most', within: 'within ±' } as const;

/**
 * A check's number with its limit and the side of it that is asked for, as `2.1 mm` and `at least 0 mm`; null where it
 * has none. Past a limit that does not fail the cover stands `better at most 30°`.
 */
export function limitWords(check: Judged, lengths: Printer): { value: string; limit: string } | null {
  const { id, verdict, value, limit, bound, unit } = check;
  if (bound === null) return null;
  // Spare room is never overstated; what must stay small, or is a setting of the job, is shown as it is.
  const length = id === 'seamMargin' ? lengths.size : bound === 'atLeast' ? lengths.signedGap : lengths.fine;
  const figure = (number: number, print: (value: number) => string): string => {
    if (unit === 'mm') return print(number);
    return unit === 'deg' ? lengths.degrees(number) : lengths.share(number);
  };
  const better = verdict !== 'fails' && !keeps(check) ? 'better ' : '';
  return {
    value: figure(value, length),
    limit: `${better}${BOUND_WORDS[bound]} ${figure(limit, bound === 'atLeast' ? lengths.size : lengths.fine)}`.replace(
      '± ',
      '±',
    ),
  };
}

/** Whether the number lies on the side of its limit that is asked for. */
function keeps({ value, limit, bound }: Judged): boolean {
  if (bound === 'atLeast') return value >= limit;
  return (bound === 'within' ? Math.abs(value) : value) <= limit;
}
