import type { Check, Printer } from '../../core/index.ts';

type Judged = Pick<Check, 'id' | 'verdict' | 'value' | 'limit' | 'bound' | 'unit'>;

const BOUND_WORDS = { atLeast: 'at least', atMost: 'at most', within: 'within ±' } as const;

/**
 * A check's number with its limit and the side of it that is asked for, as `2.1 mm` and `at least 0 mm`; null where it
 * has none. Past a limit that does not fail the cover stands `better at most 30°`. A number beyond its limit is never
 * printed as within it.
 */
export function limitWords(check: Judged, lengths: Printer): { value: string; limit: string } | null {
  const { id, verdict, value, limit, bound, unit } = check;
  if (bound === null) return null;
  const isKept = keeps(check);
  const round = isKept ? 'down' : 'up';
  const length = (): string => {
    if (id === 'seamMargin') return lengths.size(value);
    if (bound === 'within') return lengths.fine(value);
    // Spare room is never overstated; a gap has the same figure everywhere.
    const gap = lengths.signedGap(value);
    return bound === 'atMost' && !isKept && gap === lengths.gap(limit) ? `over ${gap}` : gap;
  };
  // A chance is never overstated, as in `chanceWords`.
  const whole = (share: number): number =>
    (isKept || bound === 'atLeast' ? Math.floor(100 * share) : Math.ceil(100 * share)) / 100;
  const limitLength = (): string => {
    if (bound === 'within') return lengths.fine(limit);
    const size = lengths.size(limit);
    if (id === 'seamMargin' || lengths.units === 'mm' || size.endsWith(' in')) return size;
    // A limit that no ruler in inches shows is rounded so that the figure beside it never seems to lie on its other side.
    return lengths.gap((bound === 'atLeast') === isKept ? limit : -limit);
  };
  const [found, asked] = {
    mm: () => [length(), limitLength()],
    deg: () => [lengths.degrees(value, round), lengths.degrees(limit, 'nearest')],
    '': () => [lengths.share(whole(value)), lengths.share(limit)],
  }[unit]();
  const better = verdict === 'tight' && !isKept ? 'better ' : '';
  return { value: found!, limit: `${better}${BOUND_WORDS[bound]} ${asked}`.replace('± ', '±') };
}

/** Whether the number lies on the side of its limit that is asked for. */
function keeps({ value, limit, bound }: Judged): boolean {
  if (bound === 'atLeast') return value >= limit;
  return (bound === 'within' ? Math.abs(value) : value) <= limit;
}
