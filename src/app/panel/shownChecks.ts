import { type Check, type Report, STRIP_ROWS } from '../../core/index.ts';
import type { ElasticState } from '../state/bench.ts';

/** A row of the report, marked while it belongs to the job before the last change. */
export type ShownCheck = Check & { readonly isPending?: boolean };

/**
 * The rows to show: those of the report; until the strip is solved its last rows, marked, so that no row disappears and
 * returns.
 * @param report of the present job
 * @param settled report of the last job whose strip is solved; null before the first
 */
export function shownChecks(
  report: Report,
  elastic: ElasticState['status'],
  settled: Report | null,
): readonly ShownCheck[] {
  if (elastic === 'solved') return report.checks;
  const isPending = elastic === 'solving';
  const rows = STRIP_ROWS.map(({ id, title, unit }): ShownCheck => {
    const last = settled?.checks.find((check) => check.id === id);
    if (isPending && last !== undefined) return { ...last, change: [], isPending };
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
      isPending,
    };
  });
  return [...report.checks, ...rows];
}
