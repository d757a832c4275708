import type { ChanceOfFit, ErrorSpread } from '../../core/index.ts';

/**
 * A share of the trials in words: `98 of 100`, or `all 2,000`. Rounded down, so that a cover that failed once is never
 * called certain; a share below one in a hundred says so.
 */
export function shareWords(count: number, draws: number): string {
  if (count === draws) return `all ${inThousands(draws)}`;
  if (count === 0) return `none of ${inThousands(draws)}`;
  const share = Math.floor((100 * count) / draws);
  return share === 0 ? 'fewer than 1 of 100' : `${share} of 100`;
}

/** The chance in one sentence. */
export function chanceWords({ draws, closes, all }: ChanceOfFit): string {
  const shut = `In ${shareWords(closes, draws)} trials it closes`;
  if (closes === 0) return `In ${shareWords(0, draws)} trials does it close.`;
  return closes === all
    ? `${shut}, and fits at head, tail and lying open.`
    : `${shut}; in ${shareWords(all, draws)} it fits at every edge, closed and open.`;
}

/** Assumptions of the chance. */
export function chanceAssumption({ draws }: ChanceOfFit, spread: ErrorSpread, error: string, board: string): string {
  const off =
    spread === 'even'
      ? `by up to ${error}, any size equally likely; the board by up to ${board}`
      : `most by less than ${error}, 1 in 22 by more; the board by ${board}`;
  return `Worked out by trying ${inThousands(draws)} sets of measures, each off at random: ${off}; the leather anywhere in its range.`;
}

/** A whole number with commas between thousands; the browser's own formatter takes 60 ms to load. */
const inThousands = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
