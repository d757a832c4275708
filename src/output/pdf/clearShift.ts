/** How near a line may come to a mark where there is room for more, mm. */
const CLEAR = 1;

/** Shifts of under this are one, mm. */
const LEAST = 1e-6;

/** What lies along an axis from one place to another, mm, and how much it weighs that a line goes through it: a whole number. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/** One of the lines that are shifted as one: its place unshifted, mm, and how often what it goes through counts. */
export interface ShiftedLine {
  readonly at: number;
  readonly weight: number;
}

export interface ClearShift {
  readonly shift: number;
  /** Sum over lines and the marks that they go through, of the product of their weights. */
  readonly crossings: number;
}

/**
 * The shift from 0 to `furthest` (either sign) that takes parallel lines, all moved as one, through marks of the least
 * weight.
 *
 * A line at l goes through mark [a, b] at the shifts from a - l to b - l, so the weight changes at these places only: adding up along
 * the sorted places is exact. Of the shifts with the least weight the one nearest to 0 is taken that
 * keeps `CLEAR` from both ends of its gap, or the middle of the widest gap where none is as wide.
 */
export function clearShift(lines: readonly ShiftedLine[], furthest: number, marks: readonly Stretch[]): ClearShift {
  const [low, high] = furthest < 0 ? [furthest, 0] : [0, furthest];
  const blocked = lines
    .flatMap(({ at, weight: often }) =>
      marks.map(({ from, to, weight }) => ({ from: from - at, to: to - at, weight: often * weight })),
    )
    .filter(({ from, to }) => to > low && from < high);
  const places = [low, ...blocked.flatMap(({ from, to }) => [from, to]), high]
    .filter((at) => at >= low && at <= high)
    .sort((a, b) => a - b);
  const begins = [...blocked].sort((a, b) => a.from - b.from);
  const ends = [...blocked].sort((a, b) => a.to - b.to);
  let [begun, ended, crossings] = [0, 0, 0];
  const gaps = places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    if (to - from < LEAST && high - low >= LEAST) return [];
    const middle = (from + to) / 2;
    for (; begun < begins.length && begins[begun]!.from < middle; begun++) crossings += begins[begun]!.weight;
    for (; ended < ends.length && ends[ended]!.to <= middle; ended++) crossings -= ends[ended]!.weight;
    return [{ from, to, crossings }];
  });
  const least = Math.min(...gaps.map((gap) => gap.crossings));
  const best = gaps.filter((gap) => gap.crossings === least);
  const wide = best.filter(({ from, to }) => to - from >= 2 * CLEAR);
  const kept = wide.length > 0 ? wide : [best.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a))];
  const shifts = kept.map(({ from, to }) => {
    const clear = Math.min(CLEAR, (to - from) / 2);
    // An end of the range is no mark.
    return Math.max(from === low ? from : from + clear, Math.min(to === high ? to : to - clear, 0));
  });
  const shift = shifts.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
  return { shift, crossings: least };
}
