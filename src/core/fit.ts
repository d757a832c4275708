import { type CoverDesign, coverDesign } from './fold/coverDesign.ts';
import { type ElasticFit, elasticFit } from './fold/elasticFit.ts';
import type { StripSolver } from './fold/strip/solveStrip.ts';
import type { Job } from './job/jobSchema.ts';
import type { RangePoint } from './leather/leatherModel.ts';
import { designReport } from './report/designReport.ts';
import type { Report } from './report/reportSchema.ts';

export interface FitOptions {
  /** Unit of the lengths in sentences. */
  readonly units?: 'mm' | 'in';
  /** Given, the elastic strip is solved too (about a second); its memory is reused from job to job. */
  readonly solver?: StripSolver;
}

/** The whole way from a parsed job to its report: needs, pieces and fit at every range point, the strip, the checks. */
export function fitReport(job: Job, { units, solver }: FitOptions = {}): Report {
  const design = coverDesign(job);
  return designReport(design, { units, elastic: solver && elasticOverRange(design, solver) });
}

/** Solves the elastic strip at the thin end, the middle and the thick end. */
export function elasticOverRange(design: CoverDesign, solver: StripSolver): Readonly<Record<RangePoint, ElasticFit>> {
  return {
    thin: elasticFit(design, 'thin', solver),
    nominal: elasticFit(design, 'nominal', solver),
    thick: elasticFit(design, 'thick', solver),
  };
}
