import { elasticOverRange } from '../../core/fit.ts';
import { coverDesign } from '../../core/fold/coverDesign.ts';
import { createElasticSolvers } from '../../core/fold/elasticFit.ts';
import type { ElasticAnswer, ElasticQuestion } from './elasticMessage.ts';

const solvers = createElasticSolvers();

self.onmessage = ({ data: { id, job } }: MessageEvent<ElasticQuestion>) => {
  const answer: ElasticAnswer = { id, elastic: elasticOverRange(coverDesign(job), solvers) };
  self.postMessage(answer);
};
