import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { designReport } from '../../../src/core/report/designReport.ts';
import { type CustomerSheet, customerSheet } from '../../../src/output/customerSheet/customerSheet.ts';
import type { Offer } from '../../../src/output/customerSheet/offer.ts';

const tideLedger = EXAMPLE_JOBS[0].document;

/** The tide ledger with a change. */
export function designOf(change: Record<string, unknown> = {}): CoverDesign {
  const parsed = parseJob({ ...tideLedger, ...change });
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return coverDesign(parsed.job);
}

export function sheetOf(change: Record<string, unknown> = {}, offer?: Offer): CustomerSheet {
  const design = designOf(change);
  return customerSheet(design, designReport(design), offer);
}
