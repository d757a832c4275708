import { type Check, type Report, STRIP_ROWS } from '../../core/index.ts';
import type { ElasticState } from '../state/bench.ts';

/** A row of the report, marked while it is still the one of the job before the last change. */
export type ShownCheck = Check & { readonly isPending?: boolean };

/**
 * The rows to show: those of the report, and in place of answers that are not there yet the last ones that were, marked; so
 * that no row goes and comes back.
 * @param report of the job as it stands
 * @param settled report of the last job that the springy model has answered; null before the first answer
 */
export function shownChecks(report: Report, elastic: ElasticState['status'], settled: Report | null): ShownCheck[] {
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
