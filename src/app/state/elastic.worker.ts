import {
  coverDesign,
  createElasticSolvers,
  type ElasticOverRange,
  elasticOverRange,
  type Job,
} from '../../core/index.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

const solvers = createElasticSolvers();

serveQuestions<Job, ElasticOverRange>((job) => elasticOverRange(coverDesign(job), solvers));
