import type { ChanceOfFit, ErrorSpread } from '../../core/explore/chanceOfFit.ts';

/**
 * A share of the books tried, in words a customer can weigh: `98 of 100`, or `all of 2,000`. Rounded down, so that a cover
 * that failed once is never called certain; a share below one in a hundred says so.
 */
export function shareWords(count: number, draws: number): string {
  if (count === draws) return `all of ${inThousands(draws)}`;
  if (count === 0) return `none of ${inThousands(draws)}`;
  const share = Math.floor((100 * count) / draws);
  return share === 0 ? 'fewer than 1 of 100' : `${share} of 100`;
}

/** The chance in one sentence. */
export function chanceWords({ draws, closes, all }: ChanceOfFit): string {
  const shut = `Closes on ${shareWords(closes, draws)} such books`;
  if (closes === 0) return `${shut}.`;
  return closes === all
    ? `${shut}, and fits there at head, tail and lying open too.`
    : `${shut}; fits at every edge, closed and open, on ${shareWords(all, draws)}.`;
}

/** What the chance rests on. */
export function chanceAssumption({ draws }: ChanceOfFit, spread: ErrorSpread, error: string, board: string): string {
  const strays =
    spread === 'even'
      ? `anywhere within ${error} either way`
      : `mostly near what was measured, 1 in 22 further off than ${error}`;
  return (
    `Assumed: each measure strays on its own, ${strays} (a board by ${board}, as with a caliper); the leather is as likely ` +
    `at any thickness of its range; the pieces are cut as they stand. ${inThousands(draws)} books drawn, the same ` +
    'ones every time.'
  );
}

/** A whole number with its thousands set apart; the browser's own words for numbers take 60 ms to fetch. */
const inThousands = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
