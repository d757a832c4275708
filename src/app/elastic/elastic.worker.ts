import { elasticOverRange } from '../../core/fit.ts';
import { coverDesign } from '../../core/fold/coverDesign.ts';
import { createElasticSolvers } from '../../core/fold/elasticFit.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { ElasticOverRange } from '../../core/report/stripContext.ts';
import { serveQuestions } from '../state/serveQuestions.ts';

const solvers = createElasticSolvers();

serveQuestions<Job, ElasticOverRange>((job) => elasticOverRange(coverDesign(job), solvers));
