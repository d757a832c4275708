import type { Report } from '../../../src/core/report/reportSchema.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

export const LEATHER = { outside: { min_mm: 1.5875, max_mm: 1.984375 } };
export const LEDGER = { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 };

/** The ledger in a laced cover, with other parts of the job where `rest` gives them. */
export const job = (rest: object = {}) =>
  soundJob({
    format: 'coverwright-job',
    version: 1,
    book: LEDGER,
    leather: LEATHER,
    seam: { method: 'lacing' },
    ...rest,
  });

/** A row of a report; a test that asks for one that is missing fails. */
export const row = (report: Report, id: string) => defined(report.checks.find((check) => check.id === id));
