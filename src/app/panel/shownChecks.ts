import { type Check, type Report, STRIP_ROWS } from '../../core/index.ts';

/**
 * The rows to show: those of the report; until the springy model has answered its last rows, so that no row disappears and
 * returns. Their origin says so.
 * @param report of the present job
 * @param settled report of the last job whose strip is solved; null before the first
 */
export function shownChecks(report: Report, settled: Report | null): readonly Check[] {
  const { checks, origin } = report;
  const missing = STRIP_ROWS.filter((row) => !checks.some(({ id }) => id === row.id));
  const isPending = origin === 'being worked out';
  const rows = missing.map(({ id, title, unit }): Check => {
    const last = settled?.checks.find((check) => check.id === id);
    if (isPending && last !== undefined) return { ...last, change: [], origin };
    return {
      id,
      title,
      unit,
      verdict: isPending ? 'none' : 'unknown',
      state: isPending ? '' : 'not known',
      value: 0,
      limit: 0,
      bound: null,
      message: isPending ? '' : 'The springy model could not be asked in this browser; the other rows hold without it.',
      remedy: '',
      change: [],
      origin,
    };
  });
  return [...checks, ...rows];
}
