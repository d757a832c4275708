import { coverDesign } from './fold/coverDesign.ts';
import type { Job } from './job/jobSchema.ts';
import { designReport, type ReportOptions } from './report/designReport.ts';
import type { Report } from './report/reportSchema.ts';

/** The whole way from a parsed job to its report: needs, pieces and fit at every range point, then the checks. */
export const fitReport = (job: Job, options: ReportOptions = {}): Report => designReport(coverDesign(job), options);
