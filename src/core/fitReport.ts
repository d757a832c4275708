import { type CoverDesign, coverDesign, madeDesign } from './fold/coverDesign.ts';
import { type ElasticSolvers, elasticFit } from './fold/elastic/elasticFit.ts';
import type { Job } from './job/jobSchema.ts';
import { type TrialOptions, withTrials } from './report/coverTrials.ts';
import { designReport } from './report/designReport.ts';
import type { Report } from './report/reportSchema.ts';
import type { ElasticOverRange } from './report/stripContext.ts';
import { withStrip } from './report/withStrip.ts';

export interface FitOptions {
  /** Given, the elastic strip is solved too (about a second); its memory is reused from job to job. */
  readonly solvers?: ElasticSolvers;
  /** Given, Monte Carlo trials stand beside the first order (about a third of a second); no verdict changes. */
  readonly trials?: TrialOptions;
}

/** The whole way from a parsed job to its report: needs, pieces and fit at every range point, the checks, strip and trials. */
export function fitReport(job: Job, { solvers, trials }: FitOptions = {}): Report {
  const design = coverDesign(job);
  const first = designReport(design);
  const report = trials ? withTrials(first, design, trials) : first;
  return solvers ? withStrip(report, design, elasticOverRange(design, solvers)) : report;
}

/** Solves the elastic strip at the thin end, the middle and the thick end. */
export function elasticOverRange(design: CoverDesign, solvers: ElasticSolvers): ElasticOverRange {
  const made = madeDesign(design);
  return {
    thin: elasticFit(made, 'thin', solvers),
    nominal: elasticFit(made, 'nominal', solvers),
    thick: elasticFit(made, 'thick', solvers),
  };
}
